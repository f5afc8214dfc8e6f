import { frozenPlanData } from "./frozen-copy.ts";
import type { PartOptions } from "./part-options.ts";
import type { EitherTerminal } from "./terminal.ts";

/**
 * A shunt, which measures a battery's current. All users of the battery belong on its system side.
 *
 * Example: `shunt({ ratedA: 500, ratedMV: 50 })`
 *
 * @returns The part as plain frozen data, with its terminals. Never throws: a wrong value is reported when the plan is checked.
 */
export function shunt(input: ShuntInput): PlannedShunt {
  return frozenPlanData(input, "shunt", terminals) as PlannedShunt;
}

const terminals = ["batterySide", "systemSide"] as const;

/** The result of {@link shunt}, frozen. Its type shows the terminals only, although it holds the input too. */
export interface PlannedShunt {
  readonly kind: "shunt";
  /** Number of the call that made it. */
  readonly id: number;
  /** Towards the battery. */
  readonly batterySide: EitherTerminal;
  /** Towards the rest of the system. */
  readonly systemSide: EitherTerminal;
}

/** The input of {@link shunt}. */
export interface ShuntInput extends PartOptions {
  /**
   * Rated current, A: the current for which it is made. From 1 to 10,000. Always needed.
   *
   * Example: `ratedA: 500`
   */
  readonly ratedA: number;
  /**
   * Voltage across it at its rated current, mV. From 1 to 1,000.
   *
   * Left out: taken as 50 mV.
   *
   * Example: `ratedMV: 75`
   */
  readonly ratedMV?: number;
}
