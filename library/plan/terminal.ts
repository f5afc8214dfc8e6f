/**
 * An end of a cable: a terminal of a part, taken from the part, as in `house.positive`. Plain frozen data.
 * The compiler distinguishes positive and negative ones; the polarity of an {@link EitherTerminal} follows from the network.
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

/** A terminal that may have either polarity: a stud of a bus bar, a side of a disconnect or shunt. */
export interface EitherTerminal extends AnyTerminal {
  readonly [side]: "either";
}

/** The plus of a battery. It may be connected to a minus only between batteries in series. */
export interface BatteryPositive extends PositiveTerminal {
  readonly of: "battery";
}

/** The minus of a battery. */
export interface BatteryNegative extends NegativeTerminal {
  readonly of: "battery";
}

interface AnyTerminal {
  readonly kind: "terminal";
  /** Number of the call that made the part. */
  readonly part: number;
  /** The DSL function that made the part. */
  readonly of: string;
  /** Its name after the part, "positive" in `house.positive`. */
  readonly terminal: string;
}

/** For the compiler only, to distinguish terminals: it does not exist when a plan runs. */
declare const side: unique symbol;
