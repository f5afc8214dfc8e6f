import type { Network } from "../../model/network.ts";
import type { FaultResult } from "../network-result.ts";
import type { NetworkTopology } from "./topology.ts";

/** What a dead short draws, at each device and at each end of each conductor. */
export function faultsOf(_network: Network, _topology: NetworkTopology): FaultResult {
  return { devices: [], conductors: [] };
}
