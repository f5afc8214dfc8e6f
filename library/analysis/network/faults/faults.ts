import { disjointSets } from "../../../model/disjoint-sets.ts";
import type { ConductorEnd, Network } from "../../../model/network.ts";
import { asClosed } from "../../../model/parts/define-part.ts";
import { isJudgedInEveryPosition, judgedPositions, stateIn } from "../../../model/switch-positions.ts";
import type { ConductorFault, DeviceFault, FaultResult, ReturnFault } from "../../network-result.ts";
import { branchOf, graphInState, type NetworkGraph, networkGraph } from "../topology/network-graph.ts";
import type { NetworkTopology } from "../topology/network-topology.ts";
import { netPolarities } from "../topology/polarity.ts";
import { nearestSources } from "../topology/source-paths.ts";
import { hasUnknownLength } from "../unknown-shares.ts";
import { type FaultNetwork, faultNetwork, faultNetworkAtLongest } from "./fault-network.ts";
import { type Arriving, type MaxFaults, maxFaults } from "./max-fault.ts";
import { type MinFault, type MinFaults, minFaults, returnAt } from "./min-fault.ts";
import { feedingOf, type ProtectedZones, protectedZones } from "./protected-zones.ts";

/**
 * The current of a dead short, at each device and at each end of each conductor, in the network as built: every
 * switch is closed, every source is on; the minimum is the least over the positions of relays and selector switches too.
 * Studs, and fuses and contacts without a figure for it, have no resistance here.
 *
 * A device counts as at its end of the conductor at any distance from there: the wire up to it would only reduce the
 * maximum fault.
 */
export function faultsOf(network: Network, topology: NetworkTopology): FaultResult {
  const wiring = networkGraph(network);
  const nets = netPolarities(wiring);
  const resistances = faultNetwork(wiring);
  const zones = protectedZones(wiring);
  const isPositive = wiring.branches.map(({ from }) => {
    const side = nets[wiring.componentOf[from]!];
    return side === "positive" || side === "middle";
  });
  const positive = maxFaults(wiring, resistances, nets, "positive");
  // A fuse in a negative conductor: the same calculation with the poles exchanged.
  const negative = network.devices.some((device) => !isPositive[branchOf(wiring, device).branch])
    ? maxFaults(wiring, resistances, nets, "negative")
    : undefined;
  const fedByBattery = fedByBatteries(wiring);
  const fedByAny = feedingOf(wiring, zones, wiring.sources);
  const least = leastByLength(wiring, topology);

  const devices: DeviceFault[] = [];
  /** By device: its index in the result; −1 if it is left out. */
  const resultIndex = network.devices.map((device, index) => {
    const { branch, end } = branchOf(wiring, device);
    const onPositive = isPositive[branch]!;
    const greatest = greatestThrough((onPositive ? positive : negative)?.at(branch, end));
    if (!greatest) return -1;
    const fed = onPositive ? fedByBattery[index]! : nowhere;
    const behind = behindOf(zones, index, fed.fromTerminal || fed.fromConductor ? fed : fedByAny[index]!);
    return (
      devices.push({
        device: index,
        ...greatest,
        ...least.devices[index]!,
        behind: onPositive ? behind : [],
      }) - 1
    );
  });
  const protecting = zones.conductorsIn.map((): number[] => []);
  network.devices.forEach((_, device) => {
    if (resultIndex[device] === -1) return;
    const { fromTerminal, fromConductor } = fedByAny[device]!;
    if (fromTerminal) protecting[zones.graph.b[device]!]!.push(resultIndex[device]!);
    if (fromConductor) protecting[zones.graph.a[device]!]!.push(resultIndex[device]!);
  });
  const conductors = network.conductors.map(({ from, to }, conductor): ConductorFault => {
    const greatest = isPositive[conductor] && positive ? greatestIn(conductor, positive) : undefined;
    if (!greatest) return { greatestA: undefined, protectedBy: [], estimated: false };
    const atEnds = [from, to].flatMap((terminal) => least.terminals[terminal] ?? []);
    return {
      protectedBy: protecting[zones.zoneOf[conductor]!]!,
      ...greatest,
      ...(atEnds.length > 0 && { leastA: Math.min(...atEnds) }),
      ...([from, to].some(least.isAtMost) && { leastIsAtMost: true }),
    };
  });
  const returns = returnShorts(wiring).flatMap(({ conductor, positive: terminal }): ReturnFault[] => {
    const greatest = positive?.through(terminal, resistances.coldOhm[conductor]!);
    const leastA = least.terminals[terminal];
    if (!greatest || leastA === undefined || leastA > greatest.currentA) return [];
    const protectedBy = protecting[zones.zoneAt[wiring.sectionOf[terminal]!]!]!;
    return [
      {
        conductor,
        part: network.terminals[terminal]!.part,
        protectedBy,
        ...{ greatestA: greatest.currentA, leastA, estimated: greatest.estimated },
      },
    ];
  });
  return { devices, conductors, returns };
}

