import type { Network, ProtectiveDevice } from "../model/network.ts";
import type { Citation } from "../standards/citation.ts";
import { opensFirst } from "./let-through.ts";
import type { NetworkResult } from "./network-result.ts";
import { percentOfRating } from "./opening-time.ts";

/** An upstream device that opens before, or together with, a downstream one, and disconnects other circuits with it. */
export interface WrongOrder {
  /** Indices in the network's devices. */
  readonly upstream: number;
  readonly downstream: number;
  /** The maximum fault through the downstream device, A, and its maximum part through the upstream one. */
  readonly currentA: number;
  readonly upstreamA: number;
  /**
   * Sources of the gates that show it. Empty if only the multiples of the ratings do: the upstream one's is at least as high.
   */
  readonly gates: readonly Citation[];
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
  const greatestA = new Map(result.faults.devices.map(({ device, greatestA }) => [device, greatestA]));
  const feeds = new Map<number, number>();
  for (const { upstream } of devicePairs) feeds.set(upstream, (feeds.get(upstream) ?? 0) + 1);
  const worst = new Map<number, WrongOrder>();
  for (const { upstream, downstream } of devicePairs) {
    const [above, below] = [network.devices[upstream], network.devices[downstream]];
    const currentA = greatestA.get(downstream);
    const mostA = greatestA.get(upstream);
    if (!above || !below || currentA === undefined || mostA === undefined) continue;
    if (isInOne(above, below) || (feeds.get(upstream) ?? 0) < 2) continue;
    const upstreamA = Math.min(currentA, mostA);
    const order = opensFirst(above, below, currentA, upstreamA);
    const gates = order.judged && order.first === "upstream" ? order.sources : [];
    const byRating = percentOfRating(above, upstreamA) >= percentOfRating(below, currentA);
    if (gates.length === 0 && (!byRating || (order.judged && order.first === "downstream"))) continue;
    const known = worst.get(downstream);
    if (!known || above.ratingA < (network.devices[known.upstream]?.ratingA ?? 0))
      worst.set(downstream, { upstream, downstream, currentA, upstreamA, gates });
  }
  return [...worst.values()];
}

/** Both are at the ends of one conductor. */
function isInOne({ place: one }: ProtectiveDevice, { place: other }: ProtectiveDevice): boolean {
  return one.at === "conductor" && other.at === "conductor" && one.conductor === other.conductor;
}
