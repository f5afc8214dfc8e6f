import { frozenPlanData } from "./frozen-copy.ts";
import type { PartOptions } from "./part-options.ts";
import type { NegativeTerminal } from "./terminal.ts";

/**
 * Metal that carries return current: a vehicle's body or an engine block. `bond` is where the cable that bonds it to the battery
 * lands, `metal` is where loads return.
 *
 * Example: `chassis({ milliohm: 0.5 })`
 *
 * @returns The part as plain frozen data, with its terminals. Never throws: a wrong value is reported when the plan is checked.
 */
export function chassis(input: ChassisInput): PlannedChassis {
  return frozenPlanData(input, "chassis", terminals) as PlannedChassis;
}

const terminals = ["bond", "metal"] as const;

/** What {@link chassis} gives back: what it was given, frozen, and the terminals. */
export interface PlannedChassis extends ChassisInput {
  readonly kind: "chassis";
  /** The number of the call that made it. */
  readonly id: number;
  /** Where its bonding cable lands. */
  readonly bond: NegativeTerminal;
  /** Where loads return. */
  readonly metal: NegativeTerminal;
}

/** What {@link chassis} is given. */
export interface ChassisInput extends PartOptions {
  /**
   * Resistance between its bond and where loads return, milliohms, as measured. 0, or from 0.001 to 1,000. Always needed.
   *
   * Example: `milliohm: 0.5`
   */
  readonly milliohm: number;
}
