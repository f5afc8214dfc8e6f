import { isAbove, statedRating } from "../current-through.ts";
import { defineRule, inNetwork } from "../rule.ts";
import { estimateInWords } from "../wording/estimate-in-words.ts";
import { formatDistinctWithUnit } from "../wording/format-number.ts";
import { atPart, occasionInWords } from "../wording/part-in-words.ts";

export const dischargeCurrent = defineRule<Values>({
  id: "battery/discharge-current",
  title: "Discharge current limit exceeded",
  formerTitles: ["More current than the battery may give"],
  severity: "warning",
  why: "A battery with its own protection cuts out and leaves everything dark; one without ages fast and heats up.",
  sources: [statedRating],
  fixable: false,
  acceptable: true,
  // Needs the current out of each battery in every scenario that lasts. Silent if the plan states no limit.
  check: (plan) =>
    inNetwork(plan, ({ network, result }) =>
      network.parts.flatMap((part) => {
        if (part.kind !== "battery" || part.maxDischargeA === undefined) return [];
        const worst = result.parts[part.index]?.feeds;
        if (!worst || !isAbove(worst.currentA, part.maxDischargeA)) return [];
        const values: Values = {
          currentA: worst.currentA,
          estimate: estimateInWords(worst.estimate),
          maxDischargeA: part.maxDischargeA,
          scenario: occasionInWords(network, worst),
        };
        return [{ subject: part.name, at: atPart(part, "maxDischargeA"), values }];
      }),
    ),
  message({ currentA, estimate, maxDischargeA, scenario }) {
    const [gives, may] = formatDistinctWithUnit(currentA, maxDischargeA, "A");
    return `Gives ${gives} ${scenario}${estimate}, its limit is ${may} (maxDischargeA): run less at once, or add a battery in parallel.`;
  },
});

interface Values {
  readonly currentA: number;
  readonly estimate: string;
  readonly maxDischargeA: number;
  /** `in "everything on"`, `with windlass alone`. */
  readonly scenario: string;
}
