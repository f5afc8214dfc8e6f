import { internalConnections } from "../../model/internal-connections.ts";
import type { BatteryPart, Network, NetworkConductor, Part, Scenario } from "../../model/network.ts";
import { passesCurrentOn } from "../../model/part-roles.ts";
import { stateIn } from "../../model/switch-positions.ts";
import { noLessThanLeast } from "../network/solver/conductor-current.ts";
import { type Nodes, nodesOf } from "../network/solver/solve-netlist.ts";
import type { Portion } from "../network/solver/solve-scenarios.ts";

/** The ways of current through a network in one position of its switches. */
export interface WaysOfCurrent {
  /**
   * The portion that can carry current while some parts are on: without dead ends. A solution of the portion alone is that of the whole,
   * and most of a network is dead ends while one load is on. The parts are those at its conductors that are on, or that current passes
   * through.
   */
  portionWith(on: readonly boolean[]): Portion;
  /** The loop that a consumer alone closes, over batteries; undefined if there are several ways, or no battery. */
  loopOf(consumer: Part): Loop | undefined;
}

/** Everything in one loop carries the current of the consumer that closes it. */
export interface Loop {
  readonly conductors: readonly NetworkConductor[];
  /** Of connections inside parts, Ω. */
  readonly ohm: number;
  readonly batteries: readonly BatteryPart[];
}

/**
 * Dead ends are found once, with everything off; each part that is on then brings back the way from its terminals. Batteries count as
 * ways, because at a dead end they carry no current either.
 *
 * @param state For the positions of switches.
 */
export function waysOfCurrent(network: Network, state: Scenario): WaysOfCurrent {
  const nodes = nodesOf(network, state);
  const edges = edgesOf(network, state, nodes);
  const { from, to, inside, batteries, partsAt, nodesOfPart } = edges;
  const isEnd = network.parts.map((part) => !passesCurrentOn(part));
  const { isAlways, wayOf } = withoutDeadEnds(edges);
  const always = [...from.keys()].filter((edge) => isAlways[edge]);
  const inLoops = new Set(always.flatMap((edge) => [from[edge]!, to[edge]!]));
  const across = (edge: number, node: number) => (from[edge] === node ? to[edge]! : from[edge]!);
  /** From a node, the edges to the last node of its dead end, each with the node before it. */
  const wayFrom = (start: number) => {
    const way: { readonly edge: number; readonly node: number }[] = [];
    for (let node = start; wayOf[node] !== -1; node = across(wayOf[node]!, node))
      way.push({ edge: wayOf[node]!, node });
    return way;
  };
  return {
    portionWith(on) {
      const used = [...always];
      const reached = new Set(inLoops);
      for (const { index } of network.parts) {
        if (!on[index] || !isEnd[index]) continue;
        for (let node of nodesOfPart[index]!)
          while (!reached.has(node)) {
            reached.add(node);
            const edge = wayOf[node]!;
            if (edge === -1) break;
            used.push(edge);
            node = across(edge, node);
          }
      }
      const parts = new Set(
        [...reached].flatMap((node) => partsAt[node]!.filter((index) => !isEnd[index] || on[index])),
      );
      return {
        conductors: used.flatMap((edge) => network.conductors[edge] ?? []),
        parts: [...parts].sort((one, other) => one - other).map((index) => network.parts[index]!),
        nodes: numberedAlone(nodes, [...reached, ...[...parts].flatMap((index) => nodesOfPart[index]!)]),
      };
    },
    loopOf({ index }) {
      const [start, end] = nodesOfPart[index]!;
      if (start === undefined || end === undefined || start === end) return undefined;
      const [out, back] = [wayFrom(start), wayFrom(end)];
      // Beyond the node at which they meet, both are one way.
      while (out.length > 0 && out.at(-1)!.edge === back.at(-1)?.edge) {
        out.pop();
        back.pop();
      }
      const last = (way: typeof out, from: number) =>
        way.length > 0 ? across(way.at(-1)!.edge, way.at(-1)!.node) : from;
      const meets = last(out, start);
      if (meets !== last(back, end) || inLoops.has(meets)) return undefined;
      const loop: { conductors: NetworkConductor[]; ohm: number; batteries: BatteryPart[] } = {
        ...{ conductors: [], ohm: 0, batteries: [] },
      };
      for (const way of [out, back])
        for (const { edge, node } of way) {
          const battery = batteries[edge - inside.length - network.conductors.length];
          if (edge < network.conductors.length) loop.conductors.push(network.conductors[edge]!);
          else if (!battery) loop.ohm += inside[edge - network.conductors.length]!;
          // Outwards from the positive of the consumer, a battery is met at its positive; on the way back, at its negative.
          else if ((from[edge] === node) === (way === out)) loop.batteries.push(battery);
          else return undefined;
        }
      return loop.batteries.length > 0 ? loop : undefined;
    },
  };
}

