import type { ConductorDevice, Network, Part } from "../../../model/network.ts";
import { workedOutOnce } from "../../../model/worked-out-once.ts";
import { groupedBy } from "../../grouped-by.ts";
import { type NetworkGraph, networkGraph } from "../topology/network-graph.ts";
import type { UnprotectedPath } from "../topology/network-topology.ts";
import { edgesAt } from "../topology/spanning-forest.ts";
import { feedingOf, protectedZones } from "./protected-zones.ts";

/**
 * Whether a conductor that a source reaches at one end has its device at the other, with a source there too: two sources
 * need two devices, and one of them is there.
 */
export function isProtectedAtOtherEnd(network: Network, { conductor, ends }: UnprotectedPath): boolean {
  const { near, far } = network.conductors[conductor] ?? {};
  const other = near ?? far;
  return !!other && !ends.includes(other.place.end) && isFedFromTerminal(network, other.index);
}

/**
 * The source that a device at the end of a conductor is at, if nothing else feeds it from there and the source gives no more than
 * the conductor may carry: such a device protects against nothing, because the source limits itself. Undefined in any other case.
 */
export function selfLimitingSourceAt(
  network: Network,
  { place }: ConductorDevice,
  ampacityA: number,
): Part | undefined {
  const wiring = networkGraph(network);
  const { from, to } = network.conductors[place.conductor]!;
  const section = wiring.sectionOf[place.end === "near" ? from : to]!;
  if (edgesAt(wiring.sections, section).length > 1) return undefined;
  const [only, another] = sourcesBySection(wiring).get(section) ?? [];
  return only && !another && only.limitA <= ampacityA ? network.parts[only.part] : undefined;
}

const sourcesBySection = workedOutOnce(({ sources, sectionOf }: NetworkGraph) =>
  groupedBy(sources, ({ positive }) => sectionOf[positive]),
);

/**
 * Whether batteries reach a device from either side: a fuse of one battery beside others, or one in a ring. It carries only a
 * share of a short behind it. That share grows as soon as another device opens.
 */
export function sharesShorts(network: Network, device: number): boolean {
  return fedOf(network).shared.has(device);
}

/**
 * Whether any source feeds a device from the terminal at its end of the conductor, and not only through the conductor:
 * without such a source it protects against no current from there.
 */
function isFedFromTerminal(network: Network, device: number): boolean {
  return fedOf(network).fromTerminal.has(device);
}

interface Fed {
  /** Device indices. */
  readonly fromTerminal: ReadonlySet<number>;
  readonly shared: ReadonlySet<number>;
}

const fedOf: (network: Network) => Fed = workedOutOnce(workOut);

function workOut(network: Network): Fed {
  const wiring = networkGraph(network);
  const zones = protectedZones(wiring);
  const byAny = feedingOf(wiring, zones, wiring.sources);
  const batteries = wiring.sources.filter(({ part }) => network.parts[part]?.kind === "battery");
  const byBattery = feedingOf(wiring, zones, batteries);
  const devicesWhere = (test: (device: number) => boolean | undefined) =>
    new Set([...network.devices.keys()].filter(test));
  return {
    fromTerminal: devicesWhere((device) => byAny[device]?.fromTerminal),
    shared: devicesWhere((device) => byBattery[device]?.fromTerminal && byBattery[device].fromConductor),
  };
}
