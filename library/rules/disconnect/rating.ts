import { currentThrough, isAbove, statedRating } from "../current-through.ts";
import { tellApartWithUnit } from "../figures.ts";
import { atPart, scenarioInWords } from "../part-in-words.ts";
import { defineRule, inNetwork } from "../rule.ts";

export const disconnectRating = defineRule<Values>({
  id: "disconnect/rating",
  title: "More current than the disconnect is rated for",
  severity: "warning",
  why: "Contacts that carry more than their rating heat up, pit and weld: the switch that should cut everything off no longer opens.",
  sources: [statedRating],
  fixable: false,
  acceptable: true,
  // Needs the current through each disconnect in every scenario that lasts.
  check: (plan) =>
    inNetwork(plan, ({ network, result }) =>
      network.parts.flatMap((part) => {
        if (part.kind !== "disconnect") return [];
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
    return `Carries ${carries} ${scenario}, it is rated ${rated} (ratedA): use a disconnect for more, or split what hangs on it.`;
  },
});

interface Values {
  readonly currentA: number;
  readonly ratedA: number;
  /** `in "everything on"`. */
  readonly scenario: string;
}
