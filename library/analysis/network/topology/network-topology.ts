import type { ConductorEnd } from "../../../model/network.ts";

/** The topology of a network, independent of currents. */
export interface NetworkTopology {
  /** By terminal index: whether it is on the positive or the negative side of a source, on both (a short), or on none. */
  readonly sides: readonly ("positive" | "negative" | "both" | "none")[];
  /**
   * By conductor index. A series link lies between two batteries or arrays of one string, a parallel link between equal
   * poles.
   */
  readonly conductorSides: readonly ConductorPolarity[];
  /**
   * Sources with their own poles connected without a load between, each with the conductors of the shortest path, and with the other
   * sources that this path passes from their negative to their positive.
   */
  readonly shorts: readonly {
    readonly source: number;
    readonly conductors: readonly number[];
    readonly through: readonly number[];
  }[];
  /** Positive conductors that a source reaches without passing a device that protects them; cranking feeds left out. */
  readonly unprotected: readonly UnprotectedPath[];
  /** Conductors that are the main feed of an engine's starter motor. No rule asks for protection there. */
  readonly crankingFeeds: ReadonlySet<number>;
  /** By terminal index: the conductors on the shortest path to the nearest source on the same side, from the source outwards. */
  wayFromSource(
    terminal: number,
  ): { readonly source: number; readonly conductors: readonly number[] } | undefined;
  /** Pairs of devices with no further one between, on a path from a source outwards. Indices in the network's devices. */
  readonly devicePairs: readonly { readonly upstream: number; readonly downstream: number }[];
  /** Batteries that belong together: connected by links in series, in parallel, or through bus bars. Part indices. */
  readonly banks: readonly Bank[];
}

export type ConductorPolarity =
  | "positive"
  | "negative"
  | "series-link"
  | "parallel-link"
  | "shorted"
  | "none";

export interface UnprotectedPath {
  readonly conductor: number;
  /** The end at which it arrives; both if neither has a device that could stop it. */
  readonly ends: readonly ConductorEnd[];
  /** Sources that arrive there and can push more than the conductor may carry, part indices; the first 16 of more. */
  readonly sources: readonly number[];
  /** The number of all such sources. */
  readonly sourceCount: number;
  /** All of them are solar arrays. */
  readonly fromPanelsAlone: boolean;
  /** From the first source outwards up to but excluding the conductor itself. */
  readonly way: readonly number[];
  /** On that path, or on the conductor itself: devices that are rated above its ampacity. Indices in the network's devices. */
  readonly tooGreat: readonly number[];
}

export interface Bank {
  readonly batteries: readonly number[];
  /** Strings of batteries in series, connected in parallel. */
  readonly strings: readonly (readonly number[])[];
  /** Terminals of the bank as a whole. */
  readonly positives: readonly number[];
  readonly negatives: readonly number[];
}
