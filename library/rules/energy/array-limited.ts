import type { MonthEnergy, PeriodEnergy, SourceEnergy } from "../../analysis/energy/energy-result.ts";
import { monthNames } from "../../model/use-properties.ts";
import type { Citation } from "../../standards/citation.ts";
import { ownRequirement } from "../own-requirement.ts";
import { defineRule, type Found } from "../rule.ts";
import { formatAbout } from "../wording/format-number.ts";
import { listInWords } from "../wording/part-in-words.ts";

const withoutTracking: Citation = {
  document: "Public page on controllers without tracking for vehicles",
  section: "worked numbers for a module of 100 W",
  authority: "common practice",
  confirmed: "read",
  note: "The current of the module flows at the voltage of the battery; the voltage above it is lost.",
};
const worthALook = ownRequirement(
  "A controller that leaves a third of the energy unused for want of tracking, or cuts off a tenth of it by its current, is worth a look.",
);

export const energyArrayLimited = defineRule<Values>({
  id: "energy/array-limited",
  title: "Controller limits a solar array",
  severity: "info",
  why: "Modules that were paid for give less than they could, and no lamp or meter shows it.",
  sources: [withoutTracking, worthALook],
  fixable: false,
  acceptable: true,
  // Needs the yield of each array by month, what its controller cuts off, and what one that tracks would give. The gravest limit of an
  // array is named once, for the period in which it loses most.
  check({ energy }): Found<Values>[] {
    const byRecord = new Map<number, Found<Values>>();
    for (const one of energy)
      for (const { sources, months } of one.banks)
        for (const source of sources) {
          const found = limitOf(one, source, months);
          const before = source.record === undefined ? undefined : byRecord.get(source.record);
          if (found && source.record !== undefined && !(before && isWorse(before.values, found.values)))
            byRecord.set(source.record, found);
        }
    return [...byRecord.values()];
  },
  message({ name, period, limit, months, dailyWh, percent, hoursADay }) {
    const when = `${listInWords(months)} of ${period}`;
    switch (limit) {
      case "heat":
        return `${name} gives no energy in about ${formatAbout(hoursADay)} h a day in ${when}: in their heat the modules have less voltage than the battery and the wiring need, and the controller does not track. Use modules of more voltage (maxPowerV).`;
      case "voltage":
        return `${name} gives about ${formatAbout(percent)} % less than with a controller that tracks, about ${formatAbout(dailyWh)} Wh a day in ${when}: without tracking the voltage above the battery's is lost. Use such a controller, or modules made for this battery.`;
      case "current":
        return `The output current of its controller cuts off about ${formatAbout(percent)} % of the yield of ${name}, about ${formatAbout(dailyWh)} Wh a day in ${when}: a larger outputA would use it, if the bank can take it.`;
      default:
        return limit satisfies never;
    }
  },
});

interface Values {
  readonly name: string;
  readonly period: string;
  /** `heat`: no voltage; `voltage`: lost without tracking; `current`: cut off by the limit of the controller's current. */
  readonly limit: "heat" | "voltage" | "current";
  readonly months: readonly string[];
  /** In the mean of those months. */
  readonly dailyWh: number;
  readonly percent: number;
  readonly hoursADay: number;
}

const [lostWithoutTracking, cutOff, hotHours] = [1 / 3, 0.1, 0.1];
const gravest = ["current", "voltage", "heat"] as const;

function limitOf(
  { period }: PeriodEnergy,
  source: SourceEnergy,
  months: readonly MonthEnergy[],
): Found<Values> | undefined {
  const { record, name, dailyWh, cutWh, missedWh, tooHotH } = source;
  if (record === undefined || !cutWh) return undefined;
  const lost = { heat: tooHotH, voltage: missedWh, current: cutWh };
  const isLimited = (limit: Values["limit"], month: number): boolean => {
    const most = dailyWh[month]! + (limit === "voltage" ? (missedWh?.[month] ?? 0) : cutWh[month]!);
    if (limit === "heat") return (tooHotH?.[month] ?? 0) > hotHours;
    return (lost[limit]?.[month] ?? 0) > most * (limit === "voltage" ? lostWithoutTracking : cutOff);
  };
  const limit = gravest.findLast((one) => months.some(({ month }) => isLimited(one, month)));
  if (!limit) return undefined;
  const own = months.map(({ month }) => month).filter((month) => isLimited(limit, month));
  const mean = (of: readonly number[] | undefined) =>
    own.reduce((sum, month) => sum + (of?.[month] ?? 0), 0) / own.length;
  const lostWh = mean(limit === "current" ? cutWh : missedWh);
  return {
    subject: name,
    at: { record, path: [] },
    ...(limit !== "current" && { severity: "warning" as const }),
    values: {
      ...{ name, period: period.name, limit, dailyWh: lostWh },
      months: own.map((month) => monthNames[month]!),
      percent: (lostWh / (mean(dailyWh) + lostWh)) * 100,
      hoursADay: mean(tooHotH),
    },
    related: [{ at: { record: period.record, path: [] }, text: `In the period ${period.name}` }],
  };
}

function isWorse(one: Values, other: Values): boolean {
  const rank = ({ limit, percent, months }: Values) => gravest.indexOf(limit) * 1e6 + percent * months.length;
  return rank(one) >= rank(other);
}
