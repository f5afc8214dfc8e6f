import type { Network } from "../../../model/network.ts";
import { descriptorOf } from "../../../model/parts/index.ts";
import { groupedBy } from "../../grouped-by.ts";
import type { Source } from "./internal-connections.ts";
import type { NetworkGraph } from "./network-graph.ts";
import type { ConductorPolarity, NetworkTopology } from "./network-topology.ts";
import { across } from "./spanning-forest.ts";

/** Polarity of a net: "middle" is between two batteries of one string, "both" is part of a short. */
export type NetPolarity = "positive" | "negative" | "middle" | "both" | "none";

/**
 * The side of each net. A net with the positive of one source and the negative of another lies between the two in a string.
 * An exception is a net to which a path through sources from negative to positive returns: their voltages then add up round
 * a ring without a load.
 */
export function netPolarities(wiring: NetworkGraph): NetPolarity[] {
  const { sources, componentOf, components } = wiring;
  const lower = Int32Array.from(sources, ({ negative }) => componentOf[negative]!);
  const upper = Int32Array.from(sources, ({ positive }) => componentOf[positive]!);
  const ringOf = ringsOf(components, lower, upper);
  const sides = new Array<NetPolarity>(components).fill("none");
  sources.forEach((_, source) => {
    for (const [net, own, other] of [
      [upper[source]!, "positive", "negative"],
      [lower[source]!, "negative", "positive"],
    ] as const) {
      if (sides[net] === "none") sides[net] = own;
      else if (sides[net] === other) sides[net] = "middle";
    }
  });
  sources.forEach((_, source) => {
    if (ringOf[lower[source]!] !== ringOf[upper[source]!]) return;
    sides[lower[source]!] = "both";
    sides[upper[source]!] = "both";
  });
  return sides;
}

/**
 * The side of each terminal. A net between two batteries is live, so it counts as positive; but the poles of the
 * sources themselves keep their own side there.
 */
export function terminalPolarities(
  { network, sources, componentOf }: NetworkGraph,
  nets: readonly NetPolarity[],
) {
  const sides = network.terminals.map((_, terminal): NetworkTopology["sides"][number] => {
    const side = nets[componentOf[terminal]!]!;
    return side === "middle" ? "positive" : side;
  });
  for (const { negative } of sources) {
    if (nets[componentOf[negative]!] === "middle") sides[negative] = "negative";
  }
  return sides;
}

export function conductorPolarities(wiring: NetworkGraph, nets: readonly NetPolarity[]): ConductorPolarity[] {
  const { network, componentOf } = wiring;
  const inString = stringLinks(wiring, nets);
  return network.conductors.map(({ from, to }, conductor) => {
    const side = nets[componentOf[from]!]!;
    if (side === "both") return "shorted";
    if (side === "none") return "none";
    if (side === "middle") return inString[conductor] ? "series-link" : "positive";
    return isBatteryPole(network, from) && isBatteryPole(network, to) ? "parallel-link" : side;
  });
}

/**
 * Sources whose own poles are connected, each with its shortest ring: from its positive back to its negative over
 * conductors, through other sources from their negative to their positive. Shortest first. A ring that shares a conductor
 * with a shorter one is left out, because one wrong cable shorts every source on its bus.
 */
export function shortsOf(wiring: NetworkGraph, nets: readonly NetPolarity[]): NetworkTopology["shorts"] {
  const { sources, componentOf } = wiring;
  const shorted = sources.filter(({ positive }) => nets[componentOf[positive]!] === "both");
  if (shorted.length === 0) return [];
  const rounds = shorted.flatMap((source) => {
    const round = wayRound(wiring, shorted, source);
    return round ? [{ source: source.part, ...round }] : [];
  });
  const told = new Set<number>();
  return rounds
    .sort((a, b) => a.conductors.length - b.conductors.length || a.source - b.source)
    .filter(({ conductors }) => {
      if (conductors.some((conductor) => told.has(conductor))) return false;
      for (const conductor of conductors) told.add(conductor);
      return true;
    });
}

