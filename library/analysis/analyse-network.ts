import type { Network } from "../model/network.ts";
import { faultsOf } from "./network/faults.ts";
import { solveScenarios } from "./network/solve-scenarios.ts";
import { topologyOf } from "./network/topology.ts";
import { withoutUntoldIslands } from "./network/untold-islands.ts";
import { worstOver } from "./network/worst.ts";
import type { NetworkResult } from "./network-result.ts";

/** Everything that is computed of one network. A pure function, called on every keystroke. */
export function analyseNetwork(network: Network): NetworkResult {
  const topology = topologyOf(network);
  const scenarios = solveScenarios(network);
  return {
    topology,
    scenarios,
    ...withoutUntoldIslands(network, topology, scenarios, worstOver(network, topology, scenarios)),
    faults: faultsOf(network, topology),
  };
}
