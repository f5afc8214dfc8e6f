import type { Network, NetworkConductor } from "../../../model/network.ts";
import { type DevicePart, isDevice } from "../../../model/part-roles.ts";
import { conductorsAt, networkGraph } from "./network-graph.ts";
import { across, edgesAt } from "./spanning-forest.ts";

/** The conductors that end at a terminal, in the order of the plan; one that both begins and ends there, twice. */
export function endsAt(network: Network, terminal: number): readonly NetworkConductor[] {
  return conductorsAt(networkGraph(network), terminal).map((conductor) => network.conductors[conductor]!);
}

/** The fuses and breakers that are mounted on a terminal of another part, in the order of the plan. */
export function mountedAt(network: Network, terminal: number): readonly DevicePart[] {
  const { terminals } = networkGraph(network);
  const joins = [...edgesAt(terminals, terminal)].filter((edge) => edge >= network.conductors.length);
  return joins
    .map((edge) => network.parts[network.terminals[across(terminals, edge, terminal)]!.part]!)
    .filter(isDevice)
    .filter(({ mountedOn }) => mountedOn === terminal);
}
