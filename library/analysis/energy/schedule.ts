import { hoursBetween, monthNames, weekdayNames } from "../../model/use-properties.ts";
import type { UseValues } from "../../model/use-values.ts";
import { workedOutOnce } from "../../model/worked-out-once.ts";
import { daysOfYear, monthOfDay, weekdayOf } from "./calendar.ts";
import type { SunOfYear } from "./hours-of-sun.ts";

/** Hours in which something runs, and on which days. */
export interface Schedule extends UseValues {
  /** On every so many days, counted from the first day of the period. */
  readonly everyDays?: number | undefined;
}

/** The days to which a schedule applies, and their sun. */
export interface Days {
  /** By day of the year: whether it is in the period. */
  readonly isIn: readonly boolean[];
  /** The number of these days. */
  readonly count: number;
  /** The first day of the period, from 0. */
  readonly firstDay: number;
  /** Hours by which the plan's clock is ahead of the sun. */
  readonly clockAheadH: number;
  readonly sun: SunOfYear;
}

/** The hours in which something runs. */
export interface RunningHours {
  /** By hour of the year: the share in which it runs, 0 to 1; 0 outside of the period. */
  readonly shares: Float64Array;
  /** Their sum, h. */
  readonly sumH: number;
}

/**
 * The share of each hour in which something runs. Hours that are fewer than those in which it may run are spread evenly
 * over them; hours past midnight belong to the day on which they lie.
 */
export function runningHours(schedule: Schedule, days: Days): RunningHours {
  const before = hoursBefore.get(schedule);
  if (before && areSameDays(before.days, days)) return before.hours;
  const shares = workOutShares(schedule, days);
  const hours = { shares, sumH: shares.reduce((sum, share) => sum + share, 0) };
  hoursBefore.set(schedule, { days, hours });
  return hours;
}

/** An edit elsewhere leaves the hours of a load the same object. */
const hoursBefore = new WeakMap<Schedule, { readonly days: Days; readonly hours: RunningHours }>();

export function areSameDays(one: Days, other: Days): boolean {
  return (
    one.sun === other.sun &&
    one.firstDay === other.firstDay &&
    one.clockAheadH === other.clockAheadH &&
    one.isIn.every((is, day) => is === other.isIn[day])
  );
}

function workOutShares(schedule: Schedule, { isIn, firstDay, clockAheadH, sun }: Days): Float64Array {
  const shares = new Float64Array(daysOfYear * 24);
  const window = windowOf(schedule, clockAheadH);
  const months = schedule.months && new Set(schedule.months.map((name) => monthNames.indexOf(name)));
  const weekdays =
    schedule.daysOfWeek && new Set(schedule.daysOfWeek.map((name) => weekdayNames.indexOf(name)));
  for (let day = 0; day < daysOfYear; day++) {
    if (!isIn[day]) continue;
    const month = monthOfDay[day]!;
    if (months && !months.has(month)) continue;
    if (weekdays && !weekdays.has(weekdayOf(day))) continue;
    const { everyDays = 1 } = schedule;
    if (((day - firstDay + daysOfYear) % daysOfYear) % everyDays !== 0) continue;
    const may = schedule.when === undefined ? window : hoursOfLight(sun)[schedule.when][day]!;
    const hours = may.reduce((sum, share) => sum + share, 0);
    const runs = Math.min(1, (schedule.hoursPerDay ?? hours) / (hours || 1));
    const duty = (schedule.dutyPercentByMonth?.[month] ?? schedule.dutyPercent ?? 100) / 100;
    for (let hour = 0; hour < 24; hour++) shares[day * 24 + hour] = may[hour]! * runs * duty;
  }
  return shares;
}

/** By hour of solar time: the part of it that lies between the hours that the plan states. */
function windowOf({ fromHour, untilHour }: Schedule, clockAheadH: number): readonly number[] {
  if (fromHour === undefined || untilHour === undefined) return Array<number>(24).fill(1);
  const from = (fromHour - clockAheadH + 48) % 24;
  const until = from + hoursBetween(fromHour, untilHour);
  const overlap = (start: number) => Math.max(0, Math.min(start + 1, until) - Math.max(start, from));
  return Array.from({ length: 24 }, (_, hour) => overlap(hour) + overlap(hour + 24));
}

/** By day of the year: its hours of daylight, and the dark ones. */
const hoursOfLight = workedOutOnce(({ globalW }: SunOfYear) => {
  const daylight = Array.from({ length: daysOfYear }, (_, day) =>
    Array.from({ length: 24 }, (_, hour) => (globalW[day * 24 + hour]! > 0 ? 1 : 0)),
  );
  return { daylight, dark: daylight.map((hours) => hours.map((light) => 1 - light)) };
});
