import type { SizeInput } from "./circuit.ts";
import type { Colour } from "./colour.ts";
import type { DuplexCable } from "./duplex.ts";
import type { GiveOnlyOneOf } from "./give-only-one-of.ts";

/**
 * One spool as it is sold: one size, one length, and optional properties.
 *
 * Example: `spools: [{ gauge: 10, lengthFt: 100, colour: "red", price: 58 }]`
 */
export type SpoolInput = SpoolOptions & (SpoolInMetres | SpoolInFeet) & SizeInput;

interface SpoolInFeet {
  /**
   * Length of the conductor on it, in feet. Above 0, up to 10,000. Give `lengthFt` or `lengthM`, not both; one of them is needed.
   *
   * Example: `lengthFt: 100`
   */
  readonly lengthFt: number;
  readonly lengthM?: GiveOnlyOneOf.lengthFt_or_lengthM;
}

interface SpoolInMetres {
  /**
   * Length of the conductor on it, in metres. Above 0, up to 3,000. Give `lengthFt` or `lengthM`, not both;
   * one of them is needed.
   *
   * Example: `lengthM: 25`
   */
  readonly lengthM: number;
  readonly lengthFt?: GiveOnlyOneOf.lengthFt_or_lengthM;
}

interface SpoolOptions {
  /**
   * The kind of two-conductor cable on it, "flat duplex" or "round duplex", as in `sheathed` of circuits. Its size is that of each
   * conductor.
   *
   * Left out: taken as single wire.
   *
   * Example: `sheathed: "flat duplex"`
   */
  readonly sheathed?: DuplexCable;
  /**
   * Colour of the conductor on it, in up to 40 characters, written as in `colour` of the conductors. Of a two-conductor cable both,
   * the positive first: "red/black".
   *
   * Left out: taken as sold in every colour.
   *
   * Example: `colour: "red"`
   */
  readonly colour?: Colour;
  /**
   * Price of the whole spool, in the `currency` of `build`. From 0 to 1,000,000.
   *
   * Left out: taken as not known, and lists leave it empty.
   *
   * Example: `price: 58`
   */
  readonly price?: number;
}