/**
 * Takes the dead ends off a graph one after the other, down to its loops and the ways between them. `wayOf`: by node, the edge that leads
 * on from a dead end, -1 at its last node and in loops.
 */
function withoutDeadEnds({ from, to, at, ends, degree: all }: Edges) {
  const degree = all.slice();
  const isAlways = new Uint8Array(from.length).fill(1);
  const wayOf = new Int32Array(degree.length).fill(-1);
  const deadEnds = [...degree.keys()].filter((node) => degree[node] === 1);
  for (let node = deadEnds.pop(); node !== undefined; node = deadEnds.pop()) {
    for (let slot = at[node]!; slot < at[node + 1]!; slot++) {
      const edge = ends[slot]!;
      if (!isAlways[edge]) continue;
      isAlways[edge] = 0;
      wayOf[node] = edge;
      const other = from[edge] === node ? to[edge]! : from[edge]!;
      degree[other]!--;
      if (degree[other] === 1) deadEnds.push(other);
    }
    degree[node] = 0;
  }
  return { isAlways, wayOf };
}

/** These nodes, numbered in their order, in which alike portions get the same numbers; any other node is 0. */
function numberedAlone({ of, count }: Nodes, used: readonly number[]): Nodes {
  const numbers = new Int32Array(count);
  let next = 0;
  for (const node of used) if (numbers[node] === 0) numbers[node] = ++next;
  const numbered = new Int32Array(of.length);
  for (let terminal = 0; terminal < of.length; terminal++)
    numbered[terminal] = Math.max(0, numbers[of[terminal]!]! - 1);
  return { count: next, of: numbered };
}

type Edges = ReturnType<typeof edgesOf>;

/** As edges between nodes: the conductors, then the connections with a resistance inside parts, then the batteries. */
function edgesOf(network: Network, state: Scenario, { of, count }: Nodes) {
  const batteries = network.parts.filter((part) => part.kind === "battery");
  const inside: number[] = [];
  const pairs = network.conductors.map(({ from, to }): readonly [number, number] => [of[from]!, of[to]!]);
  for (const part of network.parts)
    for (const { between, ohm } of internalConnections(part, stateIn(state, part)))
      if (ohm !== 0) {
        inside.push(noLessThanLeast(ohm));
        pairs.push([of[between[0]]!, of[between[1]]!]);
      }
  for (const { terminals } of batteries) pairs.push([of[terminals.positive]!, of[terminals.negative]!]);
  const from = Int32Array.from(pairs, ([one]) => one);
  const to = Int32Array.from(pairs, ([, other]) => other);
  const degree = new Int32Array(count);
  for (const [one, other] of pairs) {
    degree[one]!++;
    degree[other]!++;
  }
  const at = new Int32Array(count + 1);
  for (let node = 0; node < count; node++) at[node + 1] = at[node]! + degree[node]!;
  const next = at.slice();
  const ends = new Int32Array(2 * pairs.length);
  pairs.forEach(([one, other], edge) => {
    ends[next[one]!++] = edge;
    ends[next[other]!++] = edge;
  });
  const nodesOfPart = network.parts.map((part) =>
    Object.values<number>(part.kind === "part" ? {} : part.terminals).map((terminal) => of[terminal]!),
  );
  network.terminals.forEach(({ part }, terminal) => {
    if (network.parts[part]?.kind === "part") nodesOfPart[part]!.push(of[terminal]!);
  });
  const partsAt = Array.from({ length: count }, (): number[] => []);
  nodesOfPart.forEach((own, part) => {
    for (const node of own) partsAt[node]!.push(part);
  });
  return { from, to, degree, at, ends, inside, batteries, nodesOfPart, partsAt };
}
