import type { Network } from "../../../model/network.ts";
import { descriptorOf } from "../../../model/parts/index.ts";
import type { Edge } from "./network-graph.ts";

/**
 * Whether current through an edge can be stopped by hand there: a disconnect, or a breaker, which also opens by hand. A part with
 * only its terminals known counts too: it may be a contactor.
 */
export function opensLine(network: Network, { conductor, part }: Edge): boolean {
  if (conductor >= 0) {
    const { near, far } = network.conductors[conductor] ?? {};
    return near?.family === "circuit breaker" || far?.family === "circuit breaker";
  }
  const passed = network.parts[part];
  return passed !== undefined && descriptorOf(passed).opens !== undefined;
}
