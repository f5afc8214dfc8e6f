import type { Network, NetworkConductor } from "../../../model/network.ts";
import { conductorsAt, networkGraph } from "./network-graph.ts";

/** The conductors that end at a terminal, in the order of the plan; one that both begins and ends there, twice. */
export function endsAt(network: Network, terminal: number): readonly NetworkConductor[] {
  return conductorsAt(networkGraph(network), terminal).map((conductor) => network.conductors[conductor]!);
}
