import { frozenPlanData } from "./frozen-copy.ts";
import type { PartOptions } from "./part-options.ts";
import type { NegativeTerminal, PositiveTerminal } from "./terminal.ts";

/**
 * An alternator on an engine. It holds its voltage and delivers current up to its limit.
 *
 * Example: `alternator({ ratedA: 90 })`
 *
 * @returns The part as plain frozen data, with its terminals. Never throws: a wrong value is reported when the plan is checked.
 */
export function alternator(input: AlternatorInput): PlannedAlternator {
  return frozenPlanData(input, "alternator", terminals) as PlannedAlternator;
}

const terminals = ["positive", "negative"] as const;

/** The result of {@link alternator}, frozen. Its type shows the terminals only, although it holds the input too. */
export interface PlannedAlternator {
  readonly kind: "alternator";
  /** Number of the call that made it. */
  readonly id: number;
  /** Its plus. */
  readonly positive: PositiveTerminal;
  /** Its minus. */
  readonly negative: NegativeTerminal;
}

/** The input of {@link alternator}. */
export interface AlternatorInput extends PartOptions {
  /**
   * Rated maximum output current, A. Above 0, up to 10,000. Always needed.
   *
   * Example: `ratedA: 90`
   */
  readonly ratedA: number;
  /**
   * Output voltage that it holds, V. From 1 to 100.
   *
   * Left out: taken as 14.4 V for each 12 V of nominal voltage.
   *
   * Example: `outputV: 14.2`
   */
  readonly outputV?: number;
  /**
   * Output current that it may deliver for hours, in percent of its rating. From 1 to 100.
   *
   * Left out: taken as 80 %.
   *
   * Example: `continuousPercent: 60`
   */
  readonly continuousPercent?: number;
  /**
   * Whether it limits its own current, regardless of anything connected to it.
   *
   * Left out: taken as true.
   *
   * Example: `selfLimiting: false`
   */
  readonly selfLimiting?: boolean;
}
