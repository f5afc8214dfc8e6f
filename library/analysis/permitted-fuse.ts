import { deviceInPart, type Network, type Part, type ProtectiveDevice } from "../model/network.ts";
import { type DevicePart, isDevice } from "../model/part-roles.ts";
import { workedOutOnce } from "../model/worked-out-once.ts";
import { conductorsAt, networkGraph } from "./network/topology/network-graph.ts";
import { portsOf } from "./network/topology/ports.ts";

/** The largest fuse that the maker of a device permits, and the fuse or breaker of its feed. */
export interface PermittedFuse {
  readonly part: Part;
  readonly maxFuseA: number;
  /** The conductor at its positive terminal. */
  readonly conductor: number;
  /** The least one in that conductor or at its other end, for this device alone; undefined: there is none. */
  readonly own: ProtectiveDevice | undefined;
}

/** One for each device that states it and has one conductor at its positive terminal. */
export const permittedFuses = workedOutOnce((network: Network): readonly PermittedFuse[] => {
  const graph = networkGraph(network);
  return network.parts.flatMap((part): readonly PermittedFuse[] => {
    const maxFuseA = "maxFuseA" in part ? part.maxFuseA : undefined;
    const terminal = feedTerminal(part);
    if (maxFuseA === undefined || terminal === undefined) return [];
    const [conductor, ...others] = conductorsAt(graph, terminal);
    if (conductor === undefined || others.length > 0) return [];
    const { from, to, near, far } = network.conductors[conductor]!;
    const beyond = network.parts[network.terminals[from === terminal ? to : from]!.part]!;
    const atOtherEnd =
      isDevice(beyond) && feedsAlone(network, beyond) ? deviceInPart(network, beyond.index) : undefined;
    const [own] = [near, far, atOtherEnd]
      .flatMap((device): readonly ProtectiveDevice[] => (device ? [device] : []))
      .sort((one, other) => one.ratingA - other.ratingA);
    return [{ part, maxFuseA, conductor, own }];
  });
});

/** The positive terminal of its feed; of a charger or controller, that towards the battery. */
function feedTerminal(part: Part): number | undefined {
  return "positive" in part.terminals ? part.terminals.positive : portsOf(part)[0]?.positive;
}

/** Whether one conductor leaves a device. */
function feedsAlone(network: Network, { terminals }: DevicePart): boolean {
  const graph = networkGraph(network);
  return [terminals.line, terminals.load].every((terminal) => conductorsAt(graph, terminal).length <= 1);
}

/** The largest fuse permitted in a conductor, A; undefined if its device states none. */
export function permittedFuseIn(network: Network, conductor: number): number | undefined {
  return permittedByConductor(network).get(conductor);
}

const permittedByConductor = workedOutOnce(
  (network: Network): ReadonlyMap<number, number> =>
    new Map(permittedFuses(network).map(({ conductor, maxFuseA }) => [conductor, maxFuseA])),
);

/** The same for a device that is a part of its own. */
export function permittedFuseAtDevice(network: Network, device: DevicePart): number | undefined {
  return permittedFuses(network).find(
    ({ own }) => own?.place.at === "part" && own.place.part === device.index,
  )?.maxFuseA;
}
