import { currentThrough, isAbove, statedRating } from "../current-through.ts";
import { tellApartWithUnit } from "../figures.ts";
import { atPart, scenarioInWords } from "../part-in-words.ts";
import { defineRule, inNetwork } from "../rule.ts";

export const busRating = defineRule<Values>({
  id: "bus/rating",
  title: "More current than the bus is rated for",
  severity: "warning",
  why: "A bus bar that carries more than its rating heats its studs, and the nuts on them work loose.",
  sources: [statedRating],
  fixable: false,
  acceptable: true,
  // Needs the current through each bus in every scenario. Silent where the plan states no rating.
  check: (plan) =>
    inNetwork(plan, ({ network, result }) =>
      network.parts.flatMap((part) => {
        if (part.kind !== "busBar" || part.ratedA === undefined) return [];
        const worst = currentThrough(result, part);
        if (!worst || !isAbove(worst.currentA, part.ratedA)) return [];
        const values: Values = {
          currentA: worst.currentA,
          ratedA: part.ratedA,
          scenario: scenarioInWords(network, worst.scenario),
        };
        return [{ subject: part.name, at: atPart(part, "ratedA"), values }];
      }),
    ),
  message({ currentA, ratedA, scenario }) {
    const [carries, rated] = tellApartWithUnit(currentA, ratedA, "A");
    return `Carries ${carries} ${scenario}, it is rated ${rated} (ratedA): use a bus bar for more, or move loads to another.`;
  },
});

interface Values {
  /** The sum of all that flows into it. */
  readonly currentA: number;
  readonly ratedA: number;
  /** `in "everything on"`. */
  readonly scenario: string;
}
