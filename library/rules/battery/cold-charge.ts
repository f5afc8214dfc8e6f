import { chargings } from "../../analysis/charging-sources.ts";
import { coldCharging } from "../../standards/charging-practice.ts";
import { defineRule, inNetwork } from "../rule.ts";
import { withUnit } from "../wording/format-number.ts";
import { atPart } from "../wording/part-in-words.ts";
import { sourceInWords } from "../wording/source-in-words.ts";

export const coldCharge = defineRule<Values>({
  id: "battery/cold-charge",
  title: "Lithium battery charged below 0 °C",
  severity: "warning",
  why: "Below 0 °C a LiFePO4 cell deposits metallic lithium while it is charged: it loses capacity for good, and may short inside.",
  sources: [coldCharging.source],
  fixable: false,
  acceptable: true,
  // Needs the coldest temperature of the battery's own place, and whether anything charges it. Silent if the plan does not state it.
  check: (plan) =>
    inNetwork(plan, ({ network, result }) => {
      const charged = new Set(
        chargings(network, result.topology.banks).flatMap(({ batteries }) => batteries),
      );
      return network.parts.flatMap((part) => {
        if (part.kind !== "battery" || part.chemistry !== "LiFePO4" || part.lowestC === undefined) return [];
        const { lowestC, chargeCutOffC } = part;
        const fromC = coldCharging.lithiumIronPhosphateFromC;
        const isSpared = chargeCutOffC !== undefined && chargeCutOffC >= fromC;
        if (lowestC >= fromC || isSpared || !charged.has(part)) return [];
        const values: Values = {
          lowestC,
          fromC,
          ...(chargeCutOffC !== undefined && { chargeCutOffC }),
          source: sourceInWords(coldCharging.source),
        };
        const property = chargeCutOffC === undefined ? "lowestC" : "chargeCutOffC";
        return [{ subject: part.name, at: atPart(part, property), values }];
      });
    }),
  message({ lowestC, fromC, chargeCutOffC, source }) {
    const cutOff =
      chargeCutOffC === undefined
        ? "no cut-off is stated"
        : `charging stops only below ${withUnit(chargeCutOffC, "°C")} (chargeCutOffC)`;
    return `Its place gets as cold as ${withUnit(lowestC, "°C")} (lowestC), and ${cutOff}: LiFePO4 must not be charged below ${withUnit(fromC, "°C")} (${source}). Keep it warmer, or state chargeCutOffC of its protection.`;
  },
});

interface Values {
  readonly lowestC: number;
  readonly fromC: number;
  readonly chargeCutOffC?: number;
  readonly source: string;
}
