import { frozenPlanData } from "./frozen-copy.ts";
import type { PartOptions } from "./part-options.ts";
import type { NegativeTerminal } from "./terminal.ts";

/**
 * Metal that carries return current: a vehicle's body or an engine block. The cable that bonds it to the battery
 * ends at `bond`; loads return at `metal`.
 *
 * Example: `chassis({ milliohm: 0.5 })`
 *
 * @returns The part as plain frozen data, with its terminals. Never throws: a wrong value is reported when the plan is checked.
 */
export function chassis(input: ChassisInput): PlannedChassis {
  return frozenPlanData(input, "chassis", terminals) as PlannedChassis;
}

const terminals = ["bond", "metal"] as const;

/** The result of {@link chassis}, frozen. Its type shows the terminals only, although it holds the input too. */
export interface PlannedChassis {
  readonly kind: "chassis";
  /** Number of the call that made it. */
  readonly id: number;
  /** The end of its bonding cable. */
  readonly bond: NegativeTerminal;
  /** The return of the loads. */
  readonly metal: NegativeTerminal;
}

/** The input of {@link chassis}. */
export interface ChassisInput extends PartOptions {
  /**
   * Resistance between `bond` and `metal`, milliohms, as measured. 0, or from 0.001 to 1,000. Always needed.
   *
   * Example: `milliohm: 0.5`
   */
  readonly milliohm: number;
}
