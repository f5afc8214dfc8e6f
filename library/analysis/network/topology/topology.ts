import type { Network } from "../../../model/network.ts";
import { devicePairsOf, protectedZones } from "../faults/protected-zones.ts";
import { unprotectedPaths } from "../faults/unprotected-paths.ts";
import { banksOf } from "./banks.ts";
import { crankingFeeds } from "./cranking-feeds.ts";
import { networkGraph } from "./network-graph.ts";
import type { NetworkTopology } from "./network-topology.ts";
import { conductorPolarities, netPolarities, shortsOf, terminalPolarities } from "./polarity.ts";
import { pathsFromSources } from "./source-paths.ts";

/** Never throws, even if everything is short-circuited. */
export function topologyOf(network: Network): NetworkTopology {
  const wiring = networkGraph(network);
  const nets = netPolarities(wiring);
  const sides = terminalPolarities(wiring, nets);
  const alongConductors = conductorPolarities(wiring, nets);
  const crankingFeed = crankingFeeds(wiring);
  return {
    sides,
    conductorSides: alongConductors,
    shorts: shortsOf(wiring, nets),
    unprotected: unprotectedPaths(wiring, alongConductors).filter(
      ({ conductor }) => !crankingFeed.has(conductor),
    ),
    crankingFeeds: crankingFeed,
    wayFromSource: pathsFromSources(wiring, sides),
    devicePairs: devicePairsOf(wiring, protectedZones(wiring)),
    banks: banksOf(wiring, nets),
  };
}
