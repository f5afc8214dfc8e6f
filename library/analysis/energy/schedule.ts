import { hoursBetween, monthNames, weekdayNames } from "../../model/use-properties.ts";
import type { UseValues } from "../../model/use-values.ts";
import { daysOfYear, monthOfDay, weekdayOf } from "./calendar.ts";
import type { SunOfYear } from "./hours-of-sun.ts";

/** Hours in which something runs, and on which days. */
export interface Schedule extends UseValues {
  /** On every so many days, counted from the first day of the period. */
  readonly everyDays?: number | undefined;
}

/** What a schedule depends on besides itself. */
export interface Days {
  /** The first day of the period, from 0. */
  readonly firstDay: number;
  /** Hours by which the plan's clock is ahead of the sun. */
  readonly clockAheadH: number;
  readonly sun: SunOfYear;
}

/**
 * The share of each hour of the year in which it runs, 0 to 1. Hours that are fewer than those in which it may run are spread evenly
 * over them; hours past midnight belong to the day on which they lie.
 */
export function sharesOf(schedule: Schedule, days: Days): Float64Array {
  const before = sharesBefore.get(schedule);
  const isSame =
    before?.days.sun === days.sun &&
    before.days.firstDay === days.firstDay &&
    before.days.clockAheadH === days.clockAheadH;
  if (isSame) return before.shares;
  const shares = workOutShares(schedule, days);
  sharesBefore.set(schedule, { days, shares });
  return shares;
}

/** An edit elsewhere leaves the hours of a load the same object. */
const sharesBefore = new WeakMap<Schedule, { readonly days: Days; readonly shares: Float64Array }>();

function workOutShares(schedule: Schedule, { firstDay, clockAheadH, sun }: Days): Float64Array {
  const shares = new Float64Array(daysOfYear * 24);
  const window = windowOf(schedule, clockAheadH);
  const months = schedule.months && new Set(schedule.months.map((name) => monthNames.indexOf(name)));
  const weekdays =
    schedule.daysOfWeek && new Set(schedule.daysOfWeek.map((name) => weekdayNames.indexOf(name)));
  for (let day = 0; day < daysOfYear; day++) {
    const month = monthOfDay[day]!;
    if (months && !months.has(month)) continue;
    if (weekdays && !weekdays.has(weekdayOf(day))) continue;
    const { everyDays = 1 } = schedule;
    if (((day - firstDay + daysOfYear) % daysOfYear) % everyDays !== 0) continue;
    const may = schedule.when === undefined ? window : inLight(schedule.when, day, sun);
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

function inLight(when: "dark" | "daylight", day: number, { globalW }: SunOfYear): readonly number[] {
  return Array.from({ length: 24 }, (_, hour) => {
    const isLight = globalW[day * 24 + hour]! > 0;
    return isLight === (when === "daylight") ? 1 : 0;
  });
}