/**
 * The conductors on the negative side, each with a positive terminal: a short at the part with that terminal comes back through
 * the conductor, which is the first on the path to the nearest bank. In a ring it carries a part of the current alone.
 */
function returnShorts(wiring: NetworkGraph): readonly { conductor: number; positive: number }[] {
  const { network, pointOf } = wiring;
  const batteries = wiring.sources.filter(({ part }) => network.parts[part]!.kind === "battery");
  const { cameBy, start } = nearestSources(wiring, batteries, "negative");
  const seen = new Set<string>();
  return network.terminals.flatMap(({ part }, positive) => {
    const back = network.parts[part]!.kind === "battery" ? undefined : returnAt(network, positive);
    if (back === undefined || start[pointOf[back]!] === -1) return [];
    const conductor = cameBy[pointOf[back]!]!;
    // Terminals of one piece of metal, such as feed and branches of a panel, are one.
    const key = `${conductor} ${pointOf[positive]}`;
    if (conductor < 0 || conductor >= network.conductors.length || seen.has(key)) return [];
    seen.add(key);
    return [{ conductor, positive }];
  });
}

/** The least with every unknown length as the shortest, and which of them a longer one would lower. */
function leastByLength(
  wiring: NetworkGraph,
  topology: NetworkTopology,
): LeastFaults & { isAtMost(terminal: number): boolean } {
  const least = leastInEveryPosition(wiring, topology, faultNetwork);
  if (!hasUnknownLength(wiring.network)) return { isAtMost: () => false, ...least };
  const atLongest = leastInEveryPosition(wiring, topology, faultNetworkAtLongest);
  const isLess = (one: number | undefined, other: number | undefined) =>
    one !== undefined && other !== undefined && one < other * lessThanRounding;
  return {
    terminals: least.terminals,
    devices: least.devices.map((fault, device) => {
      const longest = atLongest.devices[device]?.least;
      return fault.least && isLess(longest?.currentA, fault.least.currentA)
        ? { ...fault, least: { ...fault.least, isAtMost: true } }
        : fault;
    }),
    isAtMost: (terminal) => isLess(atLongest.terminals[terminal], least.terminals[terminal]),
  };
}

/** The same current of two solutions differs in its last digits. */
const lessThanRounding = 1 - 1e-9;

/**
 * By device: the least over all positions of relays and selector switches. Two banks side by side give more than either alone.
 */
function leastInEveryPosition(
  closed: NetworkGraph,
  topology: NetworkTopology,
  resistancesOf: typeof faultNetwork,
): LeastFaults {
  const { network } = closed;
  const further = [...judgedPositions(network).values()].map((scenario) =>
    graphInState(network, (part) => (isJudgedInEveryPosition(part) ? stateIn(scenario, part) : asClosed)),
  );
  return further
    .map((wiring) => leastIn(wiring, topology, resistancesOf))
    .reduce(
      (least, other) => ({
        devices: least.devices.map((fault, device) => lesserFault(fault, other.devices[device]!)),
        terminals: least.terminals.map((one, terminal) => lesser(one, other.terminals[terminal])),
      }),
      leastIn(closed, topology, resistancesOf),
    );
}

