import { type BankModel, type BankYear, nearlyWh } from "./bank-balance.ts";
import { daysOfMonths, firstDayOfMonth } from "./calendar.ts";
import type { HoursAtBank, MonthEnergy, Verdict } from "./energy-result.ts";

/**
 * The months of a period, each with its sums and its verdict; only months with days in the period. A winter begins with its first month,
 * a whole year with January.
 */
export function monthsOf(
  { bank, days, loadW, sunW, chargersW, temperatureC }: HoursAtBank,
  of: {
    /** Some load states its hours. */
    readonly isJudged: boolean;
    readonly year: BankYear;
    /** With the sun of a poor year; worked out only if a month keeps up without it. */
    readonly poorYear: () => BankYear;
  },
): readonly MonthEnergy[] {
  const { isJudged, year } = of;
  let poor: BankYear | undefined;
  const inPoorYear = () => {
    poor ??= of.poorYear();
    return poor;
  };
  const all = daysOfMonths.flatMap((_, month): MonthEnergy[] => {
    const own = Array.from(
      { length: daysOfMonths[month]! },
      (_, day) => firstDayOfMonth[month]! + day,
    ).filter((day) => days.isIn[day]);
    if (own.length === 0) return [];
    const mean = (hourly: Float64Array) => sumOver(own, hourly) / own.length;
    const useWh = mean(loadW);
    const sourcesWh = mean(sunW) + mean(chargersW);
    const now = extremesOf(bank, year, own, month);
    const usableWh = bank.fullWh - bank.reserveWh[month]!;
    return [
      {
        month,
        days: own.length,
        verdict: !isJudged
          ? "not judged"
          : verdictOf(
              now,
              () => extremesOf(bank, inPoorYear(), own, month),
              sourcesWh * bank.efficiency < useWh,
            ),
        useWh,
        sourcesWh,
        spilledWh: mean(year.spilledWh),
        unmetWh: mean(year.unmetWh),
        lostWh: mean(year.lostWh),
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

function sumOver(days: readonly number[], hourly: Float64Array): number {
  let sum = 0;
  for (const day of days) for (let at = day * 24; at < day * 24 + 24; at++) sum += hourly[at]!;
  return sum;
}

interface Extremes {
  readonly lowest: number;
  readonly highest: number;
  readonly hoursBelowReserve: number;
  readonly unmetHours: number;
}

function extremesOf(bank: BankModel, year: BankYear, days: readonly number[], month: number): Extremes {
  const { storedWh, unmetWh } = year;
  const shortBelow = bank.reserveWh[month]! - nearlyWh;
  let [lowestWh, highestWh, hoursBelowReserve, unmetHours] = [bank.fullWh, 0, 0, 0];
  for (const day of days)
    for (let at = day * 24; at < day * 24 + 24; at++) {
      const stored = storedWh[at]!;
      if (stored < lowestWh) lowestWh = stored;
      if (stored > highestWh) highestWh = stored;
      if (stored < shortBelow) hoursBelowReserve++;
      if (unmetWh[at]! > nearlyWh) unmetHours++;
    }
  const share = (wh: number) => (bank.fullWh > 0 ? wh / bank.fullWh : 0);
  return { lowest: share(lowestWh), highest: share(highestWh), hoursBelowReserve, unmetHours };
}

function verdictOf(now: Extremes, inPoorYear: () => Extremes, isShortOnAverage: boolean): Verdict {
  const runsShort = ({ unmetHours, hoursBelowReserve }: Extremes) => unmetHours > 0 || hoursBelowReserve > 0;
  if (runsShort(now)) return isShortOnAverage ? "not on average" : "runs short";
  return runsShort(inPoorYear()) ? "barely" : "keeps up";
}
