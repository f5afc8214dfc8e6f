import type { Network, Part } from "../model/network.ts";
import { workedOutOnce } from "../model/worked-out-once.ts";
import { blocksOf } from "./network/topology/blocks.ts";
import { networkGraph } from "./network/topology/network-graph.ts";
import { portsOf } from "./network/topology/ports.ts";
import { withSources } from "./network/topology/source-blocks.ts";
import { hasUnknownLength, unknownSharesOf } from "./network/unknown-shares.ts";
import type { NetworkResult } from "./network-result.ts";

interface Judged {
  readonly network: Network;
  readonly result: NetworkResult;
}

/**
 * The conductors of unknown length on the ways between a part and its sources, by their indices; of a battery, those on which its share
 * of a current depends. Without them no voltage at the part is known: at a device, it is at most the one that was worked out.
 */
export function withoutLengthTo({ network, result }: Judged, part: Part): readonly number[] {
  if (!hasUnknownLength(network)) return [];
  const onPath = result.supplyPaths
    .filter((way) => way.part === part.index)
    .flatMap((way) => way.withoutLength);
  const { decidedBy, partSharesCurrentBy } = unknownSharesOf(network);
  const ofShares =
    part.kind === "battery"
      ? network.scenarios.flatMap((scenario) => partSharesCurrentBy(scenario, part.index))
      : [];
  const onWays = Object.values(part.terminals).flatMap((terminal) =>
    (result.topology.wayFromSource(terminal)?.conductors ?? []).flatMap((conductor) =>
      network.scenarios.flatMap((scenario) => decidedBy(scenario, conductor)),
    ),
  );
  return [...new Set([...onPath, ...onWays, ...ofShares])];
}

/**
 * Whether a limit of a conductor of this record, or of one at a terminal of this part, depends on an unknown length: the drop at a
 * device that it supplies, its least short-circuit current, or its share of a current.
 */
export function restsOnUnknownLength({ network, result }: Judged, record: number): boolean {
  if (!hasUnknownLength(network)) return false;
  const terminals = new Set(
    network.parts.flatMap((part) => (part.record === record ? Object.values(part.terminals) : [])),
  );
  const own = new Set(
    network.conductors.flatMap(({ from, to, record: of }, index) =>
      of === record || terminals.has(from) || terminals.has(to) ? [index] : [],
    ),
  );
  const { decidedBy } = unknownSharesOf(network);
  return (
    [...own].some(
      (conductor) =>
        result.faults.conductors[conductor]?.leastIsAtMost ||
        network.scenarios.some((scenario) => decidedBy(scenario, conductor).length > 0),
    ) ||
    waysOfDevices(network).some(
      (way) =>
        way.some((conductor) => own.has(conductor)) &&
        way.some((conductor) => network.conductors[conductor]!.lengthM === undefined),
    )
  );
}

/**
 * For each device that draws, the conductors that can carry its current, with every switch closed: the scenario that is the worst for it
 * may be another one with another size.
 */
const waysOfDevices = workedOutOnce((network: Network): readonly (readonly number[])[] => {
  const { between } = blocksOf(withSources(networkGraph(network)).graph);
  return network.parts
    .flatMap(portsOf)
    .flatMap(({ does, positive, negative }) =>
      does === "draws"
        ? [between(positive, negative).filter((edge) => edge < network.conductors.length)]
        : [],
    );
});