function wayRound({ graph, pointOf }: NetworkGraph, sources: readonly Source[], start: Source) {
  const goal = pointOf[start.negative]!;
  const others = sources.filter(({ part }) => part !== start.part);
  const upwards = groupedBy(others, ({ negative }) => pointOf[negative]!);
  const cameBy = new Map<number, Step>();
  const queue: number[] = [];
  const reach = (point: number, step: Step) => {
    if (cameBy.has(point)) return;
    cameBy.set(point, step);
    queue.push(point);
  };
  reach(pointOf[start.positive]!, { from: -1 });
  for (let next = 0; next < queue.length && !cameBy.has(goal); next++) {
    const point = queue[next]!;
    for (let at = graph.first[point]!; at < graph.first[point + 1]!; at++) {
      const conductor = graph.edges[at]!;
      reach(across(graph, conductor, point), { from: point, conductor });
    }
    for (const { part, positive } of upwards.get(point) ?? [])
      reach(pointOf[positive]!, { from: point, source: part });
  }
  if (!cameBy.has(goal)) return undefined;
  const conductors: number[] = [];
  const through: number[] = [];
  for (let step = cameBy.get(goal); step && step.from !== -1; step = cameBy.get(step.from)) {
    if (step.conductor !== undefined) conductors.push(step.conductor);
    if (step.source !== undefined) through.push(step.source);
  }
  return { conductors: conductors.reverse(), through: through.reverse() };
}

/** From a point over a conductor, or through a source from its negative to its positive; from −1 at the start. */
interface Step {
  readonly from: number;
  readonly conductor?: number;
  readonly source?: number;
}

/**
 * By net: its ring, if steps lead through sources from negative to positive. Nets outside any ring are rings of their own
 * (strongly connected components; Tarjan, "Depth-first search and linear graph algorithms", 1972).
 */
function ringsOf(nets: number, lower: Int32Array, upper: Int32Array): Int32Array {
  const above = Array.from({ length: nets }, (): number[] => []);
  lower.forEach((net, source) => {
    above[net]!.push(upper[source]!);
  });
  const order = new Int32Array(nets).fill(-1);
  const low = new Int32Array(nets);
  const next = new Int32Array(nets);
  const ring = new Int32Array(nets).fill(-1);
  const open: number[] = [];
  const path: number[] = [];
  let count = 0;
  for (let start = 0; start < nets; start++) {
    if (order[start] !== -1) continue;
    const enter = (net: number) => {
      order[net] = low[net] = count++;
      path.push(net);
      open.push(net);
    };
    enter(start);
    while (path.length > 0) {
      const net = path.at(-1)!;
      const other = above[net]![next[net]!++];
      if (other === undefined) {
        path.pop();
        const parent = path.at(-1);
        if (parent !== undefined) low[parent] = Math.min(low[parent]!, low[net]!);
        if (low[net] !== order[net]) continue;
        for (let member = open.pop(); member !== undefined; member = open.pop()) {
          ring[member] = net;
          if (member === net) break;
        }
      } else if (order[other] === -1) enter(other);
      else if (ring[other] === -1) low[net] = Math.min(low[net]!, order[other]!);
    }
  }
  return ring;
}

/**
 * By conductor: whether it lies between the poles of batteries or solar arrays in a net in the middle of a string. A branch that
 * only leads away from there (a tap for a load of half the voltage) is no link.
 */
function stringLinks(
  { network, graph, componentOf, pointOf, sources }: NetworkGraph,
  nets: readonly NetPolarity[],
) {
  const isPole = new Uint8Array(graph.nodes);
  for (const { part, positive, negative } of sources) {
    if (descriptorOf(network.parts[part]!).formsStrings)
      isPole[pointOf[positive]!] = isPole[pointOf[negative]!] = 1;
  }
  const links = new Uint8Array(network.conductors.length).fill(1);
  const degree = Int32Array.from({ length: graph.nodes }, (_, p) => graph.first[p + 1]! - graph.first[p]!);
  const inMiddle = new Uint8Array(graph.nodes);
  componentOf.forEach((component, terminal) => {
    if (nets[component] === "middle") inMiddle[pointOf[terminal]!] = 1;
  });
  const ends: number[] = [];
  for (let point = 0; point < graph.nodes; point++) {
    if (inMiddle[point] && degree[point] === 1 && !isPole[point]) ends.push(point);
  }
  for (let point = ends.pop(); point !== undefined; point = ends.pop()) {
    for (let at = graph.first[point]!; at < graph.first[point + 1]!; at++) {
      const conductor = graph.edges[at]!;
      if (!links[conductor]) continue;
      links[conductor] = 0;
      const other = across(graph, conductor, point);
      degree[other]!--;
      if (degree[other] === 1 && !isPole[other]) ends.push(other);
    }
  }
  return links;
}

function isBatteryPole({ terminals, parts }: Network, terminal: number): boolean {
  return parts[terminals[terminal]!.part]!.kind === "battery";
}
