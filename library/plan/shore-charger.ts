import { frozenPlanData } from "./frozen-copy.ts";
import type { PartOptions } from "./part-options.ts";
import type { NegativeTerminal, PositiveTerminal } from "./terminal.ts";

/**
 * A battery charger that runs from the mains.
 *
 * Example: `shoreCharger({ outputA: 20 })`
 *
 * @returns The part as plain frozen data, with its terminals. Never throws: a wrong value is reported when the plan is checked.
 */
export function shoreCharger(input: ShoreChargerInput): PlannedShoreCharger {
  return frozenPlanData(input, "shoreCharger", terminals) as PlannedShoreCharger;
}

const terminals = ["positive", "negative"] as const;

/** What {@link shoreCharger} gives back: what it was given, frozen, and the terminals. */
export interface PlannedShoreCharger extends ShoreChargerInput {
  readonly kind: "shoreCharger";
  /** The number of the call that made it. */
  readonly id: number;
  /** Its plus. */
  readonly positive: PositiveTerminal;
  /** Its minus. */
  readonly negative: NegativeTerminal;
}

/** What {@link shoreCharger} is given. */
export interface ShoreChargerInput extends PartOptions {
  /**
   * The most current that it gives, A. Above 0, up to 10,000. Always needed.
   *
   * Example: `outputA: 20`
   */
  readonly outputA: number;
  /**
   * The voltage that it holds, V. From 1 to 100.
   *
   * Left out: taken as 14.4 V for each 12 V of nominal voltage.
   *
   * Example: `outputV: 14.6`
   */
  readonly outputV?: number;
}
