import { dropPercent, loadPurpose, nominalVoltage, withstoodVoltage } from "../part-properties.ts";
import { yesOrNo } from "../property.ts";
import { dropLimitOf } from "../read-run.ts";
import type { DropLimit } from "../run.ts";
import { useInWords } from "../use-in-words.ts";
import { refusedHours, use } from "../use-properties.ts";
import type { UseValues } from "../use-values.ts";
import { notAbove } from "./contradiction.ts";
import type { ComparedFigure, FigureContext } from "./define-part.ts";
import { type DefaultContext, type GivenValues, input, optional } from "./part-property.ts";
import type { Phrase, Quantity } from "./phrase.ts";
import { maximumOfDevice, minimumOfDevice } from "./silences.ts";

/* The properties and figures that loads and motors share. */

/** Greatest voltage that a device withstands, V. */
export const maximumVoltage = optional(withstoodVoltage, {
  words: "maximum voltage of the device",
  silentWithout: maximumOfDevice,
});

/** How a load is judged. */
export const ofEveryLoad = {
  /** Minimum voltage at which the device still works, V. */
  minimumV: optional(nominalVoltage, {
    words: "minimum voltage of the device",
    silentWithout: minimumOfDevice,
  }),
  maximumV: maximumVoltage,
  critical: input(yesOrNo(), { words: "critical" }),
  purpose: optional(loadPurpose, { words: "use" }),
  /** How long it runs; the balance of energy alone reads it. */
  use: optional(use),
  continuous: input(yesOrNo(), { words: "continuous load" }),
  dropLimitPercent: input(dropPercent, { words: "drop limit" }),
};

export interface LoadFigures extends DropLimit {
  readonly draws: Draw;
  readonly critical: boolean;
  readonly continuous: boolean;
  readonly systemV: number;
  /** The lowest voltage at which it draws, V: its minimum if stated, else the usual one of the battery. */
  readonly lowestV: number;
  /** Whether a circuit states it (its own two conductors end here), or a part of the plan. */
  readonly statedBy: "load" | "motor" | "starterMotor" | "circuit";
}

export type Draw =
  | { readonly as: "current"; readonly currentA: number }
  | { readonly as: "power"; readonly powerW: number }
  | { readonly as: "resistance"; readonly ohm: number }
  | {
      readonly as: "motor";
      readonly runningA: number;
      readonly startingA: number;
      /** The time that it needs to start, s; absent if not stated. */
      readonly startingS?: number;
    };

export function loadFigures(
  given: GivenValues<typeof ofEveryLoad>,
  { build, nominalV, lowestV }: FigureContext,
): Omit<LoadFigures, "draws" | "statedBy"> {
  return {
    continuous: given.continuous ?? build.continuous ?? true,
    ...dropLimitOf(given, build),
    systemV: nominalV(),
    lowestV: given.minimumV ?? lowestV(),
  };
}

/** The parts of the descriptor that loads and motors share. */
export const isJudgedAs = {
  worksFrom: "minimumV" as const,
  worksUpTo: "maximumV" as const,
  voltagesTooHigh: (
    { minimumV }: { readonly minimumV?: number | undefined },
    nominalV: DefaultContext["nominalV"],
  ) => notAbove("minimumV", minimumV, { what: "the nominal voltage", value: nominalV(), unit: "V" }),
  summary: ({ draws }: LoadFigures): readonly Phrase[] => {
    if (draws.as !== "motor") return [[drawn(draws).value]];
    const { runningA, startingA } = draws;
    // A starter motor draws only while it starts.
    return [
      ...(runningA === 0 ? [] : [[{ value: runningA, unit: "A" }, " running"] as const]),
      [{ value: startingA, unit: "A" }, " starting"],
    ];
  },
  compared: ({ draws, systemV, use }: LoadFigures & { use?: UseValues }): readonly ComparedFigure[] => [
    ...comparedUse(use),
    { id: "systemV", words: "nominal voltage", value: { value: systemV, unit: "V" } },
    ...(draws.as === "motor"
      ? ([
          { id: "runningA", words: "running current", value: { value: draws.runningA, unit: "A" } },
          { id: "startingA", words: "starting current", value: { value: draws.startingA, unit: "A" } },
          ...(draws.startingS === undefined
            ? []
            : [
                {
                  id: "startingS",
                  words: "time to start",
                  value: { value: draws.startingS, unit: "s" },
                } as const,
              ]),
        ] as const)
      : [{ ...drawn(draws), words: "load" }]),
  ],
};

/** The hours of use in a list of differences. */
export function comparedUse(use: UseValues | undefined): readonly ComparedFigure[] {
  return use && use !== refusedHours
    ? [{ id: "hoursOfUse", words: "hours of use", value: [useInWords(use)] }]
    : [];
}

function drawn(draws: Exclude<Draw, { as: "motor" }>): { readonly id: string; readonly value: Quantity } {
  switch (draws.as) {
    case "current":
      return { id: "draws", value: { value: draws.currentA, unit: "A" } };
    case "power":
      return { id: "drawsW", value: { value: draws.powerW, unit: "W" } };
    case "resistance":
      return { id: "drawsOhm", value: { value: draws.ohm, unit: "Ω" } };
  }
}
