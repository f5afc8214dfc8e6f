import type { AlternatorPart, Network } from "../model/network.ts";
import { type DevicePart, isDevice } from "../model/part-roles.ts";
import { protectionOfMachine } from "../standards/protection-rules.ts";
import { conductorsAt, networkGraph } from "./network/topology/network-graph.ts";
import { withoutDust } from "./rounding-dust.ts";

/** The maximum device rating in a conductor that leaves an alternator without its own current limit. */
export interface MachineLimit {
  readonly alternator: AlternatorPart;
  /** 120 % of the machine's rating, 33 CFR 183.460(b), A. */
  readonly maxA: number;
}

/** The least such limit for a conductor; undefined if it leaves no such machine. */
export function machineLimit(
  { parts, conductors, terminals }: Network,
  index: number,
): MachineLimit | undefined {
  const conductor = conductors[index];
  const limits = [conductor?.from, conductor?.to].flatMap((terminal = -1): MachineLimit[] => {
    const beside = parts[terminals[terminal]?.part ?? -1];
    // Past a device on the machine's own terminal, the conductor still leaves the machine.
    const leaves = beside && isDevice(beside) ? (beside.mountedOn ?? terminal) : terminal;
    const part = parts[terminals[leaves]?.part ?? -1];
    if (part?.kind !== "alternator" || part.selfLimiting || part.terminals.positive !== leaves) return [];
    return [
      { alternator: part, maxA: withoutDust((part.ratedA * protectionOfMachine.ofRatingPercent) / 100) },
    ];
  });
  return leastLimit(limits);
}

/** The least limit for a device that is a part of its own: that of the conductors that end at it. */
export function machineLimitAtDevice(network: Network, { terminals }: DevicePart): MachineLimit | undefined {
  const graph = networkGraph(network);
  return leastLimit(
    [terminals.line, terminals.load]
      .flatMap((terminal) => conductorsAt(graph, terminal))
      .flatMap((conductor) => machineLimit(network, conductor) ?? []),
  );
}

function leastLimit(limits: readonly MachineLimit[]): MachineLimit | undefined {
  return [...limits].sort((one, other) => one.maxA - other.maxA)[0];
}
