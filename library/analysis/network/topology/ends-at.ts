import type { Network, NetworkConductor } from "../../../model/network.ts";
import { edgesOf } from "./adjacency.ts";

/** The conductors that end at a terminal, in the order of the plan; one that both begins and ends there, twice. */
export function endsAt(network: Network, terminal: number): readonly NetworkConductor[] {
  return (edgesOf(network)[terminal] ?? []).flatMap(({ conductor }) => network.conductors[conductor] ?? []);
}
