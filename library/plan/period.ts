import type { PlannedCircuit } from "./circuit.ts";
import { frozenPlanData } from "./frozen-copy.ts";
import type { GiveOnlyOneOf } from "./give-only-one-of.ts";
import type { PlannedInverter } from "./inverter.ts";
import type { PlannedLoad } from "./load.ts";
import type { PlannedMotor } from "./motor.ts";
import type { ByMonth, HoursOfUse, Month } from "./use.ts";

/**
 * A period in which you live with the system: where, in which months, with how many hours of driving and shore power. From it, the hours
 * of the loads (`use`) and the charging sources follows whether the bank keeps up, hour by hour. A plan may have several periods.
 *
 * Example: `period({ name: "All year at anchor", place: "Tarifa, ES" })`
 *
 * @returns The period as plain frozen data. Never throws: a wrong value is reported when the plan is checked.
 */
export function period(input: PeriodInput): PlannedPeriod {
  return frozenPlanData(input, "period") as PlannedPeriod;
}

/** The result of {@link period}: its input, frozen. */
export type PlannedPeriod = PeriodInput & {
  readonly kind: "period";
  /** Number of the call that made it. */
  readonly id: number;
};

/** The input of {@link period}: its name, its place, and optional properties. */
export type PeriodInput = PeriodOptions & (NamedPlace | PlaceByDegrees) & (ByMonths | ByDays);

interface NamedPlace {
  /**
   * The place, by its own name ("Sevilla") and its country in two letters. Some 24,000 places of 15,000 inhabitants and more are known;
   * one nearby will do. Give `place`, or `latitudeDeg` and `longitudeDeg`; one of them is needed.
   *
   * Example: `place: "Tarifa, ES"`
   */
  readonly place: string;
  readonly latitudeDeg?: GiveOnlyOneOf.place_or_latitudeDeg_and_longitudeDeg;
  readonly longitudeDeg?: GiveOnlyOneOf.place_or_latitudeDeg_and_longitudeDeg;
}

interface PlaceByDegrees {
  /**
   * Latitude of the place, in degrees, negative in the south. From -90 to 90. Give it together with `longitudeDeg`, or `place`; one of
   * them is needed.
   *
   * Example: `latitudeDeg: 36.0, longitudeDeg: -5.6`
   */
  readonly latitudeDeg: number;
  /**
   * Longitude of the place, in degrees, negative in the west. From -180 to 180. Give it together with `latitudeDeg`, or `place`; one of
   * them is needed.
   *
   * Example: `latitudeDeg: 36.0, longitudeDeg: -5.6`
   */
  readonly longitudeDeg: number;
  readonly place?: GiveOnlyOneOf.place_or_latitudeDeg_and_longitudeDeg;
}

interface ByMonths {
  /**
   * Its months: "Jan" to "Dec". A whole year is run twice, and the second time counts; anything shorter begins with the charge of
   * `startPercent`. Give `months`, or `fromDay` and `untilDay`; neither is needed.
   *
   * Left out: taken as the whole year.
   *
   * Example: `months: ["Jun", "Jul", "Aug"]`
   */
  readonly months?: readonly Month[];
  readonly fromDay?: GiveOnlyOneOf.months_or_fromDay_and_untilDay;
  readonly untilDay?: GiveOnlyOneOf.months_or_fromDay_and_untilDay;
}

interface ByDays {
  /**
   * Its first day. It may be later in the year than `untilDay`. 29 February reads as the 28th. Give it together with `untilDay`, or
   * `months`; neither is needed.
   *
   * Example: `fromDay: "15 Jun", untilDay: "5 Sep"`
   */
  readonly fromDay: `${number} ${Month}`;
  /**
   * Its last day. Give it together with `fromDay`, or `months`; neither is needed.
   *
   * Example: `fromDay: "20 Dec", untilDay: "6 Jan"`
   */
  readonly untilDay: `${number} ${Month}`;
  readonly months?: GiveOnlyOneOf.months_or_fromDay_and_untilDay;
}

interface PeriodOptions {
  /**
   * Name of the period, shown with its results. Shown up to 80 characters. Always needed.
   *
   * Example: `name: "Summer trips"`
   */
  readonly name: string;
  /**
   * When the engine runs: alternators, and the chargers that run with it, then charge.
   *
   * Left out: taken as never.
   *
   * Example: `driving: { hoursPerDay: 2, everyDays: 3 }`
   */
  readonly driving?: Occasion;
  /**
   * When shore power is connected: chargers on the mains then charge.
   *
   * Left out: taken as never.
   *
   * Example: `shore: { fromHour: 20, untilHour: 6 }`
   */
  readonly shore?: Occasion;
  /**
   * Circuits, loads and inverters that are not used in this period.
   *
   * Left out: taken as none.
   *
   * Example: `notUsed: [fridge]`
   */
  readonly notUsed?: readonly (PlannedCircuit | PlannedLoad | PlannedMotor | PlannedInverter)[];
  /**
   * Whether the bank is kept warm. It then has 20 °C, else the mean temperature of the air in each month, and not less than the
   * `lowestC` of its batteries.
   *
   * Left out: taken as false.
   *
   * Example: `bankHeated: true`
   */
  readonly bankHeated?: boolean;
  /**
   * State of charge at the beginning, in percent, for a period shorter than a year. From 0 to 100.
   *
   * Left out: taken as 100 %.
   *
   * Example: `startPercent: 80`
   */
  readonly startPercent?: number;
  /**
   * Hours by which your clock is ahead of the sun, for all hours of the day that the plan states. From -4 to 4.
   *
   * Left out: taken as 0: the plan's hours are solar hours.
   *
   * Example: `clockAheadH: 2`
   */
  readonly clockAheadH?: number;
  /**
   * Your own irradiation of a horizontal plane, kWh/m² a day, for each month from January to December. Each from 0 to 12.
   *
   * Left out: taken from the table of the world.
   *
   * Example: `irradiation: [2.5, 3.3, 4.6, 5.5, 6.5, 7.2, 7.4, 6.6, 5.2, 3.8, 2.7, 2.2]`
   */
  readonly irradiation?: ByMonth;
}

/** Hours of driving or shore power. */
export interface Occasion extends HoursOfUse {
  /**
   * On every so many days, the first day among them. A whole number, 1 to 365.
   *
   * Left out: taken as 1, every day.
   *
   * Example: `everyDays: 3`
   */
  readonly everyDays?: number;
}
