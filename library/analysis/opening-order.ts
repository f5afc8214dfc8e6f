import type { Network } from "../model/network.ts";
import type { Protection } from "../model/run.ts";
import { opensFirst } from "./let-through.ts";
import type { DevicePlace, NetworkResult } from "./network-result.ts";
import { percentOfRating } from "./opening-time.ts";

/** A device further up that opens before, or as soon as, one further out, and takes other things with it. */
export interface WrongOrder {
  readonly upstream: DevicePlace;
  readonly downstream: DevicePlace;
  /** The greatest current through the one further out, A, and what of it flows through the one further up, at most. */
  readonly currentA: number;
  readonly upstreamA: number;
  /** The families' gates say so; else only that the one further up carries at least as many times its rating. */
  readonly byGates: boolean;
}

/**
 * By the least of all devices that follow it: for each device further out, the one further up that opens before it, for a short
 * right behind it. Left out where the one further up feeds nothing else, and where both sit in one conductor.
 *
 * The one further up never carries more than its own greatest short: of batteries side by side each with a fuse, a part.
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
