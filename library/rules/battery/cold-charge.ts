import { chargings } from "../../analysis/charging-sources.ts";
import type { BatteryPart } from "../../model/network.ts";
import { monthNames } from "../../model/use-properties.ts";
import { coldCharging } from "../../standards/charging-practice.ts";
import { defineRule, type Found, inNetwork, type JudgedPlan } from "../rule.ts";
import { withUnit } from "../wording/format-number.ts";
import { atPart, listInWords } from "../wording/part-in-words.ts";
import { sourceInWords } from "../wording/source-in-words.ts";

export const coldCharge = defineRule<Values>({
  id: "battery/cold-charge",
  title: "Lithium battery charged below 0 °C",
  severity: "warning",
  why: "Below 0 °C a LiFePO4 cell deposits metallic lithium while it is charged: it loses capacity for good, and may short inside.",
  sources: [coldCharging.source],
  fixable: false,
  acceptable: true,
  // Needs the coldest temperature of the battery's own place, and whether anything charges it. If the plan does not state it: the mean
  // temperature of the months of a period in which the bank is not kept warm and something charges it; silent without either.
  check: (plan) => [
    ...inNetwork(plan, ({ network, result }) => {
      const charged = new Set(
        chargings(network, result.topology.banks).flatMap(({ batteries }) => batteries),
      );
      return network.parts.flatMap((part) => {
        if (part.kind !== "battery" || part.chemistry !== "LiFePO4" || part.lowestC === undefined) return [];
        const { lowestC, chargeCutOffC } = part;
        if (lowestC >= fromC || isSpared(part) || !charged.has(part)) return [];
        const values: Values = {
          lowestC,
          fromC,
          ...(chargeCutOffC !== undefined && { chargeCutOffC }),
          source,
        };
        const property = chargeCutOffC === undefined ? "lowestC" : "chargeCutOffC";
        return [{ subject: part.name, at: atPart(part, property), values }];
      });
    }),
    ...inColdMonths(plan),
  ],
  message({ lowestC, coldMonths, fromC, chargeCutOffC, source }) {
    const cutOff =
      chargeCutOffC === undefined
        ? "no cut-off is stated"
        : `charging stops only below ${withUnit(chargeCutOffC, "°C")} (chargeCutOffC)`;
    const must = `LiFePO4 must not be charged below ${withUnit(fromC, "°C")} (${source})`;
    if (!coldMonths)
      return `Its place gets as cold as ${withUnit(lowestC, "°C")} (lowestC), and ${cutOff}: ${must}. Keep it warmer, or state chargeCutOffC of its protection.`;
    const { period, months } = coldMonths;
    return `In ${period} it is not kept warm (bankHeated), the mean of ${listInWords(months, 12)} falls to about ${Math.round(lowestC)} °C, with colder nights, and ${cutOff}: ${must}. Keep it warm, or state lowestC of its place, or chargeCutOffC of its protection.`;
  },
});

const fromC = coldCharging.lithiumIronPhosphateFromC;
const source = sourceInWords(coldCharging.source);

interface Values {
  /** Of its place; or the coldest mean of a month. */
  readonly lowestC: number;
  /** Where its place is not stated, and a period is. */
  readonly coldMonths?: { readonly period: string; readonly months: readonly string[] };
  readonly fromC: number;
  readonly chargeCutOffC?: number;
  readonly source: string;
}

function isSpared({ chargeCutOffC }: BatteryPart): boolean {
  return chargeCutOffC !== undefined && chargeCutOffC >= fromC;
}

/** Once for each battery, in the first period with such months. */
function inColdMonths({ energy }: JudgedPlan): Found<Values>[] {
  const found = new Map<number, Found<Values>>();
  for (const { period, banks } of energy) {
    if (period.values.bankHeated) continue;
    for (const { batteries, months } of banks) {
      const cold = months.filter(({ bankC, sourcesWh }) => bankC < coldMeanC && sourcesWh > 0);
      if (cold.length === 0) continue;
      for (const battery of batteries) {
        const { chemistry, lowestC, chargeCutOffC, record, name } = battery;
        if (chemistry !== "LiFePO4" || lowestC !== undefined || isSpared(battery) || found.has(record))
          continue;
        found.set(record, {
          subject: name,
          at: atPart(battery),
          values: {
            lowestC: Math.min(...cold.map(({ bankC }) => bankC)),
            coldMonths: { period: period.name, months: cold.map(({ month }) => monthNames[month]!) },
            ...{ fromC, source },
            ...(chargeCutOffC !== undefined && { chargeCutOffC }),
          },
          related: [{ at: { record: period.record, path: [] }, text: `In the period ${period.name}` }],
        });
      }
    }
  }
  return [...found.values()];
}

/** A month with this mean has nights below freezing; the table of the world is within 2 °C, in mountains less. Common practice. */
const coldMeanC = 5;
