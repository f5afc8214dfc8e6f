import { disjointSets } from "../../model/disjoint-sets.ts";
import { internalConnections } from "../../model/internal-connections.ts";
import type { BatteryPart, Network, Part, Scenario } from "../../model/network.ts";
import { isSwitch, positionsKey, stateIn, switchesOf } from "../../model/switch-positions.ts";
import { workedOutOnce } from "../../model/worked-out-once.ts";
import type { SolvedScenario, SupplyPath } from "../network-result.ts";
import { estimatesOf } from "./estimates.ts";
import { type NetworkGraph, networkGraph } from "./topology/network-graph.ts";
import type { Bank, NetworkTopology } from "./topology/network-topology.ts";
import { type Port, portsOf } from "./topology/ports.ts";
import { across } from "./topology/spanning-forest.ts";
import { unknownSharesOf } from "./unknown-shares.ts";

/**
 * For every load, inverter and charger input that a bank feeds: the voltage drop from the bank's terminals to the device's, both
 * polarities together, in the worst scenario with the device on.
 *
 *     U_lost = (V_bank+ − V_bank−) − (V_device+ − V_device−)
 *
 * The bank is the one from which both of the device's terminals are reached over conductors and parts that pass current on;
 * of several the one with the fewest conductors on the path to the positive terminal.
 */
export function supplyPathsOf(
  network: Network,
  topology: NetworkTopology,
  solved: readonly SolvedScenario[],
): readonly SupplyPath[] {
  const { banks } = topology;
  const devices = network.parts.flatMap((part) => drawingPoles(part));
  if (banks.length === 0 || devices.length === 0) return [];
  const ownerOf = new Map<number, number>();
  const worst: (FoundPath | undefined)[] = devices.map(() => undefined);
  const known = walksByState(topology);
  for (const result of solved) {
    const scenario = network.scenarios[result.scenario]!;
    const walks = walksFor(network, banks, scenario, known);
    devices.forEach((device, index) => {
      if (!scenario.on[device.part.index]) return;
      const ends = nearestBank(walks, device);
      if (!ends) return;
      const { terminalV } = result;
      const arrivingV = terminalV[device.positive]! - terminalV[device.negative]!;
      const dropV = terminalV[ends.positive]! - terminalV[ends.negative]! - arrivingV;
      const known = worst[index];
      if (Number.isNaN(dropV) || (known && dropV <= known.dropV)) return;
      worst[index] = { device, ends, walks, result, dropV, arrivingV };
    });
  }
  for (const part of network.parts) {
    if (part.kind === "battery") ownerOf.set(part.terminals.positive, part.index);
  }
  return worst.flatMap((found) => (found ? [wayOf(network, found, ownerOf)] : []));
}

interface FoundPath {
  readonly device: Port;
  readonly ends: BankEnds;
  readonly walks: Walks;
  readonly result: SolvedScenario;
  readonly dropV: number;
  readonly arrivingV: number;
}

/** The terminals of a bank between which a device is connected. */
interface BankEnds {
  readonly bank: number;
  readonly positive: number;
  readonly negative: number;
}

function drawingPoles(part: Part): readonly Port[] {
  // A solar controller draws from an array, not from a bank.
  if (part.kind === "solarController") return [];
  return portsOf(part).filter(({ does }) => does === "draws");
}

function wayOf(network: Network, found: FoundPath, ownerOf: ReadonlyMap<number, number>): SupplyPath {
  const { device, ends, walks, result, dropV, arrivingV } = found;
  const battery = ownerOf.get(ends.positive)!;
  const nominalV = device.part.kind === "load" ? device.part.systemV : bankNominalV(network, walks, ends);
  const { conductorA, conductorOhm } = result;
  const estimate = estimatesOf(network).ofCurrent(result, device.part.index);
  const legs = [
    ...wayAlong(network, walks.positive[ends.bank]!, device.positive, 1),
    ...wayAlong(network, walks.negative[ends.bank]!, device.negative, -1),
  ].map(({ conductor, sign }) => ({
    conductor,
    dropV: sign * conductorA[conductor]! * conductorOhm[conductor]!,
  }));
  return {
    part: device.part.index,
    battery,
    scenario: result.scenario,
    dropV,
    dropPercent: (100 * dropV) / nominalV,
    ...dropLimitOf(device.part),
    arrivingV,
    withoutLength: withoutLength(network, result.scenario, legs),
    ...(estimate && { estimate }),
    legs,
  };
}

