import type { Network, Part } from "../model/network.ts";
import { unknownSharesOf } from "./network/unknown-shares.ts";
import type { NetworkResult } from "./network-result.ts";

interface Judged {
  readonly network: Network;
  readonly result: NetworkResult;
}

/**
 * The conductors of unknown length on the ways between a part and its sources, by their indices. Without them no voltage at the part is
 * known: it is at most the one that was worked out.
 */
export function withoutLengthTo({ network, result }: Judged, part: Part): readonly number[] {
  const onPath = result.supplyPaths
    .filter((way) => way.part === part.index)
    .flatMap((way) => way.withoutLength);
  const { decidedBy } = unknownSharesOf(network);
  const onWays = Object.values(part.terminals).flatMap((terminal) =>
    (result.topology.wayFromSource(terminal)?.conductors ?? []).flatMap((conductor) =>
      network.scenarios.flatMap((scenario) => decidedBy(scenario, conductor)),
    ),
  );
  return [...new Set([...onPath, ...onWays])];
}
