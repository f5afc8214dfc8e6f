import type { Network } from "../../../model/network.ts";
import { workedOutOnce } from "../../worked-out-once.ts";
import { networkGraph } from "../topology/network-graph.ts";
import type { DevicePlace, UnprotectedPath } from "../topology/network-topology.ts";
import { feedingOf, protectedZones } from "./protected-zones.ts";

/**
 * Whether a conductor that a source reaches at one end has its device at the other, with a source there too: two sources
 * need two devices, and one of them is there.
 */
export function isProtectedAtOtherEnd(network: Network, { conductor, ends }: UnprotectedPath): boolean {
  const { near, far } = network.conductors[conductor] ?? {};
  const other = near ? "near" : far ? "far" : undefined;
  return (
    other !== undefined && !ends.includes(other) && isFedFromTerminal(network, { conductor, end: other })
  );
}

/**
 * Whether batteries reach a device from either side: a fuse of one battery beside others, or one in a ring. It carries only a
 * share of a short behind it. That share grows as soon as another device opens.
 */
export function sharesShorts(network: Network, place: DevicePlace): boolean {
  return fedOf(network).shared.has(keyOf(place));
}

/**
 * Whether any source feeds a device from the terminal at its end of the conductor, and not only through the conductor:
 * without such a source it protects against no current from there.
 */
function isFedFromTerminal(network: Network, place: DevicePlace): boolean {
  return fedOf(network).fromTerminal.has(keyOf(place));
}

interface Fed {
  readonly fromTerminal: ReadonlySet<string>;
  readonly shared: ReadonlySet<string>;
}

const fedOf: (network: Network) => Fed = workedOutOnce(workOut);

function workOut(network: Network): Fed {
  const wiring = networkGraph(network);
  const zones = protectedZones(wiring);
  const byAny = feedingOf(wiring, zones, wiring.sources);
  const batteries = wiring.sources.filter(({ part }) => network.parts[part]?.kind === "battery");
  const byBattery = feedingOf(wiring, zones, batteries);
  const keysWhere = (test: (device: number) => boolean | undefined) =>
    new Set(zones.devices.filter((_, device) => test(device)).map(keyOf));
  return {
    fromTerminal: keysWhere((device) => byAny[device]?.fromTerminal),
    shared: keysWhere((device) => byBattery[device]?.fromTerminal && byBattery[device].fromConductor),
  };
}

function keyOf({ conductor, end }: DevicePlace): string {
  return `${conductor} ${end}`;
}
