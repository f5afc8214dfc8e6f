import { frozenPlanData } from "./frozen-copy.ts";
import type { PartOptions } from "./part-options.ts";
import type { EitherTerminal } from "./terminal.ts";

/**
 * A shunt, through which a battery's current is measured. All that uses the battery belongs on its system side.
 *
 * Example: `shunt({ ratedA: 500, ratedMV: 50 })`
 *
 * @returns The part as plain frozen data, with its terminals. Never throws: a wrong value is reported when the plan is checked.
 */
export function shunt(input: ShuntInput): PlannedShunt {
  return frozenPlanData(input, "shunt", terminals) as PlannedShunt;
}

const terminals = ["batterySide", "systemSide"] as const;

/** What {@link shunt} gives back: what it was given, frozen, and the terminals. */
export interface PlannedShunt extends ShuntInput {
  readonly kind: "shunt";
  /** The number of the call that made it. */
  readonly id: number;
  /** Towards the battery. */
  readonly batterySide: EitherTerminal;
  /** Towards all the rest. */
  readonly systemSide: EitherTerminal;
}

/** What {@link shunt} is given. */
export interface ShuntInput extends PartOptions {
  /**
   * The current it is made for, A. From 1 to 10,000. Always needed.
   *
   * Example: `ratedA: 500`
   */
  readonly ratedA: number;
  /**
   * The voltage across it at that current, mV. From 1 to 1,000.
   *
   * Left out: taken as 50 mV.
   *
   * Example: `ratedMV: 75`
   */
  readonly ratedMV?: number;
}