interface LeastFaults {
  /** By device. */
  readonly devices: readonly LeastFault[];
  /** By terminal: the current of a short there, A; undefined if no battery reaches it. */
  readonly terminals: readonly (number | undefined)[];
}

function lesser(one: number | undefined, other: number | undefined): number | undefined {
  return one === undefined || other === undefined ? (one ?? other) : Math.min(one, other);
}

type LeastFault = Pick<DeviceFault, "least" | "leastNotWorkedOut">;

function lesserFault(one: LeastFault, other: LeastFault): LeastFault {
  if (one.leastNotWorkedOut || !other.least) return one;
  if (other.leastNotWorkedOut || !one.least) return other;
  return other.least.currentA < one.least.currentA ? other : one;
}

function leastIn(
  wiring: NetworkGraph,
  { banks }: NetworkTopology,
  resistancesOf: typeof faultNetwork,
): LeastFaults {
  const resistances = resistancesOf(wiring);
  const least = minFaults(wiring, resistances, netPolarities(wiring), banks);
  const { devices, terminals } = wiring.network;
  if (!least) return { devices: devices.map(() => ({ least: undefined })), terminals: [] };
  const nodeOf = joinedByDevices(wiring, resistances);
  return {
    devices: leastThroughDevices(wiring, nodeOf, protectedZones(wiring), fedByBatteries(wiring), least),
    terminals: terminals.map((_, terminal) => least.at(terminal)?.currentA),
  };
}

function fedByBatteries(wiring: NetworkGraph): readonly Fed[] {
  const { parts } = wiring.network;
  const batteries = wiring.sources.filter(({ part }) => parts[part]!.kind === "battery");
  return feedingOf(wiring, protectedZones(wiring), batteries);
}

const nowhere = { fromTerminal: false, fromConductor: false };

/** The greater of a short behind it in its branch, and one behind it on its terminal. */
function greatestThrough(fault: ReturnType<MaxFaults["at"]>) {
  if (!fault) return undefined;
  const arriving = greater(fault.fromElsewhere, fault.throughBranch);
  if (arriving.currentA === 0) return undefined;
  return { greatestA: arriving.currentA, sources: arriving.sources(), estimated: arriving.isEstimated() };
}

/** For a short at either end of it, fed from beyond that end. */
function greatestIn(conductor: number, faults: MaxFaults) {
  const near = faults.at(conductor, "near")?.fromElsewhere;
  const far = faults.at(conductor, "far")?.fromElsewhere;
  if (!near || !far) return undefined;
  const arriving = greater(near, far);
  if (arriving.currentA === 0) return undefined;
  return { greatestA: arriving.currentA, estimated: arriving.isEstimated() };
}

function greater(one: Arriving, other: Arriving): Arriving {
  return other.currentA > one.currentA ? other : one;
}

type Fed = ReturnType<typeof feedingOf>[number];

function behindOf({ graph, conductorsIn }: ProtectedZones, device: number, fed: Fed): readonly number[] {
  const beyond = fed.fromTerminal ? conductorsIn[graph.b[device]!]! : [];
  const before = fed.fromConductor ? conductorsIn[graph.a[device]!]! : [];
  if (before.length === 0 || graph.a[device] === graph.b[device]) return beyond;
  return beyond.length === 0 ? before : [...beyond, ...before].sort((a, b) => a - b);
}

/** By terminal: its node, except that both sides of a device that is a part are one: a short at either is right at it. */
function joinedByDevices({ branches, network }: NetworkGraph, { nodes, nodeOf }: FaultNetwork): Int32Array {
  const joined = disjointSets(nodes);
  for (const { from, to } of branches.slice(network.conductors.length)) {
    joined.union(nodeOf[from]!, nodeOf[to]!);
  }
  return nodeOf.map(joined.find);
}

/**
 * By device: the minimum current through it for shorts at the ends of the conductors behind it; undefined if no battery feeds
 * it, or it has no conductors behind. If batteries feed a device from one side alone, it carries the whole short; else its
 * share is computed.
 */
