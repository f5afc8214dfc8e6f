import type { Bank } from "../../analysis/network/topology/network-topology.ts";
import { batteryStrings } from "../../analysis/network/topology/parallel-strings.ts";
import type { WorstOf } from "../../analysis/network-result.ts";
import type { BatteryPart, Network } from "../../model/network.ts";
import { isStarterMotor } from "../../model/part-roles.ts";
import { usualDischargeRates } from "../../standards/usual-charge-rates.ts";
import { isAbove, statedRating } from "../current-through.ts";
import { ownRequirement } from "../own-requirement.ts";
import { defineRule, type Found, inNetwork, type JudgedNetwork } from "../rule.ts";
import { estimateInWords } from "../wording/estimate-in-words.ts";
import { formatDistinctWithUnit, formatRounded } from "../wording/format-number.ts";
import { atPart, occasionInWords } from "../wording/part-in-words.ts";
import { sourceInWords } from "../wording/source-in-words.ts";

const oneOfAString = ownRequirement(
  "All batteries of a string give the same current: a weaker one is empty first and driven in reverse, or its protection opens against the voltage of the whole string.",
);

export const dischargeCurrent = defineRule<Values>({
  id: "battery/discharge-current",
  title: "Discharge current limit exceeded",
  formerTitles: ["More current than the battery may give"],
  severity: "warning",
  why: "A battery with its own protection cuts out and leaves everything dark; one without ages fast and heats up.",
  sources: [statedRating, usualDischargeRates.source, oneOfAString],
  fixable: false,
  acceptable: true,
  restsOn: "voltages",
  // Needs the current out of each battery in every scenario that lasts, and of LiFePO4 while an engine is cranked. Information if the
  // plan states no limit, and the usual rate of the chemistry is exceeded; an error if others of its string may give that current.
  check: (plan) =>
    inNetwork(plan, ({ network, result }) =>
      network.parts.flatMap((part): Found<Values>[] => {
        if (part.kind !== "battery") return [];
        const lasting = result.parts[part.index]?.feeds;
        const cranking = whileCranking({ network, result }, part);
        const isForSeconds = cranking !== undefined && cranking.currentA > (lasting?.currentA ?? 0);
        const worst = isForSeconds ? cranking : lasting;
        if (!worst) return [];
        const { maxDischargeA, chemistry } = part;
        const stated = maxDischargeA !== undefined;
        const perAh = usualDischargeRates.greatestPerAh[chemistry];
        const limitA = maxDischargeA ?? perAh * part.capacityAh;
        if (!isAbove(worst.currentA, limitA)) return [];
        const others = inSeriesWith(network, result.topology.banks, part);
        const isWeakest = stated && others.some((other) => mayGive(other, worst.currentA));
        const values: Values = {
          ...{ currentA: worst.currentA, limitA, stated, chemistry, perAh, isForSeconds },
          estimate: estimateInWords(worst.estimate),
          scenario: occasionInWords(network, worst),
          isInSeries: others.length > 0,
          source: sourceInWords(usualDischargeRates.source),
        };
        const at = atPart(part, ...(stated ? ["maxDischargeA"] : []));
        const severity = isWeakest ? "error" : stated ? "warning" : "info";
        return [{ subject: part.name, at, severity, values }];
      }),
    ),
  message({ currentA, limitA, stated, estimate, scenario, chemistry, perAh, ...values }) {
    const { isForSeconds, isInSeries, source } = values;
    const [gives, may] = formatDistinctWithUnit(currentA, limitA, "A");
    if (isForSeconds)
      return `Gives ${gives} ${scenario}${estimate}, its limit is ${may} (maxDischargeA), and its protection may cut off within the seconds that cranking takes: crank from a battery made for it, or ask its maker for the limit of some seconds.`;
    return stated
      ? `Gives ${gives} ${scenario}${estimate}, its limit is ${may} (maxDischargeA): run less at once, or ${isInSeries ? "use one that gives as much as the others in its string, with a second string if need be" : "add a battery in parallel"}.`
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
  /** It flows for the seconds in which an engine is cranked. */
  readonly isForSeconds: boolean;
  /** One more in parallel would make the batteries of its string unlike. */
  readonly isInSeries: boolean;
  readonly source: string;
}

function inSeriesWith(network: Network, banks: readonly Bank[], battery: BatteryPart): BatteryPart[] {
  return batteryStrings(network, banks)
    .filter(({ batteries }) => batteries.includes(battery))
    .flatMap(({ batteries }) => batteries.filter((other) => other !== battery));
}

function mayGive({ maxDischargeA }: BatteryPart, currentA: number): boolean {
  return maxDischargeA !== undefined && !isAbove(currentA, maxDischargeA);
}

/**
 * The greatest current out of a battery of LiFePO4 with a stated limit while an engine is cranked. Lead-acid is not cut off, and its
 * limit for hours does not count for seconds.
 */
function whileCranking({ network, result }: JudgedNetwork, battery: BatteryPart): WorstOf | undefined {
  if (battery.chemistry !== "LiFePO4" || battery.maxDischargeA === undefined) return undefined;
  const starters = network.parts.filter(isStarterMotor);
  const found = result.scenarios.flatMap((solved): WorstOf[] => {
    const starting = network.scenarios[solved.scenario]?.starting;
    if (solved.state !== "solved" || !starters.some(({ index }) => starting?.[index])) return [];
    return [{ currentA: solved.partA[battery.index]!, scenario: solved.scenario }];
  });
  return found.sort((one, other) => other.currentA - one.currentA)[0];
}
