import type { Network } from "../../../model/network.ts";
import type { DevicePlace } from "../../network-result.ts";
import { devicePairsOf, protectedZones } from "../faults/protected-zones.ts";
import { unprotectedPaths } from "../faults/unprotected-paths.ts";
import { banksOf } from "./banks.ts";
import { conductorPolarities, netPolarities, shortsOf, terminalPolarities } from "./polarity.ts";
import { pathsFromSources } from "./source-paths.ts";
import { wiringOf } from "./wiring.ts";

/** How a network hangs together, whatever flows in it. */
export interface NetworkTopology {
  /** By terminal index: whether it hangs on the positive or the negative side of a source, on both (a short), or on none. */
  readonly sides: readonly ("positive" | "negative" | "both" | "none")[];
  /** By conductor index. A series link lies between two batteries or panels of one string, a parallel link between equal poles. */
  readonly conductorSides: readonly ConductorPolarity[];
  /** Sources whose own poles are joined without a load between, each with the conductors of the shortest way. */
  readonly shorts: readonly { readonly source: number; readonly conductors: readonly number[] }[];
  /** Positive conductors that a source reaches without passing a device that protects them. */
  readonly unprotected: readonly UnprotectedPath[];
  /** By terminal index: the conductors on the shortest way to the nearest source on the same side, from the source outwards. */
  wayFromSource(
    terminal: number,
  ): { readonly source: number; readonly conductors: readonly number[] } | undefined;
  /** Pairs of devices with no further one between, on the way from a source outwards. */
  readonly devicePairs: readonly { readonly upstream: DevicePlace; readonly downstream: DevicePlace }[];
  /** Batteries that belong together: joined by links in series, in parallel, or through bus bars. Part indices. */
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
  /** The end at which it arrives; both where neither has a device that could stop it. */
  readonly ends: readonly ("near" | "far")[];
  /** Sources that arrive there and can push more than the conductor may carry, part indices; the first 16 of more. */
  readonly sources: readonly number[];
  /** How many do. */
  readonly sourceCount: number;
  /** None of them is anything but solar panels. */
  readonly fromPanelsAlone: boolean;
  /** From the first source outwards up to and without the conductor itself. */
  readonly way: readonly number[];
  /** On that way, or on the conductor itself: devices that are rated above what it may carry. */
  readonly tooGreat: readonly (DevicePlace & { readonly ratingA: number })[];
}

export interface Bank {
  readonly batteries: readonly number[];
  /** Strings of batteries in series, side by side. */
  readonly strings: readonly (readonly number[])[];
  /** Terminals of the bank as a whole. */
  readonly positives: readonly number[];
  readonly negatives: readonly number[];
}

/** Not `throw`: a network of nothing but shorts has a topology too. */
export function topologyOf(network: Network): NetworkTopology {
  const wiring = wiringOf(network);
  const nets = netPolarities(wiring);
  const sides = terminalPolarities(wiring, nets);
  const alongConductors = conductorPolarities(wiring, nets);
  return {
    sides,
    conductorSides: alongConductors,
    shorts: shortsOf(wiring, nets),
    unprotected: unprotectedPaths(wiring, alongConductors),
    wayFromSource: pathsFromSources(wiring, sides),
    devicePairs: devicePairsOf(wiring, protectedZones(wiring)),
    banks: banksOf(wiring, nets),
  };
}
