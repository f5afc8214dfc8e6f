import { openingTimes } from "../protection-properties.ts";
import type { OpeningTimes, Refusal } from "../run.ts";
import { statedInPlan } from "../stated-in-plan.ts";
import { definePart, type PartOf } from "./define-part.ts";
import { type DeviceFigures, deviceFigures, inLine, ofEveryDevice } from "./device-in-line.ts";
import { input } from "./part-property.ts";

export const breaker = definePart("breaker", {
  called: { word: "breaker", saidBy: /breaker/i },
  ...inLine,
  opens: "by hand",
  properties: { ...ofEveryDevice, openingTimes: input(openingTimes) },
  figures: ({ openingTimes: stated }, context): BreakerFigures => ({
    ...deviceFigures(context),
    family: "circuit breaker",
    ...(stated && {
      opening: {
        gates: stated.map(({ atPercent, afterS, withinS }) => ({
          percentOfRating: atPercent!,
          minS: afterS ?? null,
          maxS: withinS!,
          confirmed: "read" as const,
        })),
        source: statedInPlan(context.source),
      },
    }),
  }),
  contradictions: ({ openingTimes = [] }) =>
    openingTimes.flatMap(({ atPercent = 0, afterS, withinS = 0 }, index): Refusal[] => {
      const before = openingTimes[index - 1];
      const refuse = (property: string, given: number, wrong: string, allowed: string) => [
        { path: ["openingTimes", String(index), property], given: String(given), wrong, allowed },
      ];
      if (afterS !== undefined && afterS > withinS)
        return refuse("afterS", afterS, "is later than withinS", "a time up to withinS");
      if (before && atPercent <= (before.atPercent ?? 0))
        return refuse("atPercent", atPercent, "is not above the one before it", "ascending multiples");
      if (before && withinS > (before.withinS ?? 0))
        return refuse("withinS", withinS, "is longer than at a smaller current", "a shorter time");
      return [];
    }),
});

export interface BreakerPart extends PartOf<typeof breaker> {}

interface BreakerFigures extends DeviceFigures {
  readonly family: "circuit breaker";
  readonly opening?: OpeningTimes;
}
