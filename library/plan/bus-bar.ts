import { frozenPlanData } from "./frozen-copy.ts";
import type { PartOptions } from "./part-options.ts";
import type { EitherTerminal, NegativeTerminal, PositiveTerminal } from "./terminal.ts";

/**
 * A bus bar: one piece of metal with studs, where conductors meet. Every stud is its one terminal, `stud`.
 *
 * Example: `busBar({ ratedA: 250, studs: 4, side: "positive" })`
 *
 * @returns The part as plain frozen data, with its terminal. Never throws: a wrong value is reported when the plan is checked.
 */
export function busBar<Side extends BusBarSide | undefined = undefined>(
  input: BusBarInput<Side>,
): PlannedBusBar<Side> {
  return frozenPlanData(input, "busBar", terminals) as PlannedBusBar<Side>;
}

const terminals = ["stud"] as const;

/** What {@link busBar} gives back: what it was given, frozen, and its terminal. */
export interface PlannedBusBar<Side extends BusBarSide | undefined = undefined> extends BusBarInput<Side> {
  readonly kind: "busBar";
  /** The number of the call that made it. */
  readonly id: number;
  /** Any of its studs. */
  readonly stud: Stud<Side>;
}

/** What {@link busBar} is given. Every property may be left out. */
export interface BusBarInput<Side extends BusBarSide | undefined = BusBarSide | undefined>
  extends PartOptions {
  /**
   * The most that it may carry, A. Above 0, up to 10,000.
   *
   * Left out: taken as not known, and not checked.
   *
   * Example: `ratedA: 250`
   */
  readonly ratedA?: number;
  /**
   * How many studs it has. A whole number, 1 to 200.
   *
   * Left out: taken as enough for all that lands on it.
   *
   * Example: `studs: 4`
   */
  readonly studs?: number;
  /**
   * The side that it is meant for: "positive" or "negative". Your editor then marks a cable from the other side at once.
   *
   * Left out: taken as the side on which the network has it.
   *
   * Example: `side: "positive"`
   */
  readonly side?: Side;
}

/** The side of a bus bar. */
export type BusBarSide = "positive" | "negative";

type Stud<Side> = Side extends "positive"
  ? PositiveTerminal
  : Side extends "negative"
    ? NegativeTerminal
    : EitherTerminal;
