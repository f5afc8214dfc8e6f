import type { Network } from "../model/network.ts";
import type { Protection } from "../model/run.ts";
import { opensFirst } from "./let-through.ts";
import type { DevicePlace } from "./network/topology/network-topology.ts";
import type { NetworkResult } from "./network-result.ts";
import { percentOfRating } from "./opening-time.ts";

/** An upstream device that opens before, or together with, a downstream one, and disconnects other circuits with it. */
export interface WrongOrder {
  readonly upstream: DevicePlace;
  readonly downstream: DevicePlace;
  /** The maximum fault through the downstream device, A, and its maximum part through the upstream one. */
  readonly currentA: number;
  readonly upstreamA: number;
  /** True if the families' gates show it; else only the multiples of the ratings do: the upstream one's is at least as high. */
  readonly byGates: boolean;
}

/**
 * For each downstream device, the upstream device of the least rating that opens before it, for a short right behind the
 * downstream one. Left out if the upstream one feeds no other device, or if both are in one conductor.
 *
 * The upstream device never carries more than its own maximum fault: of parallel batteries with a fuse each, a part.
 */
export function wrongOrders({
  network,
  result,
}: {
  readonly network: Network;
  readonly result: NetworkResult;
}): readonly WrongOrder[] {
  const { devicePairs } = result.topology;
  const greatestA = new Map(result.faults.devices.map((fault) => [keyOf(fault), fault.greatestA]));
  const feeds = new Map<string, number>();
  for (const { upstream } of devicePairs) feeds.set(keyOf(upstream), (feeds.get(keyOf(upstream)) ?? 0) + 1);
  const worst = new Map<string, WrongOrder>();
  for (const { upstream, downstream } of devicePairs) {
    const [above, below] = [deviceAt(network, upstream), deviceAt(network, downstream)];
    const currentA = greatestA.get(keyOf(downstream));
    const mostA = greatestA.get(keyOf(upstream));
    if (!above || !below || currentA === undefined || mostA === undefined) continue;
    if (upstream.conductor === downstream.conductor || (feeds.get(keyOf(upstream)) ?? 0) < 2) continue;
    const upstreamA = Math.min(currentA, mostA);
    const order = opensFirst(above, below, currentA, upstreamA);
    const byGates = order.judged && order.first === "upstream";
    const byRating = percentOfRating(above, upstreamA) >= percentOfRating(below, currentA);
    if (!byGates && (!byRating || (order.judged && order.first === "downstream"))) continue;
    const known = worst.get(keyOf(downstream));
    if (!known || above.ratingA < (deviceAt(network, known.upstream)?.ratingA ?? 0))
      worst.set(keyOf(downstream), { upstream, downstream, currentA, upstreamA, byGates });
  }
  return [...worst.values()];
}

function deviceAt({ conductors }: Network, { conductor, end }: DevicePlace): Protection | null | undefined {
  return end === "near" ? conductors[conductor]?.near : conductors[conductor]?.far;
}

function keyOf({ conductor, end }: DevicePlace): string {
  return `${conductor} ${end}`;
}
