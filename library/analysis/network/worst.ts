import type { Network } from "../../model/network.ts";
import type { NetworkResult, ScenarioResult } from "../network-result.ts";
import type { NetworkTopology } from "./topology.ts";

/** The worst over all scenarios, for each conductor, each part, and each way from a bank to a device. */
export function worstOver(
  network: Network,
  _topology: NetworkTopology,
  _scenarios: readonly ScenarioResult[],
): Pick<NetworkResult, "conductors" | "parts" | "ways"> {
  return {
    conductors: network.conductors.map(() => ({ worst: undefined })),
    parts: network.parts.map(() => ({
      feeds: undefined,
      draws: undefined,
      surge: undefined,
      lowestV: undefined,
    })),
    ways: [],
  };
}
