import type { Network } from "../model/network.ts";
import { conductorsAt, networkGraph } from "./network/topology/network-graph.ts";
import type { NetworkResult } from "./network-result.ts";

/**
 * The current that may leave a terminal for hours, away from the bank, by the first devices on the way: the sum of their ratings, A.
 * Infinity if a conductor leads to a device that draws or to another source past none.
 */
export function ratingBehindA(
  { network, result }: { readonly network: Network; readonly result: NetworkResult },
  terminal: number,
): number {
  const graph = networkGraph(network);
  const towardsBank = new Set(result.topology.wayFromSource(terminal)?.conductors ?? []);
  const points = new Map<number, number[]>();
  graph.pointOf.forEach((point, at) => {
    const there = points.get(point);
    if (there) there.push(at);
    else points.set(point, [at]);
  });
  let sumA = 0;
  const seen = new Set([graph.pointOf[terminal]!]);
  // A set grows while it is walked.
  for (const point of seen) {
    const terminals = points.get(point)!;
    const leaving = terminals.flatMap((at) => conductorsAt(graph, at)).filter((one) => !towardsBank.has(one));
    if (leaving.length === 0) return Number.POSITIVE_INFINITY;
    for (const index of leaving) {
      const { near, far, from, to } = network.conductors[index]!;
      const ratings = [near, far].flatMap((device) => (device ? [device.ratingA] : []));
      if (ratings.length > 0) sumA += Math.min(...ratings);
      else seen.add(graph.pointOf[terminals.includes(from) ? to : from]!);
    }
  }
  return sumA;
}