function withoutLength(network: Network, scenario: number, legs: SupplyPath["legs"]): readonly number[] {
  const { decidedBy } = unknownSharesOf(network);
  const found = legs.flatMap(({ conductor }) => decidedBy(network.scenarios[scenario]!, conductor));
  return [...new Set(found)];
}

/** Every part that draws from a bank has one. */
function dropLimitOf(part: Part): Pick<SupplyPath, "dropLimitPercent" | "dropLimitSource"> {
  if (!("dropLimitPercent" in part)) throw new Error(`No drop limit for a ${part.kind}.`);
  const { dropLimitPercent, dropLimitSource } = part;
  return { dropLimitPercent, dropLimitSource };
}

function bankNominalV({ parts }: Network, { banks }: Walks, { bank }: BankEnds): number {
  const string = banks[bank]?.strings[0] ?? [];
  return string.reduce((sum, battery) => sum + (parts[battery] as BatteryPart).systemV, 0);
}

/** From all banks over everything that passes current on, in one state of the disconnects. */
interface Walks {
  readonly banks: readonly Bank[];
  readonly positive: readonly Walk[];
  readonly negative: readonly Walk[];
  /** Banks with a positive terminal connected to the one and a negative terminal connected to the other, ascending. */
  joinedTo(positive: number, negative: number): readonly number[];
}

/** The step that reaches a terminal, which must be connected to the start of the walk. */
type Walk = (terminal: number) => Step | undefined;

interface Step {
  /** The bank's terminal at which the path begins. */
  readonly start: number;
  /** The terminal before, and the conductor from there; −1 inside a part. */
  readonly before: number;
  readonly conductor: number;
  /** Conductors so far. */
  readonly conductors: number;
}

/** Loads do not change them. */
const walksByState = workedOutOnce((_: NetworkTopology) => new Map<string, Walks>());

function walksFor(
  network: Network,
  banks: readonly Bank[],
  scenario: Scenario,
  known: Map<string, Walks>,
): Walks {
  const key = positionsKey(switchesOf(network), scenario);
  let walks = known.get(key);
  if (!walks) {
    const graph = networkGraph(network);
    walks = walksOver(banks, graph, openEdges(graph, scenario));
    known.set(key, walks);
  }
  return walks;
}

/** The connections inside switches that a scenario leaves open, by their edges in the graph of terminals. */
function openEdges({ network, terminals, edges }: NetworkGraph, scenario: Scenario): ReadonlySet<number> {
  const open = new Set<number>();
  edges.forEach(({ part: index }, edge) => {
    const part = network.parts[index];
    const [a, b] = [terminals.a[edge]!, terminals.b[edge]!];
    // A device that is mounted on a switch is no contact of it.
    if (!part || !isSwitch(part) || network.terminals[b]!.part !== index) return;
    const closed = internalConnections(part, stateIn(scenario, part));
    if (!closed.some(({ between: [one, other] }) => one === a && other === b)) open.add(edge);
  });
  return open;
}

