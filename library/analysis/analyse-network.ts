import type { Network } from "../model/network.ts";
import { continuousAlone } from "./continuous-load.ts";
import { faultsOf } from "./network/faults/faults.ts";
import { atLowVoltage } from "./network/low-voltage.ts";
import { excludeUnsolvedIslands } from "./network/solver/exclude-unsolved-islands.ts";
import { patternsIn, scenarioSolver } from "./network/solver/solve-scenarios.ts";
import { shareGraph } from "./network/topology/network-graph.ts";
import { hasSameTopology } from "./network/topology/same-topology.ts";
import { topologyOf } from "./network/topology/topology.ts";
import { unknownSharesOf } from "./network/unknown-shares.ts";
import { worstCaseOver } from "./network/worst-case.ts";
import type { NetworkResult } from "./network-result.ts";

/**
 * All results for one network. A pure function, called on every keystroke. `before` is an already analysed network: results
 * that must be the same in both are taken from there, and the result is the same as without it.
 */
export function analyseNetwork(network: Network, before?: AnalysedNetwork): NetworkResult {
  const alike = before && hasSameTopology(before.network, network) ? before.result : undefined;
  if (before && alike) shareGraph(network, before.network);
  const topology = alike?.topology ?? topologyOf(network);
  const solve = scenarioSolver(network, patternsIn(topology));
  const scenarios = network.scenarios.map(solve);
  const lowVoltage = atLowVoltage(network, scenarios, solve);
  const continuous = continuousAlone(network, scenarios, solve);
  const worst = (shares: "undivided" | "divided") =>
    excludeUnsolvedIslands(
      network,
      topology,
      scenarios,
      worstCaseOver({ network, topology, scenarios, lowVoltage, continuous, shares }),
    );
  return {
    topology,
    scenarios,
    ...worst("undivided"),
    ...(unknownSharesOf(network).undivided().conductors.size > 0 && { divided: worst("divided") }),
    faults: alike?.faults ?? faultsOf(network, topology),
  };
}

interface AnalysedNetwork {
  readonly network: Network;
  readonly result: NetworkResult;
}
