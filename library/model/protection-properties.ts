import * as z from "zod";
import { fuseFamilies } from "./allowed-values.ts";
import { price } from "./bench-properties.ts";
import { largestGauge, largestMm2, oneLargestConductor } from "./largest-conductor.ts";
import { ambient, terminalC } from "./part-properties.ts";
import { amount, listOf, oneOf } from "./property.ts";
import type { Property } from "./property-table.ts";
import { propertyTable, type ValuesOf } from "./property-table.ts";
import type { BehaviourInShort, Refusal, TestedBehind } from "./run.ts";
import { statedInPlan } from "./stated-in-plan.ts";

/** 6,000 A is the maximum standard rating in NFPA 70, 240.6(A) (from memory). */
export const ratingOfDevice = amount("a rating", "A", { above: 0, upTo: 6_000 });
// 200,000 A is the maximum interrupting rating of UL 248-15 (from memory).
export const interruptingRating = {
  ...amount("a current", "A", { above: 0, upTo: 200_000 }),
  affectsResults: false,
};
// Low voltage ends at 1,500 V DC (IEC 60364-1, from memory); solar fuses are made up to there.
export const voltageRating = {
  ...amount("a voltage", "V", { above: 0, upTo: 1_500 }),
  affectsResults: false,
};

/** Opening times that the maker of a device states. A fuse without them has those of its family. */
const openingTimes = listOf(
  propertyTable(
    {
      // A breaker carries its rating; no short of a low-voltage system exceeds it a thousand times.
      atPercent: amount("a multiple of the rating", "%", { above: 100, upTo: 100_000 }),
      afterS: amount("a time", "s", { from: 0, upTo: 100_000 }),
      withinS: amount("a time", "s", { above: 0, upTo: 100_000 }),
    },
    { unknown: "is not a property of an opening time", needed: ["atPercent", "withinS"], choices: [] },
  ),
  {
    allowed: "a list of up to 20 opening times, such as [{ atPercent: 200, withinS: 60 }]",
    most: 20,
    contradictions: (times) =>
      times.flatMap(({ atPercent = 0, afterS, withinS = 0 }, index): Refusal[] => {
        const before = times[index - 1];
        const refuse = (property: string, given: number, wrong: string, allowed: string) => [
          { path: [String(index), property], given: String(given), wrong, allowed },
        ];
        if (afterS !== undefined && afterS > withinS)
          return refuse("afterS", afterS, "is later than withinS", "a time up to withinS");
        if (before && atPercent <= (before.atPercent ?? 0))
          return refuse("atPercent", atPercent, "is not above the one before it", "ascending multiples");
        if (before && withinS > (before.withinS ?? 0))
          return refuse("withinS", withinS, "is longer than at a smaller current", "a shorter time");
        return [];
      }),
  },
);

const joule = { above: 0, upTo: 1e9 } as const;

/** A tested combination with a device upstream. */
const testedBehindParts = propertyTable(
  {
    family: oneOf(fuseFamilies, "is not a family of fuses or breakers"),
    ratingA: ratingOfDevice,
    interruptingA: interruptingRating,
  },
  {
    unknown: "is not a property of a tested combination",
    needed: ["family", "ratingA", "interruptingA"],
    choices: [],
  },
);

const testedBehind = {
  schema: testedBehindParts.schema,
  allowed:
    'an object such as { family: "UL 248-15 Class T", ratingA: 200, interruptingA: 10_000 }: the device upstream, and the current',
  affectsResults: true,
  parts: testedBehindParts,
};

/** The maker's statements on a device in a short. The same for a device in a conductor and for one that is a part. */
export const behaviourInShort = {
  interruptingAtV: voltageRating,
  openingTimes,
  letThroughA2s: amount("an energy", "A²s", joule),
  withstandA2s: amount("an energy", "A²s", joule),
  testedBehind,
};

type WrittenBehaviour = ValuesOf<typeof behaviourInShort>;

/** The same in the model. `source`: the builder's own source of the figures. */
export function behaviourOf(
  {
    interruptingAtV,
    openingTimes: stated,
    letThroughA2s,
    withstandA2s,
    testedBehind: tested,
  }: WrittenBehaviour,
  source?: string,
): BehaviourInShort {
  return {
    ...(interruptingAtV !== undefined && { interruptingAtV }),
    ...(stated && {
      opening: {
        gates: stated.map(({ atPercent, afterS, withinS }) => ({
          percentOfRating: atPercent!,
          minS: afterS ?? null,
          maxS: withinS!,
          confirmed: "read" as const,
        })),
        source: statedInPlan(source),
      },
    }),
    ...(letThroughA2s !== undefined && { letThroughA2s }),
    ...(withstandA2s !== undefined && { withstandA2s }),
    ...(tested && { testedBehind: tested as TestedBehind }),
  };
}

const properties = {
  ratingA: ratingOfDevice,
  family: oneOf(fuseFamilies, "is not a family of fuses or breakers"),
  // Up to the length of the longest conductor. Zero is a fuse on the terminal itself.
  distanceIn: { ...amount("a distance", "in", { from: 0, upTo: 12_000 }), affectsResults: false },
  distanceMm: { ...amount("a distance", "mm", { from: 0, upTo: 300_000 }), affectsResults: false },
  interruptingA: interruptingRating,
  ratedV: voltageRating,
  holderRatedA: ratingOfDevice,
  terminalC,
  largestGauge,
  largestMm2,
  ambientC: ambient,
  ...behaviourInShort,
  price,
};

const parts = propertyTable(properties, {
  unknown: "is not a property of protection",
  needed: ["ratingA"],
  choices: [{ ways: [["distanceIn"], ["distanceMm"]] }, oneLargestConductor],
});

/** A fuse or breaker, as the plan writes it: its rating alone, or an object. */
export type WrittenProtection = number | ValuesOf<typeof properties>;

/** Allowed values of `protect` and `protectFarEnd`. */
export const protection: Property<WrittenProtection> = {
  // A refused number is explained by the schema of the rating, a refused object part by part.
  schema: z.union([ratingOfDevice.schema, parts.schema], { error: ({ input }) => explainRating(input) }),
  allowed: `${ratingOfDevice.allowed}, or an object such as { ratingA: 50, distanceIn: 6 }`,
  affectsResults: true,
  parts,
};

function explainRating(value: unknown): string {
  return ratingOfDevice.schema.safeParse(value).error?.issues[0]?.message ?? "is not a rating";
}
