import type { AlternatorPart, Network } from "../model/network.ts";
import type { DevicePart } from "../model/part-roles.ts";
import { workedOutOnce } from "../model/worked-out-once.ts";
import { protectionOfMachine } from "../standards/protection-rules.ts";
import { mountedAt } from "./network/topology/ends-at.ts";
import { conductorsAt, networkGraph } from "./network/topology/network-graph.ts";
import { withoutDust } from "./rounding-dust.ts";

/** The maximum device rating in a conductor that leaves an alternator without its own current limit. */
export interface MachineLimit {
  readonly alternator: AlternatorPart;
  /** 120 % of the machine's rating, 33 CFR 183.460(b), A. */
  readonly maxA: number;
}

/** The least such limit for a conductor; undefined if it leaves no such machine. */
export function machineLimit(network: Network, index: number): MachineLimit | undefined {
  return machineLimits(network).get(index);
}

/** By index of a conductor. */
const machineLimits = workedOutOnce((network: Network): ReadonlyMap<number, MachineLimit> => {
  const limits = new Map<number, MachineLimit>();
  for (const alternator of network.parts) {
    if (alternator.kind !== "alternator" || alternator.selfLimiting) continue;
    const maxA = withoutDust((alternator.ratedA * protectionOfMachine.ofRatingPercent) / 100);
    const { positive } = alternator.terminals;
    // Past a device on the machine's own terminal, the conductor still leaves the machine.
    const devices = mountedAt(network, positive);
    const leaving = [positive, ...devices.flatMap(({ terminals }) => [terminals.line, terminals.load])];
    const graph = networkGraph(network);
    for (const index of leaving.flatMap((terminal) => conductorsAt(graph, terminal)))
      if (maxA < (limits.get(index)?.maxA ?? Number.POSITIVE_INFINITY))
        limits.set(index, { alternator, maxA });
  }
  return limits;
});

/** The least limit for a device that is a part of its own: that of the conductors that end at it. */
export function machineLimitAtDevice(network: Network, { terminals }: DevicePart): MachineLimit | undefined {
  const graph = networkGraph(network);
  return [terminals.line, terminals.load]
    .flatMap((terminal) => conductorsAt(graph, terminal))
    .flatMap((conductor) => machineLimit(network, conductor) ?? [])
    .sort((one, other) => one.maxA - other.maxA)[0];
}
