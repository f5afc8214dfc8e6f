import { disjointSets } from "../../../model/disjoint-sets.ts";
import type { ConductorEnd, Network, Part, ProtectiveDevice } from "../../../model/network.ts";
import { isDevice } from "../../../model/part-roles.ts";
import type { PartState } from "../../../model/parts/define-part.ts";
import {
  type InternalConnection,
  internalConnectionsOf,
  type Source,
  sourcesOf,
} from "./internal-connections.ts";
import { across, edgesAt, type Graph, graphOf } from "./spanning-forest.ts";

/**
 * A network as a graph, independent of scenarios: conductors, and the connections inside parts that pass current on. Every
 * disconnect counts as closed and every fuse as whole. Loads and sources connect no terminals; a charger that is not isolated
 * connects its two negatives.
 */
export interface NetworkGraph {
  readonly network: Network;
  readonly sources: readonly Source[];
  readonly joins: readonly InternalConnection[];
  /** Nodes are terminals. Edges are the conductors with their own index, then `joins` in their order. */
  readonly terminals: Graph;
  /** By edge of {@link terminals}. */
  readonly edges: readonly Edge[];
  /** By terminal: its component. Components are numbered from 0, in the order of their first terminals. */
  readonly componentOf: Int32Array;
  readonly components: number;
  /** By terminal: its point. Terminals connected inside a part are one point, at any resistance between them. */
  readonly pointOf: Int32Array;
  /** Nodes are points, edges are the conductors with their own index: the graph for path searches that count conductors. */
  readonly graph: Graph;
  /** By terminal: its section. Sections are points that are cut at the devices between terminals of a part. */
  readonly sectionOf: Int32Array;
  /** Nodes are sections, edges are branches: the graph for searches that ask which devices a current passes. */
  readonly sections: Graph;
  /** The conductors with their own index, then the parts that are a device. */
  readonly branches: readonly Branch[];
  /** The connections inside parts that are no branches. */
  readonly sectionJoins: readonly InternalConnection[];
}

/** One line of a network between two terminals, with the devices in it. */
export interface Branch {
  readonly from: number;
  readonly to: number;
  readonly near: ProtectiveDevice | null;
  readonly far: ProtectiveDevice | null;
  /** Inside a part, Ω; the resistance of a conductor follows from its copper. */
  readonly ohm?: number;
}

/** A conductor, or a connection inside a part. */
export interface Edge {
  /** Index of the conductor, or −1 for a connection inside a part. */
  readonly conductor: number;
  /** Index of the part that it passes through, or −1 for a conductor. */
  readonly part: number;
}

const graphs = new WeakMap<Network, NetworkGraph>();

/** Built once for each network: topology, faults and some rules use it. */
export function networkGraph(network: Network): NetworkGraph {
  const known = graphs.get(network);
  if (known) return known;
  const made = graphInState(network);
  graphs.set(network, made);
  return made;
}

/** Gives a network the graph of one with the same topology, in which only its own parts and conductors are exchanged. */
export function shareGraph(network: Network, alike: Network): void {
  const graph = networkGraph(alike);
  const ofParts = graph.branches.slice(alike.conductors.length);
  const branches = ofParts.length === 0 ? network.conductors : [...network.conductors, ...ofParts];
  graphs.set(network, { ...graph, network, sources: sourcesOf(network), branches });
}

/** The same with the switches in a state, for results that one of their positions makes worse. */
export function graphInState(network: Network, stateOf?: (part: Part) => PartState): NetworkGraph {
  const { conductors, terminals } = network;
  const joins = internalConnectionsOf(network, stateOf);
  const joined = disjointSets(terminals.length);
  for (const { a, b } of joins) joined.union(a, b);
  const points = numbered(terminals.length, joined.find);
  for (const { from, to } of conductors) joined.union(from, to);
  const components = numbered(terminals.length, joined.find);
  const from = Int32Array.from(conductors, (conductor) => conductor.from);
  const to = Int32Array.from(conductors, (conductor) => conductor.to);
  const pointOf = (terminal: number) => points.of[terminal]!;
  const graph = graphOf(points.count, from.map(pointOf), to.map(pointOf));
  return {
    network,
    sources: sourcesOf(network),
    joins,
    terminals: graphOf(
      terminals.length,
      Int32Array.from([...from, ...joins.map(({ a }) => a)]),
      Int32Array.from([...to, ...joins.map(({ b }) => b)]),
    ),
    edges: [
      ...conductors.map((_, conductor) => ({ conductor, part: -1 })),
      ...joins.map(({ a }) => ({ conductor: -1, part: terminals[a]!.part })),
    ],
    componentOf: components.of,
    components: components.count,
    pointOf: points.of,
    graph,
    ...(cutAtDeviceParts(network, joins) ?? {
      ...{ sectionOf: points.of, sections: graph, branches: conductors, sectionJoins: joins },
    }),
  };
}

