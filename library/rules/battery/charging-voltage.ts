import { type Charging, chargings } from "../../analysis/charging-sources.ts";
import { cellsOf, fullAtRestOf, restVoltageAt } from "../../model/battery-figures.ts";
import type { BatteryPart } from "../../model/network.ts";
import { chargingVoltage, floatVoltage, overchargedCell } from "../../standards/charging-practice.ts";
import type { Citation } from "../../standards/citation.ts";
import { lithiumIronPhosphateCell } from "../../standards/rest-voltage.ts";
import { defineRule, type Found, inNetwork } from "../rule.ts";
import { exceeds, formatRounded, withUnit } from "../wording/format-number.ts";
import { atPart, partInWords, relatedPart } from "../wording/part-in-words.ts";
import { sourceInWords } from "../wording/source-in-words.ts";

export const chargingVoltageOfBattery = defineRule<Values>({
  id: "battery/charging-voltage",
  title: "Charging voltage does not suit the battery",
  severity: "warning",
  why: "Too high a voltage gases lead-acid dry and overcharges lithium cells; too low a one never fills the battery.",
  sources: [
    chargingVoltage.source,
    overchargedCell.source,
    floatVoltage.source,
    lithiumIronPhosphateCell.source,
  ],
  fixable: false,
  acceptable: true,
  // Needs the output voltage of each charging source, and the chemistry and cells of the batteries between its terminals, every switch
  // closed. One finding for each source: the battery that it suits least. An error if it is for another number of cells, or if only the
  // protection of a LiFePO4 battery keeps it from overcharge.
  check: (plan) =>
    inNetwork(plan, ({ network, result }) => {
      const bySource = new Map<number, Found<Values>>();
      for (const one of chargings(network, result.topology.banks)) {
        const found = finding(one);
        if (found && !bySource.has(one.source.index)) bySource.set(one.source.index, found);
      }
      return [...bySource.values()];
    }),
  message({ what, chemistry, battery, outputV, limitV, perCellV, rangeV, source }) {
    const [from, to] = rangeV;
    const charges = `Charges ${chemistry} (${battery}) to ${withUnit(outputV, "V")}`;
    const setIt = `Set it to ${formatRounded(from)} to ${withUnit(to, "V")}`;
    const limit = withUnit(limitV, "V");
    switch (what) {
      case "no controller":
        return `No controller limits the modules, up to ${withUnit(outputV, "V")}, on ${chemistry} (${battery}), which takes up to ${limit} (${source}): put a solar controller between them.`;
      case "overcharge":
        return `${charges}, ${withUnit(perCellV, "V")} a cell; up to ${limit} is usual (${source}), and its protection alone keeps the cells from overcharge: it has to cut off under full current. ${setIt}.`;
      case "for more cells":
        return `${charges}, ${withUnit(perCellV, "V")} a cell; up to ${limit} is usual (${source}): this source is for more cells, and the battery overheats and bursts. ${setIt}, or use one for this battery.`;
      case "high":
        return `${charges}, ${withUnit(perCellV, "V")} a cell; up to ${limit} is usual (${source}). ${setIt}.`;
      case "low":
        return `${charges}, below the ${limit} ${chemistry === "LiFePO4" ? "at which it rests when full" : "that hold it full"} (${source}): it never gets full. ${setIt}.`;
      case "for fewer cells":
        return `${charges}, below the ${limit} at which it rests when empty (${source}): this source is for fewer cells and cannot charge it, and the battery may feed back into it. Use one for ${formatRounded(from)} to ${withUnit(to, "V")}.`;
    }
  },
});

interface Values {
  readonly what: "no controller" | "for more cells" | "overcharge" | "high" | "low" | "for fewer cells";
  readonly chemistry: string;
  /** "the battery house" */
  readonly battery: string;
  readonly outputV: number;
  readonly limitV: number;
  readonly perCellV: number;
  /** The usual absorption voltages. */
  readonly rangeV: readonly [number, number];
  readonly source: string;
}

function finding({ source, outputV, batteries }: Charging): Found<Values> | undefined {
  const [first] = batteries;
  if (!first) return undefined;
  const isArray = source.kind === "solarArray";
  const sum = (of: (battery: BatteryPart) => number) =>
    batteries.reduce((total, battery) => total + of(battery), 0);
  const absorptionV = (end: 0 | 1) =>
    sum(({ chemistry, systemV }) => (chargingVoltage.absorptionFor12V[chemistry][end] * systemV) / 12);
  const rangeV = [absorptionV(0), absorptionV(1)] as const;
  const fullV = sum((battery) =>
    battery.chemistry === "LiFePO4"
      ? fullAtRestOf(battery)
      : floatVoltage.leastLeadAcidCellV * cellsOf(battery),
  );
  const emptyV = sum((battery) => restVoltageAt(battery, 0).voltageV);
  const isHigh = exceeds(outputV, rangeV[1]);
  // Of modules below the charging voltage there is nothing to limit.
  if (!isHigh && (isArray || !exceeds(fullV, outputV))) return undefined;
  const isForMore = !isArray && exceeds(outputV, forMoreCells * rangeV[1]);
  const isForFewer = !exceeds(outputV, emptyV);
  const perCellV = outputV / sum(cellsOf);
  const isOvercharge =
    isHigh && first.chemistry === "LiFePO4" && exceeds(perCellV, overchargedCell.lithiumIronPhosphateV);
  const tooHigh = isForMore ? "for more cells" : isOvercharge ? "overcharge" : "high";
  return {
    subject: source.name,
    at: atPart(source, ...(isArray ? [] : ["outputV"])),
    ...((isForMore || isForFewer || isOvercharge) && { severity: "error" }),
    related: [relatedPart(first)],
    values: {
      what: isArray ? "no controller" : isHigh ? tooHigh : isForFewer ? "for fewer cells" : "low",
      chemistry: first.chemistry,
      battery: partInWords(first),
      outputV,
      limitV: isHigh ? rangeV[1] : isForFewer ? emptyV : fullV,
      perCellV,
      rangeV,
      source: sourceInWords(isHigh ? chargingVoltage.source : lowSource(first)),
    },
  };
}

function lowSource({ chemistry }: BatteryPart): Citation {
  return chemistry === "LiFePO4" ? lithiumIronPhosphateCell.source : floatVoltage.source;
}

/** No charge of any chemistry goes so far above the usual voltage, not even an equalising one: common practice, no source. */
const forMoreCells = 1.25;
