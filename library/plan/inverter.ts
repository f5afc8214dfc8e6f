import { frozenPlanData } from "./frozen-copy.ts";
import type { PartOptions } from "./part-options.ts";
import type { NegativeTerminal, PositiveTerminal } from "./terminal.ts";

/**
 * An inverter, seen from its direct-current side: it draws constant power, and so the more current the lower the voltage.
 *
 * Example: `inverter({ continuousW: 2000, surgeW: 4000 })`
 *
 * @returns The part as plain frozen data, with its terminals. Never throws: a wrong value is reported when the plan is checked.
 */
export function inverter(input: InverterInput): PlannedInverter {
  return frozenPlanData(input, "inverter", terminals) as PlannedInverter;
}

const terminals = ["positive", "negative"] as const;

/** What {@link inverter} gives back: what it was given, frozen, and the terminals. */
export interface PlannedInverter extends InverterInput {
  readonly kind: "inverter";
  /** The number of the call that made it. */
  readonly id: number;
  /** Its plus. */
  readonly positive: PositiveTerminal;
  /** Its minus. */
  readonly negative: NegativeTerminal;
}

/** What {@link inverter} is given. */
export interface InverterInput extends PartOptions {
  /**
   * The most it gives for longer than a moment, W. Above 0, up to 100,000. Always needed.
   *
   * Example: `continuousW: 2000`
   */
  readonly continuousW: number;
  /**
   * The most it gives for a moment, W, as to start a motor. Above 0, up to 200,000.
   *
   * Left out: taken as not known, and not checked.
   *
   * Example: `surgeW: 4000`
   */
  readonly surgeW?: number;
  /**
   * Efficiency in percent, from its data sheet. From 1 to 100.
   *
   * Left out: taken as 90 %.
   *
   * Example: `efficiencyPercent: 93`
   */
  readonly efficiencyPercent?: number;
  /**
   * Voltage at its terminals below which it switches off, V. From 1 to 100.
   *
   * Left out: taken as 10.5 V for each 12 V of nominal voltage.
   *
   * Example: `cutOffV: 10.5`
   */
  readonly cutOffV?: number;
  /**
   * What it draws by itself, with nothing on, W. From 0 to 10,000.
   *
   * Left out: taken as 0 W.
   *
   * Example: `idleW: 12`
   */
  readonly idleW?: number;
  /**
   * What hangs on it in use, W: the most that is drawn from it for longer than a moment. From 0 to 100,000.
   *
   * Left out: taken as its continuous power.
   *
   * Example: `loadW: 1200`
   */
  readonly loadW?: number;
}
