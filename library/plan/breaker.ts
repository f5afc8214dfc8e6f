import type { DevicePartOptions } from "./device-part-options.ts";
import { frozenPlanData } from "./frozen-copy.ts";
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
   * Its opening times, as its maker states them, from the least current to the greatest: up to 20.
   *
   * Left out: taken as not known. Faults are then judged by its interrupting rating and its own rating alone.
   *
   * Example: `openingTimes: [{ atPercent: 200, afterS: 5, withinS: 60 }, { atPercent: 600, withinS: 1 }]`
   */
  readonly openingTimes?: readonly OpeningTimeInput[];
}

/**
 * How soon a breaker opens at a multiple of its rating.
 *
 * Example: `openingTimes: [{ atPercent: 200, afterS: 5, withinS: 60 }]`
 */
export interface OpeningTimeInput {
  /**
   * Current, in percent of the rating. Above 100, up to 100,000. Always needed; each is above the one before it.
   *
   * Example: `atPercent: 200`
   */
  readonly atPercent: number;
  /**
   * Time before which it does not open at this current, s. From 0 to 100,000.
   *
   * Left out: taken as not known.
   *
   * Example: `afterS: 5`
   */
  readonly afterS?: number;
  /**
   * Time within which it has opened at this current, s. Above 0, up to 100,000. Always needed.
   *
   * Example: `withinS: 60`
   */
  readonly withinS: number;
}
