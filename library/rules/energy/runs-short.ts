import {
  type BankEnergy,
  isAtBest,
  isShort,
  type MonthEnergy,
  type PeriodEnergy,
} from "../../analysis/energy/energy-result.ts";
import { monthNames } from "../../model/use-properties.ts";
import { clearnessSource } from "../../standards/world.ts";
import { leastChangeFixes } from "../fixes/least-change-fixes.ts";
import { ownRequirement } from "../own-requirement.ts";
import { defineRule, type Found } from "../rule.ts";
import { banksInWords } from "../wording/banks-in-words.ts";
import { formatAbout } from "../wording/format-number.ts";
import { listInWords } from "../wording/part-in-words.ts";
import { lossesNotCounted } from "../wording/unknown-length.ts";

const keepsUp = ownRequirement(
  "In a period, every load has its supply in every hour, and the charge does not fall below the reserve.",
);

export const energyRunsShort = defineRule<Values>({
  id: "energy/runs-short",
  title: "Bank runs short in a period",
  severity: "warning",
  why: "Lights, fridge and pumps stop in the dark months, and a bank that is emptied again and again wears out early.",
  sources: [keepsUp, clearnessSource],
  fixable: true,
  acceptable: false,
  // Needs the balance of each bank over each period, hour by hour.
  check: ({ energy }) =>
    energy.flatMap((one) =>
      one.banks.flatMap((bank): Found<Values>[] => {
        const short = bank.months.filter(({ verdict }) => isShort(verdict));
        if (short.length === 0) return [];
        const [battery] = bank.batteries;
        return [
          {
            subject: one.period.name,
            at: { record: one.period.record, path: [] },
            ...(battery && { ofRecord: battery.record }),
            values: valuesOf(one, bank, short),
            related: battery ? [{ at: { record: battery.record, path: [] }, text: "The bank" }] : [],
          },
        ];
      }),
    ),
  whenAsked: ({ of: { energy, bank } }) => leastChangeFixes(energy, bank),
  message({
    period,
    bank,
    atBest,
    lengths,
    short,
    onAverage,
    tooCold,
    unmetHours,
    hoursBelowReserve,
    worst,
  }) {
    const hours = [
      unmetHours > 0 ? `without supply for about ${formatAbout(unmetHours)} h` : "",
      hoursBelowReserve > 0 ? `below its reserve for about ${formatAbout(hoursBelowReserve)} h` : "",
    ].filter(Boolean);
    const average =
      onAverage.length === 0
        ? ""
        : onAverage.length === short.length
          ? ", where its sources give less than the mean use"
          : `; in ${listInWords(onAverage, 12)} its sources give less than the mean use`;
    const cold = tooCold.length === 0 ? "" : ` In ${listInWords(tooCold, 12)} it is too cold to be charged.`;
    const whyShort =
      worst.sourcesWh >= worst.useWh ? ", enough on average, but not on several cloudy days in a row" : "";
    return `${atBest ? "At best: in" : "In"} ${period}, ${bank} runs short in ${listInWords(short, 12)}, ${hours.join(" and ")}${average}. In ${worst.month} about ${formatAbout(worst.useWh)} Wh are used a day, and the sources give about ${formatAbout(worst.sourcesWh)} Wh${whyShort}.${["", ...lengths].join(" ")}${cold} ${cold ? "Keep it warm, add" : "Add"} sun, driving or shore power, a larger bank, or use less.`;
  },
});

interface Values {
  readonly period: string;
  readonly bank: string;
  /** Some loads state no hours, or the length of a run is unknown. */
  readonly atBest: boolean;
  /** The runs of unknown length, in sentences. */
  readonly lengths: readonly string[];
  readonly short: readonly string[];
  /** Of those, the months in which the sources do not give the mean use. */
  readonly onAverage: readonly string[];
  /** Those in which a lithium bank takes no charge. */
  readonly tooCold: readonly string[];
  readonly unmetHours: number;
  readonly hoursBelowReserve: number;
  readonly worst: { readonly month: string; readonly useWh: number; readonly sourcesWh: number };
  /** The balance itself, for the fixes. */
  readonly of: { readonly energy: PeriodEnergy; readonly bank: BankEnergy };
}

function valuesOf(energy: PeriodEnergy, bank: BankEnergy, short: readonly MonthEnergy[]): Values {
  const names = (months: readonly MonthEnergy[]) => months.map(({ month }) => monthNames[month]!);
  const sum = (of: (month: MonthEnergy) => number) => short.reduce((total, month) => total + of(month), 0);
  const worst = short.reduce((most, month) => (gap(month) > gap(most) ? month : most));
  return {
    period: energy.period.name,
    bank: banksInWords(bank),
    atBest: isAtBest(bank),
    lengths: lossesNotCounted(bank),
    short: names(short),
    onAverage: names(short.filter(({ verdict }) => verdict === "not on average")),
    tooCold: names(short.filter(({ takesCharge }) => !takesCharge)),
    unmetHours: sum(({ unmetHours }) => unmetHours),
    hoursBelowReserve: sum(({ hoursBelowReserve }) => hoursBelowReserve),
    worst: { month: monthNames[worst.month]!, useWh: worst.useWh, sourcesWh: worst.sourcesWh },
    of: { energy, bank },
  };
}

function gap({ useWh, sourcesWh }: MonthEnergy): number {
  return useWh - sourcesWh;
}
