import type { Network } from "../../model/network.ts";
import type { NetworkResult } from "../network-result.ts";
import { disjointSets } from "./disjoint-sets.ts";
import type { NetworkTopology } from "./topology.ts";

/**
 * Takes the worst of every conductor and part out that hangs together with a source whose own poles are joined: as long as that
 * short is there, currents and voltages of the whole island say nothing of how the build will run. The scenarios keep what was
 * solved.
 */
export function withoutShortedIslands(
  network: Network,
  { shorts }: NetworkTopology,
  worst: Pick<NetworkResult, "conductors" | "parts" | "ways">,
): Pick<NetworkResult, "conductors" | "parts" | "ways"> {
  if (shorts.length === 0) return worst;
  const islands = islandsOf(network);
  const shorted = new Set(shorts.map(({ source }) => islands.find(source)));
  const isShorted = (part: number) => shorted.has(islands.find(part));
  return {
    conductors: worst.conductors.map((one, conductor) =>
      isShorted(partAt(network, network.conductors[conductor]!.from)) ? { worst: undefined } : one,
    ),
    parts: worst.parts.map((one, part) => (isShorted(part) ? nothingWorst : one)),
    ways: worst.ways.filter(({ part }) => !isShorted(part)),
  };
}

const nothingWorst = { feeds: undefined, draws: undefined, surge: undefined, lowestV: undefined };

/** Parts that conductors join, by index. What is isolated inside is taken as one all the same: a charger passes the trouble on. */
function islandsOf(network: Network) {
  const islands = disjointSets(network.parts.length);
  for (const { from, to } of network.conductors) islands.union(partAt(network, from), partAt(network, to));
  return islands;
}

function partAt({ terminals }: Network, terminal: number): number {
  return terminals[terminal]!.part;
}
