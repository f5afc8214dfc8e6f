import { frozenPlanData } from "./frozen-copy.ts";
import type { PartOptions } from "./part-options.ts";
import type { NegativeTerminal, PositiveTerminal } from "./terminal.ts";
import type { ByMonth } from "./use.ts";

/**
 * Identical solar modules, in series, in parallel, or both. Values are those of one module at standard test conditions.
 *
 * Example: `solarArray({ openCircuitV: 22.5, shortCircuitA: 9.8, maxPowerV: 18.6, maxPowerA: 9.2 })`
 *
 * @returns The part as plain frozen data, with its terminals. Never throws: a wrong value is reported when the plan is checked.
 */
export function solarArray(input: SolarArrayInput): PlannedSolarArray {
  return frozenPlanData(input, "solarArray", terminals) as PlannedSolarArray;
}

const terminals = ["positive", "negative"] as const;

/** The result of {@link solarArray}, frozen. Its type shows the terminals only, although it holds the input too. */
export interface PlannedSolarArray {
  readonly kind: "solarArray";
  /** Number of the call that made it. */
  readonly id: number;
  /** Its plus. */
  readonly positive: PositiveTerminal;
  /** Its minus. */
  readonly negative: NegativeTerminal;
}

/** The input of {@link solarArray}. */
export interface SolarArrayInput extends PartOptions {
  /**
   * Open-circuit voltage of one module, V. Above 0, up to 500. Always needed.
   *
   * Example: `openCircuitV: 22.5`
   */
  readonly openCircuitV: number;
  /**
   * Short-circuit current of one module, A. Above 0, up to 100. Always needed.
   *
   * Example: `shortCircuitA: 9.8`
   */
  readonly shortCircuitA: number;
  /**
   * Voltage of one module at its maximum power, V. Above 0, up to 500. Always needed.
   *
   * Example: `maxPowerV: 18.6`
   */
  readonly maxPowerV: number;
  /**
   * Current of one module at its maximum power, A. Above 0, up to 100. Always needed.
   *
   * Example: `maxPowerA: 9.2`
   */
  readonly maxPowerA: number;
  /**
   * Temperature coefficient of the open-circuit voltage, in percent for each °C. Negative, from -2 to 0.
   *
   * Left out: taken from the table for crystalline silicon.
   *
   * Example: `openCircuitPercentPerC: -0.29`
   */
  readonly openCircuitPercentPerC?: number;
  /**
   * Temperature of the coldest day on which the sun shines on it, °C. -60 to 50.
   *
   * Left out: taken from `build`; if that states none either, the voltage in the cold is not checked.
   *
   * Example: `lowestC: -10`
   */
  readonly lowestC?: number;
  /**
   * Number of modules in series in each string. A whole number, 1 to 50.
   *
   * Left out: taken as 1.
   *
   * Example: `series: 2`
   */
  readonly series?: number;
  /**
   * Number of strings in parallel. A whole number, 1 to 50.
   *
   * Left out: taken as 1.
   *
   * Example: `parallel: 3`
   */
  readonly parallel?: number;
  /**
   * Maximum fuse rating that the maker allows in series with a module, A. Above 0, up to 1,000.
   *
   * Left out: taken as not known.
   *
   * Example: `maxSeriesFuseA: 15`
   */
  readonly maxSeriesFuseA?: number;
  /**
   * Rating of the fuse in each string, A. Above 0, up to 1,000.
   *
   * Left out: taken as none.
   *
   * Example: `stringFuseA: 15`
   */
  readonly stringFuseA?: number;
  /**
   * Tilt of the modules from the horizontal, in degrees. From 0 to 90. For the balance of energy of a `period`.
   *
   * Left out: taken as 0: flat on a roof or a deck, also on a boat that swings.
   *
   * Example: `tiltDeg: 35, facingDeg: 180`
   */
  readonly tiltDeg?: number;
  /**
   * Compass direction that tilted modules face, in degrees: 0 for north, 90 for east, 180 for south. From 0 to 360.
   *
   * Left out: taken as towards the equator.
   *
   * Example: `tiltDeg: 35, facingDeg: 180`
   */
  readonly facingDeg?: number;
  /**
   * Light that a tree, a mast or a mountain takes from it, in percent, for each month from January to December. Each from 0 to 100.
   *
   * Left out: taken as none, besides the usual 3 % for shade.
   *
   * Example: `shadePercentByMonth: [50, 30, 10, 0, 0, 0, 0, 0, 0, 20, 40, 60]`
   */
  readonly shadePercentByMonth?: ByMonth;
  /**
   * Height of the horizon in eight directions: hills, houses, trees, in degrees: north, north-east, east, south-east, south, south-west,
   * west, north-west, and straight lines between them. While the sun is lower, the array has no direct light. Each from 0 to 90.
   *
   * Left out: taken as 0 in every direction.
   *
   * Example: `horizonDegByDirection: [0, 0, 5, 20, 30, 20, 5, 0]`
   */
  readonly horizonDegByDirection?: ByDirection;
}

/** A figure for each of eight directions, from north clockwise. */
export type ByDirection = readonly [number, number, number, number, number, number, number, number];
