import { frozenPlanData } from "./frozen-copy.ts";
import type { PartOptions } from "./part-options.ts";
import type { EitherTerminal, NegativeTerminal, PositiveTerminal } from "./terminal.ts";
import type { TerminalRating } from "./terminal-rating.ts";

/**
 * A bus bar: one piece of metal with studs, where conductors meet. All its studs are one terminal, `stud`; if
 * `terminalsAt` gives their places, `fromStud` and `toStud` of a conductor name the one that it ends at.
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

/** The result of {@link busBar}, frozen. Its type shows the terminals only, although it holds the input too. */
export interface PlannedBusBar<Side extends BusBarSide | undefined = undefined> {
  readonly kind: "busBar";
  /** Number of the call that made it. */
  readonly id: number;
  /** Any of its studs; `fromStud` and `toStud` of a conductor name a single one. */
  readonly stud: Stud<Side>;
}

/** The input of {@link busBar}. Every property may be left out. */
export interface BusBarInput<Side extends BusBarSide | undefined = BusBarSide | undefined>
  extends PartOptions,
    TerminalRating {
  /**
   * Maximum current that it may carry, A. Above 0, up to 10,000.
   *
   * Left out: taken as not known, and not checked.
   *
   * Example: `ratedA: 250`
   */
  readonly ratedA?: number;
  /**
   * Number of its studs. A whole number, 1 to 200.
   *
   * Left out: taken as enough for all conductors connected to it.
   *
   * Example: `studs: 4`
   */
  readonly studs?: number;
  /**
   * The polarity that it is for: "positive" or "negative". Your editor then marks a cable of the other polarity at once.
   *
   * Left out: taken as the polarity that it has in the network.
   *
   * Example: `side: "positive"`
   */
  readonly side?: Side;
}

/** The polarity of a bus bar. */
export type BusBarSide = "positive" | "negative";

type Stud<Side> = Side extends "positive"
  ? PositiveTerminal
  : Side extends "negative"
    ? NegativeTerminal
    : EitherTerminal;
