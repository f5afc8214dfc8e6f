import { frozenPlanData } from "./frozen-copy.ts";
import type { PartOptions } from "./part-options.ts";
import type { PermittedFuse } from "./permitted-fuse.ts";
import type { NegativeTerminal, PositiveTerminal } from "./terminal.ts";
import type { ByMonth } from "./use.ts";

/**
 * A battery charger fed by the mains.
 *
 * Example: `shoreCharger({ outputA: 20 })`
 *
 * @returns The part as plain frozen data, with its terminals. Never throws: a wrong value is reported when the plan is checked.
 */
export function shoreCharger(input: ShoreChargerInput): PlannedShoreCharger {
  return frozenPlanData(input, "shoreCharger", terminals) as PlannedShoreCharger;
}

const terminals = ["positive", "negative"] as const;

/** The result of {@link shoreCharger}, frozen. Its type shows the terminals only, although it holds the input too. */
export interface PlannedShoreCharger {
  readonly kind: "shoreCharger";
  /** Number of the call that made it. */
  readonly id: number;
  /** Its plus. */
  readonly positive: PositiveTerminal;
  /** Its minus. */
  readonly negative: NegativeTerminal;
}

/** The input of {@link shoreCharger}. */
export interface ShoreChargerInput extends PartOptions, PermittedFuse {
  /**
   * Maximum output current, A. Above 0, up to 10,000. Always needed.
   *
   * Example: `outputA: 20`
   */
  readonly outputA: number;
  /**
   * Output voltage that it holds, V. From 1 to 100.
   *
   * Left out: taken as 14.4 V for each 12 V of nominal voltage.
   *
   * Example: `outputV: 14.6`
   */
  readonly outputV?: number;
  /**
   * Average power that it gives in each month, from January to December, W, for one that the wind, the water or a generator drives by
   * itself: it then charges all the time, without shore power. For the balance of energy of a `period`. Each from 0 to 5,000.
   *
   * Left out: taken as none: it charges in the hours of shore power.
   *
   * Example: `averageWByMonth: [40, 35, 30, 20, 15, 10, 10, 10, 15, 25, 35, 40]`
   */
  readonly averageWByMonth?: ByMonth;
}
