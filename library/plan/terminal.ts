/**
 * Where a cable may end: a terminal of a part, taken from the part, as in `house.positive`. Plain frozen data.
 * The compiler keeps positive and negative ones apart; of an {@link EitherTerminal} only the whole network can tell.
 */
export type Terminal = PositiveTerminal | NegativeTerminal | EitherTerminal;

/** A terminal on the positive side: a battery's plus, a panel's feed, a charger's output. */
export interface PositiveTerminal extends AnyTerminal {
  readonly [side]: "positive";
}

/** A terminal on the negative side: a battery's minus, the chassis, a charger's minus. */
export interface NegativeTerminal extends AnyTerminal {
  readonly [side]: "negative";
}

/** A terminal that may lie on either side: a stud of a bus bar, a side of a disconnect or shunt. */
export interface EitherTerminal extends AnyTerminal {
  readonly [side]: "either";
}

/** The plus of a battery. Batteries in series are the one case in which a plus is joined to a minus. */
export interface BatteryPositive extends PositiveTerminal {
  readonly of: "battery";
}

/** The minus of a battery. */
export interface BatteryNegative extends NegativeTerminal {
  readonly of: "battery";
}

interface AnyTerminal {
  readonly kind: "terminal";
  /** The number of the call that made the part. */
  readonly part: number;
  /** The word that made the part. */
  readonly of: string;
  /** Its name behind the part, "positive" in `house.positive`. */
  readonly terminal: string;
}

/** For the compiler only, to tell terminals apart: none has it when a plan runs. */
declare const side: unique symbol;
