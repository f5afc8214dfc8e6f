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

/** The result of {@link breaker}, frozen. Its type shows the terminals only, although it holds the input too. */
export interface PlannedBreaker {
  readonly kind: "breaker";
  /** Number of the call that made it. */
  readonly id: number;
  /** Towards the source. */
  readonly line: EitherTerminal;
  /** Towards the load. */
  readonly load: EitherTerminal;
}

/** The input of {@link breaker}. */
export interface BreakerInput extends DevicePartOptions {}
