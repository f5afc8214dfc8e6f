import type { Period } from "../../model/read-periods.ts";
import { balanceOf } from "./bank-balance.ts";
import { daysOfMonths, daysOfYear, firstDayOfMonth } from "./calendar.ts";
import { hoursOfPeriod } from "./energy-of-period.ts";
import type { BankEnergy, SourceEnergy } from "./energy-result.ts";

/** Some days at a bank, hour by hour of solar time. Each list of hours begins at 0 h of the first day. */
export interface WeekEnergy {
  /** From 0. */
  readonly month: number;
  /** Day of the year, from 0. */
  readonly firstDay: number;
  /** Seven, or fewer if the period has fewer days in a row in the month. */
  readonly days: number;
  /** Each load that draws in these hours, the greatest first, W at the bank. */
  readonly loads: readonly HourlyPower[];
  /** The loss in conductors that loads share, W. */
  readonly sharedLossW: readonly number[];
  /** The power that each source can give, in the order of the bank's sources, W at the bank. */
  readonly sources: readonly (HourlyPower & { readonly kind: SourceEnergy["kind"] })[];
  /** The part of the load that was not served, and the part of the sources that was not taken, W. */
  readonly unmetW: readonly number[];
  readonly spilledW: readonly number[];
  /** State of charge at the end of each hour, and before the first, as a share of a full charge: one more than there are hours. */
  readonly charge: readonly number[];
  /** The reserve and the level at which the bank is empty in this month, as shares of a full charge. */
  readonly reserve: number;
  readonly empty: number;
}

interface HourlyPower {
  readonly name: string;
  readonly watts: readonly number[];
}

/** The month of a bank with the most energy missing; among equals that with the lowest charge, then the first. Undefined without months. */
export function worstMonth({ months }: BankEnergy): number | undefined {
  const [worst] = [...months].sort(
    (one, other) =>
      rounded(other.unmetWh * other.days) - rounded(one.unmetWh * one.days) ||
      rounded(one.lowest) - rounded(other.lowest),
  );
  return worst?.month;
}

/**
 * The worst week of a month: the seven days in a row, all in the month and the period, with the most energy missing; among equals with
 * the lowest charge, then with the lowest mean charge, then the first. From the same balance as the verdicts. Undefined if the period
 * has no day in the month.
 */
export function worstWeek(
  period: Period,
  { hours: { climate, flows } }: BankEnergy,
  month: number,
): WeekEnergy | undefined {
  const { bank, days, load, sun, chargers, run } = hoursOfPeriod(period, climate, flows);
  const span = worstDays(month, days.isIn, () => {
    const sourceW = new Float64Array(load.watts.length);
    for (const { watts } of [...sun, ...chargers])
      for (let at = 0; at < sourceW.length; at++) sourceW[at]! += watts[at]!;
    return balanceOf(bank, { loadW: load.watts, sourceW }, run);
  });
  if (!span) return undefined;
  const { firstDay, count, year } = span;
  const hours = Array.from({ length: count * 24 }, (_, hour) => firstDay * 24 + hour);
  const loads = load.each.map(({ consumer: { name }, wattsAt }) => ({ name, watts: hours.map(wattsAt) }));
  const alone = hours.map((_, hour) => loads.reduce((sum, { watts }) => sum + watts[hour]!, 0));
  const share = (wh: number) => (bank.fullWh > 0 ? wh / bank.fullWh : 0);
  const before = isStart(run.stretches, firstDay)
    ? run.startWh
    : year.storedWh[(firstDay * 24 - 1 + year.storedWh.length) % year.storedWh.length]!;
  return {
    ...{ month, firstDay, days: count },
    loads: greatestFirst(loads),
    sharedLossW: hours.map((at, hour) => Math.max(0, load.watts[at]! - alone[hour]!)),
    sources: [...sun, ...chargers].map(({ source: { kind, name }, watts }) => ({
      ...{ kind, name },
      watts: hours.map((at) => watts[at]!),
    })),
    unmetW: hours.map((at) => year.unmetWh[at]!),
    spilledW: hours.map((at) => year.spilledWh[at]!),
    charge: [Math.min(bank.fullWh, before), ...hours.map((at) => year.storedWh[at]!)].map(share),
    reserve: share(bank.reserveWh[month]!),
    empty: share(bank.floorWh[month]!),
  };
}

/** A stretch that is no whole year begins with the bank at its start; a whole year begins as the year before it ended. */
function isStart(stretches: readonly { readonly fromDay: number; readonly days: number }[], day: number) {
  return stretches.some(({ fromDay, days }) => fromDay === day && days < daysOfYear);
}

function greatestFirst(powers: readonly HourlyPower[]): readonly HourlyPower[] {
  return powers
    .map((power) => ({ power, sum: power.watts.reduce((sum, watts) => sum + watts, 0) }))
    .filter(({ sum }) => sum > 0)
    .sort((one, other) => other.sum - one.sum)
    .map(({ power }) => power);
}

function worstDays(
  month: number,
  isIn: readonly boolean[],
  balance: () => ReturnType<typeof balanceOf>,
):
  | { readonly firstDay: number; readonly count: number; readonly year: ReturnType<typeof balanceOf> }
  | undefined {
  const first = firstDayOfMonth[month]!;
  const inARow = Array<number>(daysOfMonths[month]! + 1).fill(0);
  for (let day = daysOfMonths[month]! - 1; day >= 0; day--)
    inARow[day] = isIn[first + day] ? inARow[day + 1]! + 1 : 0;
  const count = Math.min(7, Math.max(...inARow));
  if (count === 0) return undefined;
  const year = balance();
  const rows = inARow.flatMap((row, day) => (row >= count ? [rated(year, first + day, count)] : []));
  const [worst] = rows.sort(
    (one, other) => other.unmet - one.unmet || one.lowest - other.lowest || one.mean - other.mean,
  );
  return { firstDay: worst!.firstDay, count, year };
}

function rated({ unmetWh, storedWh }: ReturnType<typeof balanceOf>, firstDay: number, count: number) {
  let [unmet, lowest, sum] = [0, Number.POSITIVE_INFINITY, 0];
  for (let at = firstDay * 24; at < (firstDay + count) * 24; at++) {
    unmet += unmetWh[at]!;
    lowest = Math.min(lowest, storedWh[at]!);
    sum += storedWh[at]!;
  }
  return { firstDay, unmet: rounded(unmet), lowest: rounded(lowest), mean: rounded(sum) };
}

/** Rounding in the balance decides nothing. */
function rounded(value: number): number {
  return Math.round(value * 10_000);
}
