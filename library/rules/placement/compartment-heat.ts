import { compartmentHeats } from "../../analysis/placement/compartment-heat.ts";
import { wallHeat } from "../../standards/wall-heat.ts";
import { defineRule, type Found } from "../rule.ts";
import { formatRounded, withUnit } from "../wording/format-number.ts";
import { listInWords } from "../wording/part-in-words.ts";
import { atRecord } from "../wording/placement-in-words.ts";
import { sourceInWords } from "../wording/source-in-words.ts";

export const compartmentHeat = defineRule<Values>({
  id: "placement/compartment-heat",
  title: "Heat in a closed compartment",
  severity: "info",
  why: "Equipment in a closed space warms its own air: it gives less power, switches off, or ages within months.",
  sources: [wallHeat.source],
  fixable: false,
  acceptable: true,
  // Needs the heat in each compartment. Silent if its walls are not stated, or of wood: placement/ways-not-judged names it.
  check({ placement, network }): Found<Values>[] {
    if (!placement || !network) return [];
    return compartmentHeats(placement, network.network).flatMap((heat): Found<Values>[] => {
      const compartment = placement.layout.compartments[heat.compartment]!;
      if (!heat.rise) return [];
      return [
        {
          subject: compartment.name,
          at: atRecord(compartment),
          values: {
            ...{ heatW: heat.heatW, from: heat.from, unknown: heat.unknown, ...heat.rise },
            statedC: compartment.ambientC,
            source: sourceInWords(wallHeat.source),
          },
        },
      ];
    });
  },
  message({ heatW, from, unknown, riseK, wattPerK, insideC, statedC, source }) {
    const least = unknown.length === 0 ? "" : "at least ";
    const inside = insideC === undefined ? "" : `, to ${withUnit(insideC, "°C")}`;
    const stated =
      insideC === undefined || statedC === undefined || insideC <= statedC
        ? ""
        : ` The plan takes ${withUnit(statedC, "°C")} in it: state more, or lead air through.`;
    const without =
      unknown.length === 0 ? "" : ` Not counted, as its heatW is not stated: ${listInWords(unknown, 3)}.`;
    return `${listInWords(from, 3)} ${from.length === 1 ? "gives" : "give"} off ${least}${withUnit(heatW, "W")} at full load: through these walls (${formatRounded(wattPerK)} W/K) the air in it becomes ${least}${formatRounded(riseK)} K warmer than outside${inside} (${source}).${stated}${without}`;
  },
});

interface Values {
  readonly heatW: number;
  readonly from: readonly string[];
  /** Equipment whose heat is not known. */
  readonly unknown: readonly string[];
  readonly riseK: number;
  readonly wattPerK: number;
  readonly insideC?: number;
  /** The temperature that the plan states for the air in it. */
  readonly statedC: number | undefined;
  readonly source: string;
}
