/** Days of each month in a year of 365 days. 29 February reads as the 28th. */
export const daysOfMonths = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;

export const daysOfYear = 365;

/** By month: the first of its days, counted from 0. */
export const firstDayOfMonth: readonly number[] = daysOfMonths.map((_, month) =>
  daysOfMonths.slice(0, month).reduce((sum, days) => sum + days, 0),
);

/** By day of the year, from 0: its month, from 0. */
export const monthOfDay: readonly number[] = daysOfMonths.flatMap((days, month) =>
  Array.from({ length: days }, () => month),
);

/** Weekday of a day of the year, 0 for Monday. 1 January counts as a Monday in every year: our choice. */
export function weekdayOf(day: number): number {
  return day % 7;
}

/** Wh a day on the days of the period, by month; NaN for a month without such days. */
export function meansByMonth(hourly: Float64Array | Uint8Array, isIn: readonly boolean[]): readonly number[] {
  const sums = Array<number>(12).fill(0);
  const days = Array<number>(12).fill(0);
  for (let day = 0; day < daysOfYear; day++) {
    if (!isIn[day]) continue;
    const month = monthOfDay[day]!;
    days[month]!++;
    for (let at = day * 24; at < day * 24 + 24; at++) sums[month]! += hourly[at]!;
  }
  return sums.map((sum, month) => sum / days[month]!);
}