function leastThroughDevices(
  wiring: NetworkGraph,
  nodeOf: Int32Array,
  { graph, conductorsIn }: ProtectedZones,
  fed: readonly Fed[],
  faults: MinFaults,
): readonly LeastFault[] {
  const { devices } = wiring.network;
  const least = devices.map((): DeviceFault["least"] => undefined);
  const notWorkedOut = new Set<number>();
  const terminalOf = (branch: number, end: ConductorEnd) =>
    wiring.branches[branch]![end === "near" ? "from" : "to"];
  const entering = conductorsIn.map((): Entering[] => []);
  devices.forEach((placed, device) => {
    const { branch, end } = branchOf(wiring, placed);
    const { fromTerminal, fromConductor } = fed[device]!;
    const towardsFar = end === "near" ? 1 : -1;
    const entry = {
      device,
      branch,
      node: nodeOf[terminalOf(branch, end)]!,
      takesAll: fromTerminal !== fromConductor,
    };
    if (fromTerminal) entering[graph.b[device]!]!.push({ towardsFar, ...entry });
    if (fromConductor) entering[graph.a[device]!]!.push({ towardsFar: -towardsFar, ...entry });
  });
  conductorsIn.forEach((members, zone) => {
    const entries = entering[zone]!;
    if (entries.length === 0) return;
    const shorts = shortsIn(members);
    if (shorts.length === 0) return;
    const sharing = entries.filter(({ takesAll }) => !takesAll);
    const leastOfAll = leastAtTwoNodes(shorts);
    for (const { device, branch, node, takesAll, towardsFar } of entries) {
      if (!takesAll && sharing.length > mostSharing) {
        notWorkedOut.add(device);
        continue;
      }
      const through = takesAll ? undefined : faults.through(branch);
      for (const short of takesAll ? leastOfAll : shorts) {
        // At the device's own terminal the current is at its maximum. Or it comes round a ring and need not pass this
        // device: then
        // another device is there too, and opens.
        if (short.node === node) continue;
        const currentA = Math.max(0, through ? towardsFar * through(short.fault) : short.fault.currentA);
        const leastA = least[device]?.currentA ?? Number.POSITIVE_INFINITY;
        if (currentA < leastA) least[device] = { currentA, conductor: short.conductor };
      }
    }
  });

  /** At both ends of each conductor; any number of conductors that end at one bus bar make one short. */
  function shortsIn(members: readonly number[]) {
    const byTerminal = new Map<number, Short | undefined>();
    for (const conductor of members) {
      for (const end of ["near", "far"] as const) {
        const terminal = terminalOf(conductor, end);
        if (byTerminal.has(terminal)) continue;
        const fault = faults.at(terminal);
        byTerminal.set(terminal, fault && { conductor, node: nodeOf[terminal]!, fault });
      }
    }
    return [...byTerminal.values()].filter((short) => short !== undefined);
  }
  return least.map((found, device) =>
    notWorkedOut.has(device) ? { least: undefined, leastNotWorkedOut: true } : { least: found },
  );
}

/**
 * Maximum number of devices sharing the shorts of one zone for which shares are computed: each pair of device and short takes
 * a step. No rule judges by a share, and no bank has as many batteries in parallel.
 */
const mostSharing = 64;

/** The minimum short, and the minimum at any other node: enough to exclude any one node. */
function leastAtTwoNodes(shorts: readonly Short[]): readonly Short[] {
  const lesser = (one: Short | undefined, other: Short) =>
    one === undefined || other.fault.currentA < one.fault.currentA ? other : one;
  let least: Short | undefined;
  for (const short of shorts) least = lesser(least, short);
  let second: Short | undefined;
  for (const short of shorts) if (short.node !== least?.node) second = lesser(second, short);
  return [least, second].filter((short) => short !== undefined);
}

interface Short {
  /** The first conductor that ends there. */
  readonly conductor: number;
  readonly node: number;
  readonly fault: MinFault;
}

/** A device through which batteries feed a zone. */
interface Entering {
  readonly device: number;
  readonly branch: number;
  /** The node of its terminal. */
  readonly node: number;
  /** It carries the whole current of a short in the zone. */
  readonly takesAll: boolean;
  /** 1 if the entering current flows from the near to the far end of its branch, −1 if it flows back. */
  readonly towardsFar: number;
}
