import type { BatteryPart, Network, ProtectiveDevice } from "../model/network.ts";
import { isDevice } from "../model/part-roles.ts";
import type { TestedBehind } from "../model/run.ts";
import { workedOutOnce } from "../model/worked-out-once.ts";
import { greatestVoltage } from "./charging-voltages.ts";
import { interruptsA } from "./choose-device.ts";
import { withstandOf } from "./fault-withstand.ts";
import { groupedBy } from "./grouped-by.ts";
import { sourceForMaxFault } from "./network/faults/fault-network.ts";
import type { NetworkTopology } from "./network/topology/network-topology.ts";
import type { DeviceFault, NetworkResult } from "./network-result.ts";
import { earliestOpening } from "./opening-time.ts";

/**
 * Whether every device upstream protects a device in a short that is above its own interrupting rating: as a combination that
 * the makers tested, or because it lets through no more than the device and its conductor withstand.
 *
 * IEC 60364-4-43, 434.5.1. Only what the builder states counts; the upstream device itself must interrupt the short.
 *
 * @param tested The combination stated for the device, or for the panel that it is in.
 */
export function isBackedUp(
  { network, result }: { readonly network: Network; readonly result: NetworkResult },
  device: ProtectiveDevice,
  shortA: number,
  tested: TestedBehind | undefined = device.testedBehind,
): boolean {
  const upstreamOf = (one: ProtectiveDevice) =>
    (pairsByDownstream(result.topology).get(one.index) ?? []).flatMap(
      ({ upstream }) => network.devices[upstream] ?? [],
    );
  const interrupts = (above: ProtectiveDevice) =>
    (interruptsA(above, greatestVoltage(network, above)) ?? 0) >= shortA;
  const isCombined = (above: ProtectiveDevice) =>
    tested !== undefined &&
    above.family === tested.family &&
    above.ratingA <= tested.ratingA &&
    shortA <= tested.interruptingA &&
    interrupts(above);
  // A device between the two of a combination takes nothing from it; each of those upstream of it may be the one that was tested.
  const known = new Map<number, boolean>();
  const isBehindCombined = (one: ProtectiveDevice): boolean => {
    const before = known.get(one.index);
    if (before !== undefined) return before;
    // Two devices upstream of each other, in a ring, have none before them.
    known.set(one.index, false);
    const upstream = upstreamOf(one);
    const is = upstream.length > 0 && upstream.every((above) => isCombined(above) || isBehindCombined(above));
    known.set(one.index, is);
    return is;
  };
  const upstream = upstreamOf(device);
  const letsLittleThrough = (above: ProtectiveDevice) =>
    interrupts(above) &&
    (above.letThroughA2s ?? Number.POSITIVE_INFINITY) <= withstands(network, device, shortA);
  return (
    upstream.length > 0 &&
    upstream.every(
      (above) =>
        isCombined(above) || letsLittleThrough(above) || (tested !== undefined && isBehindCombined(above)),
    )
  );
}

/** By device: its pairs with the devices directly upstream. */
const pairsByDownstream = workedOutOnce(({ devicePairs }: NetworkTopology) =>
  groupedBy(devicePairs, ({ downstream }) => downstream),
);

/** The least I²t that a device and its conductor withstand, A²·s: stated, else that at which the device itself begins to open. */
function withstands({ conductors }: Network, device: ProtectiveDevice, shortA: number): number {
  const { place, withstandA2s } = device;
  const opening = earliestOpening(device, shortA);
  const ownA2s = withstandA2s ?? (opening ? opening.notBeforeS * shortA ** 2 : 0);
  const conductor = place.at === "conductor" ? conductors[place.conductor] : undefined;
  return conductor ? Math.min(ownA2s, withstandOf(conductor.run).withstandA2s) : ownA2s;
}

/**
 * Whether a device carries the short of several batteries together, each with a device of its own upstream that is rated no higher and has
 * only a part of the short, up to two thirds (our choice): those open later, and none of them can help it.
 */
export function isMainOfSeveral(
  network: Network,
  { device, sources }: DeviceFault,
  upstream: readonly number[],
): boolean {
  const { ratingA } = network.devices[device]!;
  if (upstream.some((index) => network.devices[index]!.ratingA > ratingA)) return false;
  // Of several alike, the pairs hold one.
  const kinds = new Set(upstream.map((index) => kindOf(network.devices[index]!)));
  const own = new Set([...kinds].flatMap((kind) => batteriesByKind(network).get(kind) ?? []));
  const shortsA = sources.flatMap((index) => {
    const part = network.parts[index];
    return part?.kind === "battery" && own.has(index) ? [greatestShortOf(part)] : [];
  });
  const mostA = (2 / 3) * shortsA.reduce((sum, currentA) => sum + currentA, 0);
  return shortsA.length > 1 && shortsA.every((currentA) => currentA < mostA);
}

function kindOf({ ratingA, family }: ProtectiveDevice): string {
  return `${ratingA} ${family}`;
}

/** By rating and family of a device: the batteries that have one at a terminal. */
const batteriesByKind = workedOutOnce((network: Network) => {
  const batteries = new Map<string, number[]>();
  for (const device of network.devices) {
    const battery = batteryAt(network, device);
    if (battery === undefined) continue;
    const there = batteries.get(kindOf(device));
    if (there) there.push(battery);
    else batteries.set(kindOf(device), [battery]);
  }
  return batteries;
});

function greatestShortOf(battery: BatteryPart): number {
  const { voltageV, ohm } = sourceForMaxFault(battery);
  return voltageV / ohm;
}

/** The battery at whose terminal a device is: in a conductor that ends there, or mounted on it. */
function batteryAt({ parts, terminals, conductors }: Network, { place }: ProtectiveDevice) {
  const part = place.at === "part" ? parts[place.part] : undefined;
  const conductor = place.at === "conductor" ? conductors[place.conductor] : undefined;
  const ends = [conductor?.from, conductor?.to, part && isDevice(part) ? part.mountedOn : undefined];
  const at = ends.map((end) => parts[terminals[end ?? -1]?.part ?? -1]);
  return at.find((one) => one?.kind === "battery")?.index;
}
