import { dayOf } from "../../model/period-properties.ts";
import type { Period } from "../../model/read-periods.ts";
import { monthNames } from "../../model/use-properties.ts";
import type { Stretch } from "./bank-balance.ts";
import { daysOfMonths, daysOfYear, firstDayOfMonth } from "./calendar.ts";
import type { Climate } from "./climate.ts";
import { type SunOfYear, sunOfYear } from "./hours-of-sun.ts";

/** The days of a period, and their sun. */
export interface Days {
  /** By day of the year: whether it is in the period. */
  readonly isIn: readonly boolean[];
  /** The number of these days. */
  readonly count: number;
  /** Without gaps; the first stretch begins after the longest time outside of the period. */
  readonly stretches: readonly Stretch[];
  /** The first day of the period, from 0. */
  readonly firstDay: number;
  /** Hours by which the plan's clock is ahead of the sun. */
  readonly clockAheadH: number;
  readonly sun: SunOfYear;
}

/** The same object for the same days under the same sun: all that is worked out by the hour is kept with it. */
export function daysOfPeriod(values: Period["values"], climate: Climate): Days {
  const sun = sunOfYear(climate);
  const there = known.get(sun) ?? new Map<string, Days>();
  known.set(sun, there);
  const { months, fromDay, untilDay, clockAheadH = 0 } = values;
  const key = JSON.stringify([months, fromDay, untilDay, clockAheadH]);
  const before = there.get(key);
  if (before) return before;
  if (there.size >= mostKept) there.clear();
  const stretches = stretchesOf(values);
  const isIn = daysIn(stretches);
  const days: Days = {
    ...{ isIn, stretches, clockAheadH, sun },
    count: isIn.filter(Boolean).length,
    firstDay: stretches[0]!.fromDay,
  };
  there.set(key, days);
  return days;
}

const known = new WeakMap<SunOfYear, Map<string, Days>>();

/** Periods of one place: a date that is typed passes a few. */
const mostKept = 8;

function stretchesOf({ months, fromDay, untilDay }: Period["values"]): readonly Stretch[] {
  if (fromDay !== undefined && untilDay !== undefined) {
    const [from, until] = [numberOf(fromDay), numberOf(untilDay)];
    return [{ fromDay: from, days: ((until - from + daysOfYear) % daysOfYear) + 1 }];
  }
  if (months === undefined || months.length === 12) return [{ fromDay: 0, days: daysOfYear }];
  const isIn = monthNames.map((name) => months.includes(name));
  const first = isIn.findIndex((is, month) => is && !isIn[(month + 11) % 12]);
  const stretches: { fromDay: number; days: number }[] = [];
  for (let step = 0; step < 12; step++) {
    const month = (first + step) % 12;
    if (!isIn[month]) continue;
    if (isIn[(month + 11) % 12] && step > 0) stretches.at(-1)!.days += daysOfMonths[month]!;
    else stretches.push({ fromDay: firstDayOfMonth[month]!, days: daysOfMonths[month]! });
  }
  return stretches;
}

function numberOf(written: string): number {
  const { month, day } = dayOf(written)!;
  return firstDayOfMonth[month]! + day - 1;
}

/** By day of the year. */
function daysIn(stretches: readonly Stretch[]): readonly boolean[] {
  const isIn = Array<boolean>(daysOfYear).fill(false);
  for (const { fromDay, days } of stretches)
    for (let step = 0; step < days; step++) isIn[(fromDay + step) % daysOfYear] = true;
  return isIn;
}
