import { frozenPlanData } from "./frozen-copy.ts";
import type { LoadOptions } from "./load.ts";
import type { NegativeTerminal, PositiveTerminal } from "./terminal.ts";

/**
 * A motor: a pump, a windlass, a compressor. Its starting current counts for voltages, not for the ampacity of conductors.
 *
 * Example: `motor({ runningA: 6, startingA: 30 })`
 *
 * @returns The part as plain frozen data, with its terminals. Never throws: a wrong value is reported when the plan is checked.
 */
export function motor(input: MotorInput): PlannedMotor {
  return frozenPlanData(input, "motor", terminals) as PlannedMotor;
}

const terminals = ["positive", "negative"] as const;

/** The result of {@link motor}, frozen. Its type shows the terminals only, although it holds the input too. */
export interface PlannedMotor {
  readonly kind: "motor";
  /** Number of the call that made it. */
  readonly id: number;
  /** Its plus. */
  readonly positive: PositiveTerminal;
  /** Its minus. */
  readonly negative: NegativeTerminal;
}

/** The input of {@link motor}. */
export interface MotorInput extends LoadOptions {
  /**
   * Current that it draws while it runs, A. Above 0, up to 2,000. Always needed.
   *
   * Example: `runningA: 6`
   */
  readonly runningA: number;
  /**
   * Current that it draws while it starts, A. Above 0, up to 10,000. Always needed.
   *
   * Example: `startingA: 30`
   */
  readonly startingA: number;
  /**
   * Time that it needs to start, s, in which it draws `startingA`. 0.01 to 60. Fuses and breakers are held against it.
   *
   * Left out: taken as 0.5 s, and only a device that must have opened by then is reported.
   *
   * Example: `startingS: 1.5`
   */
  readonly startingS?: number;
}
