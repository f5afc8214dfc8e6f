import type { NetworkConductor, ProtectiveDevice } from "../../../model/network.ts";
import { ampacityOf } from "../../ampacity.ts";
import { holdsOneOf } from "../../first-index.ts";
import { branchOf, type NetworkGraph } from "../topology/network-graph.ts";
import type { NetworkTopology } from "../topology/network-topology.ts";
import { graphOf, spanningForest } from "../topology/spanning-forest.ts";
import { feedingOf, type ProtectedZones, protectedZones } from "./protected-zones.ts";

/** A conductor that several devices side by side feed: each is small enough for it, and all together are not. */
export interface SummedDevices {
  readonly conductor: NetworkConductor;
  readonly ampacityA: number;
  /** Those between the banks and the conductor. */
  readonly devices: readonly ProtectiveDevice[];
  readonly sumA: number;
  /** Two of them lie side by side in the same line: not only between different batteries and the conductor. */
  readonly parallel: boolean;
}

/**
 * The positive conductors past which several devices feed in parallel: of each zone without a device inside, the one of the least
 * ampacity. An overload draws the sum of their ratings for long (IEC 60364-4-43, 433.1).
 *
 * Only banks count, and only conductors that are the one link between all of those devices and the loads behind: a conductor with
 * devices on either side carries the current of one side alone. Batteries that a relay or selector connects are banks of their own,
 * and their devices are not added up. The main feed of a starter motor needs no protection (33 CFR 183.455(e)).
 */
export function summedDevices(wiring: NetworkGraph, topology: Wired): readonly SummedDevices[] {
  const { network, sectionOf, sources } = wiring;
  const zones = protectedZones(wiring);
  const banks = sources.filter(({ limitA }) => limitA === Number.POSITIVE_INFINITY);
  const withBank = new Set(banks.map(({ positive }) => zones.zoneAt[sectionOf[positive]!]!));
  const bankIn = bankByZone(wiring, zones, topology.banks);
  return [...enteringDevices(wiring, zones, banks)].flatMap(([zone, entering]) => {
    if (entering.length < 2 || withBank.has(zone)) return [];
    const { a, b } = zones.graph;
    const outer = ({ index }: ProtectiveDevice) => (a[index] === zone ? b[index]! : a[index]!);
    const bySource = new Map<number | string, ProtectiveDevice[]>();
    for (const device of entering) {
      const source = bankIn.get(outer(device)) ?? `zone ${outer(device)}`;
      const there = bySource.get(source);
      if (there) there.push(device);
      else bySource.set(source, [device]);
    }
    return [...bySource.values()].flatMap((devices): SummedDevices[] => {
      if (devices.length < 2) return [];
      const ratings = devices.map(({ ratingA }) => ratingA);
      const sumA = ratings.reduce((sum, ratingA) => sum + ratingA, 0);
      const fitsEach = (ampacityA: number) => ratings.every((ratingA) => ratingA <= ampacityA);
      const overloaded = behindAll(wiring, zones, zone, devices).flatMap((index) => {
        const conductor = network.conductors[index]!;
        const ampacity = ampacityOf(conductor.run);
        if (topology.conductorSides[index] !== "positive" || !ampacity.judged) return [];
        if (topology.crankingFeeds.has(index)) return [];
        const { ampacityA } = ampacity;
        return fitsEach(ampacityA) && ampacityA < sumA ? [{ conductor, ampacityA }] : [];
      });
      const [thinnest] = overloaded.sort((one, other) => one.ampacityA - other.ampacityA);
      const parallel = new Set(devices.map(outer)).size < devices.length;
      return thinnest ? [{ ...thinnest, devices, sumA, parallel }] : [];
    });
  });
}

type Wired = Pick<NetworkTopology, "banks" | "conductorSides" | "crankingFeeds">;

/** By zone with a battery's positive terminal: the index of its bank. */
function bankByZone(
  { network, sectionOf }: NetworkGraph,
  { zoneAt }: ProtectedZones,
  banks: Wired["banks"],
): ReadonlyMap<number, number> {
  return new Map(
    banks.flatMap(({ batteries }, bank) =>
      batteries.flatMap((index) => {
        const part = network.parts[index];
        return part?.kind === "battery"
          ? [[zoneAt[sectionOf[part.terminals.positive]!]!, bank] as const]
          : [];
      }),
    ),
  );
}

/** By zone: the devices through which a bank feeds it from another zone. */
function enteringDevices(
  wiring: NetworkGraph,
  zones: ProtectedZones,
  banks: NetworkGraph["sources"],
): ReadonlyMap<number, readonly ProtectiveDevice[]> {
  const entering = new Map<number, ProtectiveDevice[]>();
  const { a, b } = zones.graph;
  feedingOf(wiring, zones, banks).forEach(({ fromTerminal, fromConductor }, index) => {
    const device = wiring.network.devices[index]!;
    if (a[index] === b[index]) return;
    for (const zone of [...(fromTerminal ? [b[index]!] : []), ...(fromConductor ? [a[index]!] : [])]) {
      const there = entering.get(zone);
      if (there) there.push(device);
      else entering.set(zone, [device]);
    }
  });
  return entering;
}

/** The conductors of a zone that are the only link to something, with all devices that feed the zone on the other side. */
function behindAll(
  wiring: NetworkGraph,
  { conductorsIn, zoneAt }: ProtectedZones,
  zone: number,
  devices: readonly ProtectiveDevice[],
): readonly number[] {
  const { network, branches, sectionOf } = wiring;
  const numbers = new Map<number, number>();
  const nodeOf = (section: number) => {
    const known = numbers.get(section) ?? numbers.size;
    numbers.set(section, known);
    return known;
  };
  // A conductor with a device is the way into the zone, or the way out of it.
  const inside = conductorsIn[zone]!.filter(
    (index) => !network.conductors[index]!.near && !network.conductors[index]!.far,
  );
  const ends = (end: "from" | "to") =>
    Int32Array.from(inside, (index) => nodeOf(sectionOf[network.conductors[index]![end]]!));
  const [a, b] = [ends("from"), ends("to")];
  const starts = devices.map((device) => {
    const { from, to } = branches[branchOf(wiring, device).branch]!;
    return nodeOf([from, to].map((end) => sectionOf[end]!).find((section) => zoneAt[section] === zone) ?? -1);
  });
  const graph = graphOf(numbers.size, a, b);
  const { order, last, behind } = spanningForest(graph, starts.slice(0, 1), () => true);
  const startOrders = Int32Array.from(starts, (start) => order[start]!).sort();
  return inside.filter((_, edge) => {
    const child = behind[edge]!;
    return child !== -1 && !holdsOneOf(startOrders, order[child]!, last[child]!);
  });
}
