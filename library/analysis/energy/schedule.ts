import { hoursBetween, monthNames, weekdayNames } from "../../model/use-properties.ts";
import type { UseValues } from "../../model/use-values.ts";
import { workedOutOnce } from "../../model/worked-out-once.ts";
import { daysOfYear, monthOfDay, weekdayOf } from "./calendar.ts";
import type { Days } from "./days-of-period.ts";
import type { SunOfYear } from "./hours-of-sun.ts";

/** Hours in which something runs, and on which days. */
export interface Schedule extends UseValues {
  /** On every so many days, counted from the first day of the period. */
  readonly everyDays?: number | undefined;
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
 * over them; hours past midnight belong to the day on which they lie. The same object for the same hours on the same days.
 */
export function runningHours(schedule: Schedule, days: Days): RunningHours {
  const known = hoursKnown(days);
  const key = keyOf(schedule);
  const before = known.get(key);
  if (before) return before;
  if (known.size >= mostKept) known.clear();
  const shares = workOutShares(schedule, days);
  const hours = { shares, sumH: shares.reduce((sum, share) => sum + share, 0) };
  known.set(key, hours);
  return hours;
}

const hoursKnown = workedOutOnce((_: Days) => new Map<string, RunningHours>());

/** Hours that differ, of one period; a figure that is typed passes a few more. */
const mostKept = 100;

/** Of all that the hours depend on, in one order. */
function keyOf(schedule: Schedule): string {
  const { hoursPerDay, fromHour, untilHour, daysOfWeek, when, dutyPercent, dutyPercentByMonth } = schedule;
  const { months, everyDays } = schedule;
  return JSON.stringify([
    ...[
      hoursPerDay,
      fromHour,
      untilHour,
      daysOfWeek,
      when,
      dutyPercent,
      dutyPercentByMonth,
      months,
      everyDays,
    ],
  ]);
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

/** By day of the year and hour: the part of it between sunrise and sunset, and the dark part. Solar time. */
const hoursOfLight = workedOutOnce(({ sunset }: SunOfYear) => {
  const daylight = sunset.map((angle) => {
    const half = (12 / Math.PI) * angle;
    return Array.from({ length: 24 }, (_, hour) =>
      Math.max(0, Math.min(hour + 1, 12 + half) - Math.max(hour, 12 - half)),
    );
  });
  return { daylight, dark: daylight.map((hours) => hours.map((light) => 1 - light)) };
});
