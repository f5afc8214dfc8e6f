import type { Network } from "../../model/network.ts";
import type { ScenarioResult } from "../network-result.ts";

/** Solves the network in each of its scenarios. */
export function solveScenarios(_network: Network): readonly ScenarioResult[] {
  return [];
}
