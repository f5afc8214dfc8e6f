import type { BankModel, BankMonths } from "./bank-balance.ts";
import { daysOfMonths, firstDayOfMonth, meansByMonth } from "./calendar.ts";
import type { HoursAtBank, MonthEnergy, SourceEnergy, Verdict } from "./energy-result.ts";

/**
 * The months of a period, each with its sums and its verdict; only months with days in the period. A winter begins with its first month,
 * a whole year with January.
 */
export function monthsOf(
  { bank, days, loadW, temperatureC }: HoursAtBank,
  of: {
    readonly sources: readonly SourceEnergy[];
    /** Some load states its hours. */
    readonly isJudged: boolean;
    readonly year: BankMonths;
    /** With the sun of a poor year; worked out only if a month keeps up without it. */
    readonly poorYear: () => BankMonths;
  },
): readonly MonthEnergy[] {
  const { isJudged, year } = of;
  let poor: BankMonths | undefined;
  const inPoorYear = (month: number) => {
    poor ??= of.poorYear();
    return extremesOf(bank, poor, month);
  };
  const use = meansByMonth(loadW, days.isIn);
  const all = daysOfMonths.flatMap((_, month): MonthEnergy[] => {
    const count = daysIn(month, days.isIn);
    if (count === 0) return [];
    const useWh = use[month]!;
    const sourcesWh = sum(of.sources, month);
    const now = extremesOf(bank, year, month);
    const usableWh = bank.fullWh - bank.reserveWh[month]!;
    return [
      {
        month,
        days: count,
        verdict: !isJudged
          ? "not judged"
          : verdictOf(now, () => inPoorYear(month), sourcesWh * bank.efficiency < useWh),
        useWh,
        sourcesWh,
        spilledWh: year.spilledWh[month]! / count,
        unmetWh: year.unmetWh[month]! / count,
        lostWh: year.lostWh[month]! / count,
        ...now,
        autonomyDays: useWh > 0 ? usableWh / useWh : undefined,
        takesCharge: bank.chargeable[month]!,
        bankC: temperatureC[month]!,
      },
    ];
  });
  const [january, december] = [all.some(({ month }) => month === 0), all.some(({ month }) => month === 11)];
  const begins = all.findIndex(({ month }, at) => at > 0 && all[at - 1]!.month !== month - 1);
  return january && december && begins > 0 ? [...all.slice(begins), ...all.slice(0, begins)] : all;
}

function daysIn(month: number, isIn: readonly boolean[]): number {
  let count = 0;
  for (let day = firstDayOfMonth[month]!; day < firstDayOfMonth[month]! + daysOfMonths[month]!; day++)
    if (isIn[day]) count++;
  return count;
}

function sum(sources: readonly SourceEnergy[], month: number): number {
  return sources.reduce((total, { dailyWh }) => total + dailyWh[month]!, 0);
}

function extremesOf({ fullWh }: BankModel, months: BankMonths, month: number): Extremes {
  const share = (wh: number) => (fullWh > 0 ? wh / fullWh : 0);
  return {
    lowest: share(months.lowestWh[month]!),
    highest: share(months.highestWh[month]!),
    hoursBelowReserve: months.hoursBelowReserve[month]!,
    unmetHours: months.unmetHours[month]!,
  };
}

type Extremes = Pick<MonthEnergy, "lowest" | "highest" | "hoursBelowReserve" | "unmetHours">;

function verdictOf(now: Extremes, inPoorYear: () => Extremes, isShortOnAverage: boolean): Verdict {
  const runsShort = ({ unmetHours, hoursBelowReserve }: Extremes) => unmetHours > 0 || hoursBelowReserve > 0;
  if (runsShort(now)) return isShortOnAverage ? "not on average" : "runs short";
  return runsShort(inPoorYear()) ? "barely" : "keeps up";
}
