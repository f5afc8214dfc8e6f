import { ambient, resistanceOrNone } from "../part-properties.ts";
import { yesOrNo } from "../property.ts";
import {
  behaviourInShort,
  behaviourOf,
  interruptingRating,
  ratingOfDevice,
  voltageRating,
} from "../protection-properties.ts";
import type { BehaviourInShort, Protection } from "../run.ts";
import { terminal } from "../terminal-property.ts";
import type { FigureContext, InsideConnection, PartState } from "./define-part.ts";
import { defaulted, input, optional, required } from "./part-property.ts";
import { terminalRating } from "./terminal-rating.ts";

/* A fuse or breaker as a part of its own: between two cables, or mounted on a terminal. */

export const ofEveryDevice = {
  ratingA: required(ratingOfDevice, {
    words: "rating",
    summary: true,
    limitOf: { current: "carries", words: "rating", judgedBy: "protection/below-load" },
  }),
  on: input(terminal),
  interruptingA: optional(interruptingRating, {
    words: "interrupting rating",
    details: "interrupting rating",
  }),
  ratedV: optional(voltageRating, { words: "voltage rating", details: true }),
  ...terminalRating,
  ambientC: optional(ambient, { words: "temperature of its place" }),
  milliohm: defaulted(resistanceOrNone(1_000), 0, { words: "resistance" }),
  interruptingAtV: input(behaviourInShort.interruptingAtV),
  openingTimes: input(behaviourInShort.openingTimes),
  letThroughA2s: input(behaviourInShort.letThroughA2s),
  withstandA2s: input(behaviourInShort.withstandA2s),
  testedBehind: input(behaviourInShort.testedBehind),
  continuous: defaulted(yesOrNo(), ({ build }) => build.continuous ?? true, {
    words: "continuous load",
    assumed: {
      words: "duration of its load",
      as: ["continuous, which raises the rating of its fuse or breaker"],
    },
  }),
};

export const inLine = {
  role: "passes current on",
  terminals: {
    line: { side: "either", words: "the line side" },
    load: { side: "either", words: "the load side" },
  },
  inSeries: true,
  protects: true,
  inside: (
    { milliohm = 0 }: { readonly milliohm?: number },
    { closed }: PartState,
  ): readonly InsideConnection<"line" | "load">[] =>
    closed ? [{ between: ["line", "load"], ohm: milliohm / 1_000 }] : [],
} as const;

/** Figures of a device beside its properties: those of a {@link Protection}, and its place. */
export interface DeviceFigures extends Pick<Protection, "writtenAs" | "familyStatedAt">, BehaviourInShort {
  /** Index of the terminal that it is mounted on, if there is one. */
  readonly mountedOn?: number;
  /** Nominal voltage of its island, V. */
  readonly systemV: number;
}

export function deviceFigures(
  stated: Parameters<typeof behaviourOf>[0],
  { mountedOn, islandV, source }: FigureContext,
): DeviceFigures {
  return {
    writtenAs: "object",
    ...behaviourOf(stated, source),
    ...(mountedOn !== undefined && { mountedOn }),
    systemV: islandV("line"),
  };
}