function walksOver(banks: readonly Bank[], graph: NetworkGraph, open: ReadonlySet<number>): Walks {
  const { terminals, edges } = graph;
  const pieces = disjointSets(terminals.nodes);
  edges.forEach((_, index) => {
    if (!open.has(index)) pieces.union(terminals.a[index]!, terminals.b[index]!);
  });
  const byPiece = new Map<number, Set<number>>();
  banks.forEach(({ positives }, bank) => {
    for (const piece of positives.map(pieces.find)) {
      byPiece.set(piece, (byPiece.get(piece) ?? new Set()).add(bank));
    }
  });
  const negativePieces = banks.map(({ negatives }) => new Set(negatives.map(pieces.find)));
  return {
    banks,
    positive: banks.map(({ positives }) => walkFrom(positives, graph, open)),
    negative: banks.map(({ negatives }) => walkFrom(negatives, graph, open)),
    joinedTo: (positive, negative) =>
      [...(byPiece.get(pieces.find(positive)) ?? [])].filter((bank) =>
        negativePieces[bank]!.has(pieces.find(negative)),
      ),
  };
}

/**
 * Breadth first by the number of conductors; a step inside a part has no cost and is taken at once. Extends only as far as
 * requested: of many banks that share one return, each is near to its own devices.
 */
function walkFrom(
  starts: readonly number[],
  { terminals, edges }: NetworkGraph,
  open: ReadonlySet<number>,
): Walk {
  const { first } = terminals;
  const walk = new Map<number, Step>();
  let ring: number[] = [];
  for (const start of starts) {
    if (walk.has(start)) continue;
    walk.set(start, { start, before: -1, conductor: -1, conductors: 0 });
    ring.push(start);
  }
  return (terminal) => {
    while (ring.length > 0 && !walk.has(terminal)) goOn();
    return walk.get(terminal);
  };

  function goOn(): void {
    for (let at = 0; at < ring.length; at++) {
      const terminal = ring[at]!;
      const { start, conductors } = walk.get(terminal)!;
      for (let next = first[terminal]!; next < first[terminal + 1]!; next++) {
        const index = terminals.edges[next]!;
        const edge = edges[index]!;
        const to = across(terminals, index, terminal);
        if (edge.conductor >= 0 || walk.has(to) || open.has(index)) continue;
        walk.set(to, { start, before: terminal, conductor: -1, conductors });
        ring.push(to);
      }
    }
    const reached = ring;
    ring = [];
    for (const terminal of reached) {
      const { start, conductors } = walk.get(terminal)!;
      for (let next = first[terminal]!; next < first[terminal + 1]!; next++) {
        const index = terminals.edges[next]!;
        const { conductor } = edges[index]!;
        const to = across(terminals, index, terminal);
        if (conductor < 0 || walk.has(to)) continue;
        walk.set(to, { start, before: terminal, conductor, conductors: conductors + 1 });
        ring.push(to);
      }
    }
  }
}

function nearestBank(walks: Walks, { positive, negative }: Port): BankEnds | undefined {
  let nearest: (BankEnds & { conductors: number }) | undefined;
  for (const bank of walks.joinedTo(positive, negative)) {
    const there = walks.positive[bank]!(positive);
    const back = walks.negative[bank]!(negative);
    if (!there || !back || (nearest && nearest.conductors <= there.conductors)) continue;
    nearest = { bank, positive: there.start, negative: back.start, conductors: there.conductors };
  }
  return nearest;
}

/** Conductors from the bank outwards; `sign` turns the current in each into a drop towards the device. */
type Way = readonly { readonly conductor: number; readonly sign: number }[];

/** All walks of a bank have one polarity. */
function wayAlong(network: Network, walk: Walk, to: number, polarity: 1 | -1): Way {
  const known = knownWays(walk);
  const way = known.get(to) ?? alongWalk(network, walk, to, polarity);
  known.set(to, way);
  return way;
}

/** By terminal. Loads do not change them. */
const knownWays = workedOutOnce((_: Walk) => new Map<number, Way>());

function alongWalk(network: Network, walk: Walk, to: number, polarity: 1 | -1): Way {
  const way: { conductor: number; sign: number }[] = [];
  for (let step = walk(to), terminal = to; step && step.before >= 0; step = walk(terminal)) {
    if (step.conductor >= 0) {
      const outwards = network.conductors[step.conductor]!.to === terminal;
      way.push({ conductor: step.conductor, sign: outwards ? polarity : -polarity });
    }
    terminal = step.before;
  }
  return way.reverse();
}
