import { usualDischargeRates } from "../../standards/usual-charge-rates.ts";
import { isAbove, statedRating } from "../current-through.ts";
import { defineRule, type Found, inNetwork } from "../rule.ts";
import { estimateInWords } from "../wording/estimate-in-words.ts";
import { formatDistinctWithUnit, formatRounded } from "../wording/format-number.ts";
import { atPart, occasionInWords } from "../wording/part-in-words.ts";
import { sourceInWords } from "../wording/source-in-words.ts";

export const dischargeCurrent = defineRule<Values>({
  id: "battery/discharge-current",
  title: "Discharge current limit exceeded",
  formerTitles: ["More current than the battery may give"],
  severity: "warning",
  why: "A battery with its own protection cuts out and leaves everything dark; one without ages fast and heats up.",
  sources: [statedRating, usualDischargeRates.source],
  fixable: false,
  acceptable: true,
  restsOn: "voltages",
  // Needs the current out of each battery in every scenario that lasts. Information if the plan states no limit, and the usual rate of
  // the chemistry is exceeded.
  check: (plan) =>
    inNetwork(plan, ({ network, result }) =>
      network.parts.flatMap((part): Found<Values>[] => {
        const worst = part.kind === "battery" ? result.parts[part.index]?.feeds : undefined;
        if (part.kind !== "battery" || !worst) return [];
        const { maxDischargeA, chemistry } = part;
        const stated = maxDischargeA !== undefined;
        const perAh = usualDischargeRates.greatestPerAh[chemistry];
        const limitA = maxDischargeA ?? perAh * part.capacityAh;
        if (!isAbove(worst.currentA, limitA)) return [];
        const values: Values = {
          ...{ currentA: worst.currentA, limitA, stated, chemistry, perAh },
          estimate: estimateInWords(worst.estimate),
          scenario: occasionInWords(network, worst),
          source: sourceInWords(usualDischargeRates.source),
        };
        const at = atPart(part, ...(stated ? ["maxDischargeA"] : []));
        return [{ subject: part.name, at, ...(stated ? {} : { severity: "info" }), values }];
      }),
    ),
  message({ currentA, limitA, stated, estimate, scenario, chemistry, perAh, source }) {
    const [gives, may] = formatDistinctWithUnit(currentA, limitA, "A");
    return stated
      ? `Gives ${gives} ${scenario}${estimate}, its limit is ${may} (maxDischargeA): run less at once, or add a battery in parallel.`
      : `Gives ${gives} ${scenario}${estimate}, and its limit is not stated; ${chemistry} of this capacity usually gives ${may} for hours, ${formatRounded(perAh)} A per Ah (${source}). State maxDischargeA from its data sheet.`;
  },
});

interface Values {
  readonly currentA: number;
  readonly limitA: number;
  /** False: the limit is the usual rate of the chemistry. */
  readonly stated: boolean;
  readonly estimate: string;
  /** `in "everything on"`. */
  readonly scenario: string;
  readonly chemistry: string;
  readonly perAh: number;
  readonly source: string;
}
