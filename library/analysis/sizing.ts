import type { Circuit, Conductor } from "../model/circuit.ts";

/** A conductor, and the rating that goes with it. */
export interface Sizing {
  readonly conductor: Conductor;
  /** The stated rating where it fits, else the one to take instead; undefined where no made rating fits or none is stated. */
  readonly ratingA: number | undefined;
}

/**
 * The thinnest made size, not thinner than the one in the plan, that meets ampacity, drop (with the device's own
 * minimum voltage) and protection together. Keeps the stated rating where it lies between load and ampacity; where
 * no made rating fits between, the conductor grows until one does. Undefined: no made size is enough.
 */
export declare function thinnestSufficient(circuit: Circuit): Sizing | undefined;
