import { disjointSets } from "../../../model/disjoint-sets.ts";
import type { Protection } from "../../../model/run.ts";
import { firstIndex } from "../../first-index.ts";
import { workedOutOnce } from "../../worked-out-once.ts";
import type { Source } from "../topology/internal-connections.ts";
import type { NetworkGraph } from "../topology/network-graph.ts";
import type { DevicePlace } from "../topology/network-topology.ts";
import { type Graph, graphOf, type SpanningForest, spanningForest } from "../topology/spanning-forest.ts";

/**
 * The network cut at its protective devices: zones without a device inside, and the devices between them.
 * A conductor with a device at each end is a zone of its own; with one, it belongs to the zone at its other end.
 */
export interface ProtectedZones {
  readonly devices: readonly PlacedDevice[];
  /** Nodes are zones, edges are devices. `a` is the zone at the terminal, `b` the zone on the conductor's side. */
  readonly graph: Graph;
  /** By conductor. */
  readonly zoneOf: Int32Array;
  /** By zone: its conductors. */
  readonly conductorsIn: readonly (readonly number[])[];
  /** By point of the wiring. */
  readonly zoneAt: Int32Array;
}

export type PlacedDevice = DevicePlace & Protection;

/** By device: whether a source feeds it from its terminal's side, and from its conductor's side. */
export interface Feeding {
  readonly fromTerminal: boolean;
  readonly fromConductor: boolean;
}

/** Devices are in the order of their conductors, the one at the near end first. Cached for each wiring. */
export const protectedZones: (wiring: NetworkGraph) => ProtectedZones = workedOutOnce(cutAtDevices);

function cutAtDevices({ network, graph }: NetworkGraph): ProtectedZones {
  const { conductors } = network;
  const merged = disjointSets(graph.nodes + conductors.length);
  const middleOf = (conductor: number) => graph.nodes + conductor;
  conductors.forEach(({ near, far }, conductor) => {
    if (!near) merged.union(graph.a[conductor]!, middleOf(conductor));
    if (!far) merged.union(graph.b[conductor]!, middleOf(conductor));
  });
  const numbers = new Int32Array(graph.nodes + conductors.length).fill(-1);
  let zones = 0;
  const zone = (element: number) => {
    const set = merged.find(element);
    if (numbers[set] === -1) numbers[set] = zones++;
    return numbers[set]!;
  };
  const zoneAt = Int32Array.from({ length: graph.nodes }, (_, point) => zone(point));
  const zoneOf = Int32Array.from(conductors, (_, conductor) => zone(middleOf(conductor)));
  const devices: PlacedDevice[] = [];
  conductors.forEach(({ near, far }, conductor) => {
    if (near) devices.push({ ...near, conductor, end: "near" });
    if (far) devices.push({ ...far, conductor, end: "far" });
  });
  const terminalZone = Int32Array.from(
    devices,
    ({ conductor, end }) => zoneAt[end === "near" ? graph.a[conductor]! : graph.b[conductor]!]!,
  );
  const conductorZone = Int32Array.from(devices, ({ conductor }) => zoneOf[conductor]!);
  const conductorsIn = Array.from({ length: zones }, (): number[] => []);
  zoneOf.forEach((at, conductor) => {
    conductorsIn[at]!.push(conductor);
  });
  return {
    devices,
    graph: graphOf(zones, terminalZone, conductorZone),
    zoneOf,
    zoneAt,
    conductorsIn,
  };
}

/** A source feeds a device from one side if it reaches that side other than through the device. */
export function feedingOf(
  { pointOf }: NetworkGraph,
  zones: ProtectedZones,
  sources: readonly Source[],
): Feeding[] {
  const { graph, zoneAt, devices } = zones;
  const starts = sources.map(({ positive }) => zoneAt[pointOf[positive]!]!);
  const forest = spanningForest(graph, starts, () => true);
  const orders = Int32Array.from(new Set(starts), (start) => forest.order[start]!).sort();
  return devices.map((_, device) => ({
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

/** Whether one of some ascending numbers lies between two, both included. */
function holdsOneOf(ascending: Int32Array, from: number, to: number): boolean {
  const first = firstIndex(ascending, (number) => number >= from);
  return first < ascending.length && ascending[first]! <= to;
}

/**
 * Pairs of devices in sequence on a path from the batteries outwards (from any source if no battery reaches).
 * Outwards means over an increasing number of devices. Between equals, two batteries with a fuse each, none is upstream.
 */
export function devicePairsOf(
  { pointOf, sources }: NetworkGraph,
  { devices, graph, zoneAt }: ProtectedZones,
): { upstream: DevicePlace; downstream: DevicePlace }[] {
  const away = new Int32Array(graph.nodes).fill(-1);
  walkOutwards(sources.filter(({ limitA }) => limitA === Number.POSITIVE_INFINITY));
  walkOutwards(sources);
  function walkOutwards(from: readonly Source[]) {
    const queue: number[] = [];
    for (const { positive } of from) {
      const zone = zoneAt[pointOf[positive]!]!;
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
      leaving[zone]!.map((downstream) => ({
        upstream: placeOf(devices[upstream]!),
        downstream: placeOf(devices[downstream]!),
      })),
    ),
  );
}

/**
 * From several devices that lead into one zone in parallel: one of each family and rating, and no more than the eight of the
 * least rating. Those may open first, and the number of pairs stays in proportion to that of devices.
 */
function leastOfEachKind(upstreams: readonly number[], devices: readonly PlacedDevice[]): number[] {
  const byKind = new Map<string, number>();
  for (const device of upstreams) {
    const kind = `${devices[device]!.ratingA} A ${devices[device]!.family ?? ""}`;
    if (!byKind.has(kind)) byKind.set(kind, device);
  }
  const ratingA = (device: number) => devices[device]!.ratingA;
  return [...byKind.values()].sort((a, b) => ratingA(a) - ratingA(b)).slice(0, 8);
}

function placeOf({ conductor, end }: DevicePlace): DevicePlace {
  return { conductor, end };
}
