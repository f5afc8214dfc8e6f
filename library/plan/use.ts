/** The months, as a plan writes them. */
export type Month =
  | "Jan"
  | "Feb"
  | "Mar"
  | "Apr"
  | "May"
  | "Jun"
  | "Jul"
  | "Aug"
  | "Sep"
  | "Oct"
  | "Nov"
  | "Dec";

/** The days of the week, as a plan writes them. */
export type Weekday = "Mon" | "Tue" | "Wed" | "Thu" | "Fri" | "Sat" | "Sun";

/** A figure for each month, from January to December. */
export type ByMonth = readonly [
  number,
  number,
  number,
  number,
  number,
  number,
  number,
  number,
  number,
  number,
  number,
  number,
];

/** Hours on some days. Hours are solar hours: the sun is highest at 12. The period may state the difference of your clock. */
export interface HoursOfUse {
  /**
   * Hours a day. From 0 to 24. They are spread evenly over the hours in which it may run.
   *
   * Left out: taken as all hours from `fromHour` to `untilHour`, else as 24.
   *
   * Example: `hoursPerDay: 4`
   */
  readonly hoursPerDay?: number;
  /**
   * Hour of the day from which it may run. From 0 to 24. Give it together with `untilHour`. Hours may run past midnight.
   *
   * Left out: taken as the whole day.
   *
   * Example: `fromHour: 18, untilHour: 23`
   */
  readonly fromHour?: number;
  /**
   * Hour of the day until which it may run. From 0 to 24. Give it together with `fromHour`.
   *
   * Left out: taken as the whole day.
   *
   * Example: `fromHour: 22, untilHour: 6`
   */
  readonly untilHour?: number;
  /**
   * Days of the week: "Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun". 1 January counts as a Monday. Hours past midnight belong to the
   * day on which they lie.
   *
   * Left out: taken as every day.
   *
   * Example: `daysOfWeek: ["Sat", "Sun"]`
   */
  readonly daysOfWeek?: readonly Weekday[];
}

/** How long a device runs, for the balance of energy of a `period`. */
export interface Use extends HoursOfUse {
  /**
   * The light in which it may run: "dark" while the sun is down, or "daylight". Give `when` or hours of the day, not both.
   *
   * Left out: taken as both.
   *
   * Example: `when: "dark"`
   */
  readonly when?: "dark" | "daylight";
  /**
   * Share of its hours in which a cycling device draws, in percent, as for the compressor of a fridge. From 0 to 100. Give
   * `dutyPercent` or `dutyPercentByMonth`, not both.
   *
   * Left out: taken as 100 %.
   *
   * Example: `dutyPercent: 35`
   */
  readonly dutyPercent?: number;
  /**
   * The same for each month, from January to December, as for a heater. Each from 0 to 100. Give `dutyPercent` or
   * `dutyPercentByMonth`, not both.
   *
   * Left out: taken as the same in every month.
   *
   * Example: `dutyPercentByMonth: [60, 60, 40, 20, 0, 0, 0, 0, 0, 20, 40, 60]`
   */
  readonly dutyPercentByMonth?: ByMonth;
  /**
   * Months in which it is used: "Jan" to "Dec".
   *
   * Left out: taken as every month.
   *
   * Example: `months: ["Nov", "Dec", "Jan"]`
   */
  readonly months?: readonly Month[];
  /**
   * Power that it draws while it is not in use, W. From 0 to 1,000.
   *
   * Left out: taken as 0 W.
   *
   * Example: `standbyW: 0.5`
   */
  readonly standbyW?: number;
}
