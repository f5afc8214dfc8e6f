import { disjointSets } from "../../../model/disjoint-sets.ts";
import type { ProtectiveDevice } from "../../../model/network.ts";
import { workedOutOnce } from "../../../model/worked-out-once.ts";
import { holdsOneOf } from "../../first-index.ts";
import type { Source } from "../topology/internal-connections.ts";
import { branchOf, type NetworkGraph } from "../topology/network-graph.ts";
import { type Graph, graphOf, type SpanningForest, spanningForest } from "../topology/spanning-forest.ts";

/**
 * The network cut at its protective devices: zones without a device inside, and the devices between them.
 * A branch with a device at each end is a zone of its own; with one, it belongs to the zone at its other end.
 */
export interface ProtectedZones {
  /** Nodes are zones, edges are the network's devices. `a` is the zone at the terminal, `b` the zone on the branch's side. */
  readonly graph: Graph;
  /** By conductor. */
  readonly zoneOf: Int32Array;
  /** By zone: its conductors. */
  readonly conductorsIn: readonly (readonly number[])[];
  /** By section of the wiring. */
  readonly zoneAt: Int32Array;
}

/** By device: whether a source feeds it from its terminal's side, and from its conductor's side. */
export interface Feeding {
  readonly fromTerminal: boolean;
  readonly fromConductor: boolean;
}

/** Cached for each wiring. */
export const protectedZones: (wiring: NetworkGraph) => ProtectedZones = workedOutOnce(cutAtDevices);

function cutAtDevices(wiring: NetworkGraph): ProtectedZones {
  const { network, branches, sections: graph } = wiring;
  const { conductors, devices } = network;
  const merged = disjointSets(graph.nodes + branches.length);
  const middleOf = (branch: number) => graph.nodes + branch;
  branches.forEach(({ near, far }, branch) => {
    if (!near) merged.union(graph.a[branch]!, middleOf(branch));
    if (!far) merged.union(graph.b[branch]!, middleOf(branch));
  });
  const numbers = new Int32Array(graph.nodes + branches.length).fill(-1);
  let zones = 0;
  const zone = (element: number) => {
    const set = merged.find(element);
    if (numbers[set] === -1) numbers[set] = zones++;
    return numbers[set]!;
  };
  const zoneAt = Int32Array.from({ length: graph.nodes }, (_, point) => zone(point));
  const zoneOf = Int32Array.from(conductors, (_, conductor) => zone(middleOf(conductor)));
  const places = devices.map((device) => branchOf(wiring, device));
  const terminalZone = Int32Array.from(
    places,
    ({ branch, end }) => zoneAt[end === "near" ? graph.a[branch]! : graph.b[branch]!]!,
  );
  const branchZone = Int32Array.from(places, ({ branch }) => zone(middleOf(branch)));
  const conductorsIn = Array.from({ length: zones }, (): number[] => []);
  zoneOf.forEach((at, conductor) => {
    conductorsIn[at]!.push(conductor);
  });
  return {
    graph: graphOf(zones, terminalZone, branchZone),
    zoneOf,
    zoneAt,
    conductorsIn,
  };
}

/** A source feeds a device from one side if it reaches that side other than through the device. */
export function feedingOf(
  { network, sectionOf }: NetworkGraph,
  zones: ProtectedZones,
  sources: readonly Source[],
): Feeding[] {
  const { graph, zoneAt } = zones;
  const starts = sources.map(({ positive }) => zoneAt[sectionOf[positive]!]!);
  const forest = spanningForest(graph, starts, () => true);
  const orders = Int32Array.from(new Set(starts), (start) => forest.order[start]!).sort();
  return network.devices.map((_, device) => ({
    fromTerminal: isFed(forest, orders, graph.a[device]!, device),
    fromConductor: isFed(forest, orders, graph.b[device]!, device),
  }));
}

function isFed({ order, last, behind }: SpanningForest, starts: Int32Array, zone: number, device: number) {
  if (order[zone] === -1) return false;
  const child = behind[device]!;
  // Every tree grew from a source.
  if (child === -1) return true;
  const isBelow = order[zone]! >= order[child]! && order[zone]! <= last[child]!;
  // The subtree behind the device was reached through it; the other side goes back to the root, which is a source.
  return isBelow ? holdsOneOf(starts, order[child]!, last[child]!) : true;
}

/**
 * Pairs of devices in sequence on a path from the batteries outwards (from any source if no battery reaches).
 * Outwards means over an increasing number of devices. Between equals, two batteries with a fuse each, none is upstream.
 */
export function devicePairsOf(
  { network, sectionOf, sources }: NetworkGraph,
  { graph, zoneAt }: ProtectedZones,
): { upstream: number; downstream: number }[] {
  const { devices } = network;
  const away = new Int32Array(graph.nodes).fill(-1);
  walkOutwards(sources.filter(({ limitA }) => limitA === Number.POSITIVE_INFINITY));
  walkOutwards(sources);
  function walkOutwards(from: readonly Source[]) {
    const queue: number[] = [];
    for (const { positive } of from) {
      const zone = zoneAt[sectionOf[positive]!]!;
      if (away[zone] !== -1) continue;
      away[zone] = 0;
      queue.push(zone);
    }
    for (let next = 0; next < queue.length; next++) {
      const zone = queue[next]!;
      for (let at = graph.first[zone]!; at < graph.first[zone + 1]!; at++) {
        const device = graph.edges[at]!;
        const other = graph.a[device] === zone ? graph.b[device]! : graph.a[device]!;
        if (away[other] !== -1) continue;
        away[other] = away[zone]! + 1;
        queue.push(other);
      }
    }
  }
  const entering = Array.from({ length: graph.nodes }, (): number[] => []);
  const leaving = Array.from({ length: graph.nodes }, (): number[] => []);
  devices.forEach((_, device) => {
    const [a, b] = [graph.a[device]!, graph.b[device]!];
    if (away[a] === away[b]) return;
    const [inner, outer] = away[a]! < away[b]! ? [a, b] : [b, a];
    leaving[inner]!.push(device);
    entering[outer]!.push(device);
  });
  return entering.flatMap((upstreams, zone) =>
    leastOfEachKind(upstreams, devices).flatMap((upstream) =>
      leaving[zone]!.map((downstream) => ({ upstream, downstream })),
    ),
  );
}

/**
 * From several devices that lead into one zone in parallel: one of each family and rating, and no more than the eight of the
 * least rating. Those may open first, and the number of pairs stays in proportion to that of devices.
 */
function leastOfEachKind(upstreams: readonly number[], devices: readonly ProtectiveDevice[]): number[] {
  const byKind = new Map<string, number>();
  for (const device of upstreams) {
    const kind = `${devices[device]!.ratingA} A ${devices[device]!.family ?? ""}`;
    if (!byKind.has(kind)) byKind.set(kind, device);
  }
  const ratingA = (device: number) => devices[device]!.ratingA;
  return [...byKind.values()].sort((a, b) => ratingA(a) - ratingA(b)).slice(0, 8);
}
