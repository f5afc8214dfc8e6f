import { internalConnections } from "../../model/internal-connections.ts";
import type { Network, NetworkConductor, Part, Scenario } from "../../model/network.ts";
import { passesCurrentOn } from "../../model/part-roles.ts";
import { stateIn } from "../../model/switch-positions.ts";
import { type Nodes, nodesOf } from "../network/solver/solve-netlist.ts";

/** The part of a network that can carry current while some parts are on. */
export interface InUse {
  readonly conductors: readonly NetworkConductor[];
  /** Parts that are on, or that current passes through, at these conductors. */
  readonly parts: readonly Part[];
}

/**
 * The conductors that can carry current in a scenario: dead ends, which lead to nothing that is on, are left out one after the other. A
 * solution without them is the same, and most of a network is such circuits while one load is on. `state`: for the positions of switches.
 */
export function conductorsInUse(network: Network, state: Scenario): (on: readonly boolean[]) => InUse {
  const nodes = nodesOf(network, state);
  const edges = edgesOf(network, state, nodes);
  const { from, to, at, ends } = edges;
  return (on) => {
    const degree = Int32Array.from(edges.degree);
    const held = new Uint8Array(nodes.count);
    for (const part of network.parts)
      if (on[part.index] && !passesCurrentOn(part))
        for (const node of edges.nodesOfPart(part)) held[node] = 1;
    const isLeft = new Uint8Array(from.length).fill(1);
    const deadEnds: number[] = [];
    for (let node = 0; node < nodes.count; node++) if (degree[node] === 1 && !held[node]) deadEnds.push(node);
    for (let node = deadEnds.pop(); node !== undefined; node = deadEnds.pop()) {
      for (let slot = at[node]!; slot < at[node + 1]!; slot++) {
        const edge = ends[slot]!;
        if (!isLeft[edge]) continue;
        isLeft[edge] = 0;
        const other = from[edge] === node ? to[edge]! : from[edge]!;
        degree[other]!--;
        if (degree[other] === 1 && !held[other]) deadEnds.push(other);
      }
      degree[node] = 0;
    }
    const isTouched = (node: number) => degree[node]! > 0 || held[node] === 1;
    return {
      conductors: network.conductors.filter((_, conductor) => isLeft[conductor]),
      parts: network.parts.filter(
        (part) => (passesCurrentOn(part) || on[part.index]) && edges.nodesOfPart(part).some(isTouched),
      ),
    };
  };
}

/** The conductors, then the connections with a resistance inside parts, as edges between nodes. */
function edgesOf(network: Network, state: Scenario, { of, count }: Nodes) {
  const pairs = network.conductors.map(({ from, to }): readonly [number, number] => [of[from]!, of[to]!]);
  for (const part of network.parts)
    for (const { between, ohm } of internalConnections(part, stateIn(state, part)))
      if (ohm !== 0) pairs.push([of[between[0]]!, of[between[1]]!]);
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
  const nodesOfParts = network.parts.map((part) =>
    Object.values<number>(part.kind === "part" ? {} : part.terminals).map((terminal) => of[terminal]!),
  );
  network.terminals.forEach(({ part }, terminal) => {
    if (network.parts[part]?.kind === "part") nodesOfParts[part]!.push(of[terminal]!);
  });
  return { from, to, degree, at, ends, nodesOfPart: ({ index }: Part) => nodesOfParts[index]! };
}
