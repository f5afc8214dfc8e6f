import { frozenPlanData } from "./frozen-copy.ts";
import type { InsulationC } from "./sizes.ts";
import type { NominalVoltage } from "./voltage.ts";

/**
 * Says what holds for the whole build, so that each circuit need not repeat it. Call it at most once in a plan.
 * It applies to every circuit of the plan, before it or after it, and a circuit's own property always wins.
 *
 * Example: `build({ name: "Library bus", voltage: 24, insulationC: 105 })`
 *
 * @returns The settings as plain frozen data. Never throws: a wrong value is reported when the plan is checked.
 */
export function build(settings: BuildInput): BuildSettings {
  return frozenPlanData(settings, "build") as BuildSettings;
}

/** What {@link build} gives back: its settings, frozen. */
export interface BuildSettings extends BuildInput {
  readonly kind: "build";
  /** The number of the call that made it. */
  readonly id: number;
}

/** What {@link build} is given. Every property may be left out. */
export interface BuildInput {
  /**
   * What the build is called, in lists and reports.
   *
   * Left out: taken as "the build".
   *
   * Example: `name: "Library bus"`
   */
  readonly name?: string;
  /**
   * Nominal voltage of the system, V: 12, 24, 48, or another number from 1 to 50.
   *
   * Left out: taken as 12 V.
   *
   * Example: `voltage: 24`
   */
  readonly voltage?: NominalVoltage;
  /**
   * Temperature of the air around the conductors, °C, on the hottest day in use. -50 to 200.
   *
   * Left out: taken as 30 °C, for which the ampacity tables are made.
   *
   * Example: `ambientC: 40`
   */
  readonly ambientC?: number;
  /**
   * Temperature rating of the conductors' insulation, °C, as printed on it: 60, 70, 75, 80, 85, 90, 105, 125 or 200.
   *
   * Left out: taken as 75 °C, and each circuit says so.
   *
   * Example: `insulationC: 105`
   */
  readonly insulationC?: InsulationC;
  /**
   * Whether the conductors run through an engine space, where they carry less: what they carry at 50 °C (`gauge`) or
   * 60 °C (`mm2`).
   *
   * Left out: taken as false.
   *
   * Example: `engineSpace: true`
   */
  readonly engineSpace?: boolean;
  /**
   * Whether the loads run for three hours or longer at a time. Protection then aims at 125 % of the load.
   *
   * Left out: taken as true.
   *
   * Example: `continuous: false`
   */
  readonly continuous?: boolean;
  /**
   * The most that may be lost on the way to a circuit marked `critical`, in percent of the nominal voltage. Above 0, up to 20.
   *
   * Left out: taken as 3 %.
   *
   * Example: `criticalDropPercent: 2`
   */
  readonly criticalDropPercent?: number;
  /**
   * The most that may be lost on the way to any other circuit, in percent of the nominal voltage. Above 0, up to 20.
   *
   * Left out: taken as 10 %.
   *
   * Example: `dropPercent: 5`
   */
  readonly dropPercent?: number;
  /**
   * The coldest day in use, °C, for what solar panels give in the cold. -60 to 50.
   *
   * Left out: taken as not known, and cold is not checked.
   *
   * Example: `lowestC: -10`
   */
  readonly lowestC?: number;
}