/** Undefined if no device is a part of its own. */
function cutAtDeviceParts(
  { conductors, devices, parts, terminals }: Network,
  joins: readonly InternalConnection[],
): Pick<NetworkGraph, "sectionOf" | "sections" | "branches" | "sectionJoins"> | undefined {
  const own = devices.flatMap((device): Branch[] => {
    const part = device.place.at === "part" ? parts[device.place.part] : undefined;
    if (!part || !isDevice(part)) return [];
    const { terminals, milliohm } = part;
    return [{ from: terminals.line, to: terminals.load, near: device, far: null, ohm: milliohm / 1_000 }];
  });
  if (own.length === 0) return undefined;
  const joined = disjointSets(terminals.length);
  const cut = new Set(own.map(({ from }) => terminals[from]!.part));
  const sectionJoins = joins.filter(({ a, b }) => {
    const { part } = terminals[a]!;
    return part !== terminals[b]!.part || !cut.has(part);
  });
  for (const { a, b } of sectionJoins) joined.union(a, b);
  const { of, count } = numbered(terminals.length, joined.find);
  const branches: readonly Branch[] = [...conductors, ...own];
  const ends = (end: "from" | "to") => Int32Array.from(branches, (branch) => of[branch[end]]!);
  return { sectionOf: of, sections: graphOf(count, ends("from"), ends("to")), branches, sectionJoins };
}

/** The branch in which a device is, and its end of it. */
export function branchOf(
  { network, branches }: NetworkGraph,
  { index, place }: ProtectiveDevice,
): { readonly branch: number; readonly end: ConductorEnd } {
  if (place.at === "conductor") return { branch: place.conductor, end: place.end };
  // The devices that are parts come last, as their branches do.
  return { branch: branches.length - network.devices.length + index, end: "near" };
}

/** Numbers the sets from 0, in the order of their first elements. */
function numbered(count: number, find: (element: number) => number): { of: Int32Array; count: number } {
  const numberOf = new Int32Array(count).fill(-1);
  const of = new Int32Array(count);
  let sets = 0;
  for (let element = 0; element < count; element++) {
    const set = find(element);
    if (numberOf[set] === -1) numberOf[set] = sets++;
    of[element] = numberOf[set]!;
  }
  return { of, count: sets };
}

/** Indices of the conductors that end at a terminal, ascending; one that both begins and ends there, twice. */
export function conductorsAt({ network, terminals }: NetworkGraph, terminal: number): readonly number[] {
  return [...edgesAt(terminals, terminal)].filter((edge) => edge < network.conductors.length);
}

/** Whether a conductor ends at a terminal, or a device is mounted there. */
export function isJoined({ network, terminals }: NetworkGraph, terminal: number): boolean {
  const { part } = network.terminals[terminal]!;
  return edgesAt(terminals, terminal).some(
    (edge) =>
      edge < network.conductors.length || network.terminals[across(terminals, edge, terminal)]!.part !== part,
  );
}

/** How a walk reached a terminal: from which one, and over which edge. */
export interface Step {
  readonly from: number;
  readonly edge: Edge;
}

/**
 * Every terminal that is reached from `starts`, nearest first; the starts themselves have no step. Takes no more time than the
 * reached terminals need, however large the network is.
 *
 * @param isOpen Whether the walk takes an edge towards this terminal.
 */
export function reachedFrom(
  { terminals, edges }: NetworkGraph,
  starts: readonly number[],
  isOpen: (edge: Edge, to: number) => boolean = () => true,
): ReadonlyMap<number, Step | undefined> {
  const reached = new Map<number, Step | undefined>(starts.map((start) => [start, undefined]));
  // A map iterates in insertion order, also over entries added during the iteration.
  for (const [from] of reached) {
    for (let at = terminals.first[from]!; at < terminals.first[from + 1]!; at++) {
      const index = terminals.edges[at]!;
      const edge = edges[index]!;
      const to = across(terminals, index, from);
      if (!reached.has(to) && isOpen(edge, to)) reached.set(to, { from, edge });
    }
  }
  return reached;
}
