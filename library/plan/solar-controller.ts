import { frozenPlanData } from "./frozen-copy.ts";
import type { PartOptions } from "./part-options.ts";
import type { PermittedFuse } from "./permitted-fuse.ts";
import type { NegativeTerminal, PositiveTerminal } from "./terminal.ts";

/**
 * A charge controller between solar modules and a battery.
 *
 * Example: `solarController({ maxInputV: 100, outputA: 30 })`
 *
 * @returns The part as plain frozen data, with its terminals. Never throws: a wrong value is reported when the plan is checked.
 */
export function solarController(input: SolarControllerInput): PlannedSolarController {
  return frozenPlanData(input, "solarController", terminals) as PlannedSolarController;
}

const terminals = ["solarPositive", "solarNegative", "positive", "negative"] as const;

/** The result of {@link solarController}, frozen. Its type shows the terminals only, although it holds the input too. */
export interface PlannedSolarController {
  readonly kind: "solarController";
  /** Number of the call that made it. */
  readonly id: number;
  /** Plus of the modules. */
  readonly solarPositive: PositiveTerminal;
  /** Minus of the modules. */
  readonly solarNegative: NegativeTerminal;
  /** Plus of its output. */
  readonly positive: PositiveTerminal;
  /** Minus of its output. */
  readonly negative: NegativeTerminal;
}

/** The input of {@link solarController}. */
export interface SolarControllerInput extends PartOptions, PermittedFuse {
  /**
   * Maximum input voltage, V. Above 0, up to 1,000. Always needed.
   *
   * Example: `maxInputV: 100`
   */
  readonly maxInputV: number;
  /**
   * Maximum output current, A. Above 0, up to 10,000. Always needed.
   *
   * Example: `outputA: 30`
   */
  readonly outputA: number;
  /**
   * Output voltage that it holds, V. From 1 to 100.
   *
   * Left out: taken as 14.4 V for each 12 V of nominal voltage.
   *
   * Example: `outputV: 14.4`
   */
  readonly outputV?: number;
  /**
   * Whether it keeps the modules at their maximum power. If not, it passes their current on unchanged.
   *
   * Left out: taken as true.
   *
   * Example: `tracking: false`
   */
  readonly tracking?: boolean;
  /**
   * Efficiency in percent, from its data sheet. From 1 to 100.
   *
   * Left out: taken as 95 %.
   *
   * Example: `efficiencyPercent: 97`
   */
  readonly efficiencyPercent?: number;
}
