import { frozenPlanData } from "./frozen-copy.ts";
import type { DevicePartOptions } from "./protection.ts";
import type { EitherTerminal } from "./terminal.ts";

/**
 * A circuit breaker of its own: between two cables, or directly on a terminal, such as the branch of a panel. It opens by hand
 * too.
 *
 * Example: `breaker({ ratingA: 30, interruptingA: 3000, ratedV: 48, on: panel.branch })`
 *
 * @returns The part as plain frozen data, with its terminals. Never throws: a wrong value is reported when the plan is checked.
 */
export function breaker(input: BreakerInput): PlannedBreaker {
  return frozenPlanData(input, "breaker", terminals) as PlannedBreaker;
}

const terminals = ["line", "load"] as const;

/** The result of {@link breaker}: its input, frozen, with the terminals. */
export interface PlannedBreaker extends BreakerInput {
  readonly kind: "breaker";
  /** Number of the call that made it. */
  readonly id: number;
  /** Towards the source. */
  readonly line: EitherTerminal;
  /** Towards the load. */
  readonly load: EitherTerminal;
}

/** The input of {@link breaker}. */
export interface BreakerInput extends DevicePartOptions {
  /**
   * Its opening times, as its maker states them: at a multiple of its rating (`atPercent`, % of the rating), it opens after
   * `afterS` at the earliest and within `withinS` at the latest, both in seconds. From the least multiple to the greatest, at
   * most 20.
   *
   * Left out: taken as not known. Faults are then judged by its interrupting rating and its own rating alone.
   *
   * Example: `openingTimes: [{ atPercent: 200, afterS: 5, withinS: 60 }, { atPercent: 600, withinS: 1 }]`
   */
  readonly openingTimes?: readonly OpeningTimeInput[];
}

/** How soon a breaker opens at a multiple of its rating. */
export interface OpeningTimeInput {
  readonly atPercent: number;
  readonly afterS?: number;
  readonly withinS: number;
}
