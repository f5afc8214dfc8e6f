import { disjointSets } from "../../../model/disjoint-sets.ts";
import type { BatteryPart, Network } from "../../../model/network.ts";
import { isDevice } from "../../../model/part-roles.ts";
import { sparseInverse } from "../solver/selected-inverse.ts";
import { returnTerminal } from "../topology/internal-connections.ts";
import type { NetworkGraph } from "../topology/network-graph.ts";
import type { Bank } from "../topology/network-topology.ts";
import type { NetPolarity } from "../topology/polarity.ts";
import { type NearestSources, nearestSources } from "../topology/source-paths.ts";
import { across } from "../topology/spanning-forest.ts";
import { batteriesOf, type FaultNetwork, sourceForMinFault } from "./fault-network.ts";

/** The minimum currents for dead shorts between the positive end of a conductor and its return. */
export interface MinFaults {
  /** At a terminal on the positive side; undefined if no battery reaches it. */
  at(terminal: number): MinFault | undefined;
  /**
   * The current in one branch during any short, A, from its near to its far end. One solution serves all shorts: a current
   * into a node affects a branch as a current through the branch affects the node (reciprocity).
   */
  through(branch: number): (fault: MinFault) => number;
}

/** A short, and its current. */
export interface MinFault {
  readonly currentA: number;
  /** The two nodes that it connects. */
  readonly positive: number;
  readonly negative: number;
}

/**
 * Copper is at the maximum temperature of its insulation, both polarities have all their resistance, batteries are at their
 * weakest. Sources with a limit add no current: they may be off.
 *
 *     I_k = (V_k − V_m) / (Z_kk + Z_mm − 2 · Z_km + R_w)
 *
 * k and m are the two shorted nodes, V their voltages before, Ω and V. m is the negative terminal of the part at which the
 * conductor ends, if it has one that leads back. A bus bar, a switch or a plain joint has none: then m is the negative pole of
 * the nearest bank, and the return path, R_w, is assumed to have the resistance of the supply path (common practice: a pair
 * of equal conductors).
 */
export function minFaults(
  wiring: NetworkGraph,
  faults: FaultNetwork,
  nets: readonly NetPolarity[],
  banks: readonly Bank[],
): MinFaults | undefined {
  const { network, pointOf, componentOf } = wiring;
  const { nodeOf, hotOhm } = faults;
  const batteries = batteriesOf(network);
  const unknownOf = nodesWithBattery(wiring, faults, batteries);
  const unknown = (terminal: number) => unknownOf[nodeOf[terminal]!]!;
  const nearest = nearestSources(
    wiring,
    wiring.sources.filter(({ part }) => network.parts[part]!.kind === "battery"),
    "positive",
  );
  const bankNegative = negativePoles(banks);
  const ohmToPoint = ohmOnWays(wiring, hotOhm, nearest);

  const shorts = network.terminals.map((_, terminal) => shortAt(terminal));

  /** The two nodes of a short at a terminal of the positive side. */
  function shortAt(terminal: number) {
    const positive = unknown(terminal);
    const source = nearest.start[pointOf[terminal]!]!;
    if (positive === outside || source === -1) return undefined;
    const own = returnAt(network, terminal);
    const leadsBack = own !== undefined && nets[componentOf[own]!] === "negative" && unknown(own) !== outside;
    if (leadsBack) return { positive, negative: unknown(own), wayBackOhm: 0 };
    const pole = bankNegative.get(nearest.sources[source]!.part);
    if (pole === undefined) return undefined;
    return { positive, negative: unknown(pole), wayBackOhm: ohmToPoint[pointOf[terminal]!]! };
  }

  const a: number[] = [];
  const b: number[] = [];
  const ohm: number[] = [];
  const currents = new Float64Array(unknownOf.length);
  const join = (one: number, other: number, value: number) => {
    if (one === outside || other === outside || one === other) return;
    a.push(one);
    b.push(other);
    ohm.push(value);
  };
  wiring.branches.forEach(({ from, to }, branch) => {
    join(unknown(from), unknown(to), hotOhm[branch]!);
  });
  for (const { a: one, b: other, ohm: value } of faults.joins)
    join(unknownOf[one]!, unknownOf[other]!, value);
  for (const battery of batteries) {
    const { voltageV, ohm: internalOhm } = sourceForMinFault(battery);
    const [positive, negative] = [unknown(battery.terminals.positive), unknown(battery.terminals.negative)];
    join(positive, negative, internalOhm);
    if (positive >= 0) currents[positive]! += voltageV / internalOhm;
    if (negative >= 0) currents[negative]! -= voltageV / internalOhm;
  }
  const pairs: number[] = [];
  for (const short of shorts) {
    if (short && short.positive >= 0 && short.negative >= 0) pairs.push(short.positive, short.negative);
  }
  const count = unknownOf.reduce((most, node) => Math.max(most, node + 1), 0);
  const inverse = sparseInverse(count, { a, b, ohm }, pairs);
  if (!inverse) return undefined;
  const before = currents.slice(0, count);
  inverse.solve(before);
  const voltage = (node: number) => (node < 0 ? 0 : before[node]!);
  const entry = (one: number, other: number) => (one < 0 || other < 0 ? 0 : inverse.entry(one, other));

  return {
    at(terminal) {
      const short = shorts[terminal];
      if (!short || short.positive === short.negative) return undefined;
      const { positive, negative, wayBackOhm } = short;
      const ownOhm =
        entry(positive, positive) + entry(negative, negative) - 2 * entry(positive, negative) + wayBackOhm;
      return { currentA: (voltage(positive) - voltage(negative)) / ownOhm, positive, negative };
    },
    through(branch) {
      const { from, to } = wiring.branches[branch]!;
      const [one, other] = [unknown(from), unknown(to)];
      if (one === other || one === outside || other === outside) return () => 0;
      const beforeA = (voltage(one) - voltage(other)) / hotOhm[branch]!;
      const siemens = 1 / hotOhm[branch]!;
      const liftedBy = inverse.response(
        [
          { node: one, currentA: siemens },
          { node: other, currentA: -siemens },
        ].filter(({ node }) => node >= 0),
      );
      const lift = (node: number) => (node < 0 ? 0 : liftedBy(node));
      return ({ currentA, positive, negative }) => beforeA - currentA * (lift(positive) - lift(negative));
    },
  };
}

/** The terminal that leads back from one; at a mounted device, from the terminal that the device is on. */
export function returnAt({ parts, terminals }: Network, terminal: number): number | undefined {
  const part = parts[terminals[terminal]!.part]!;
  if (!isDevice(part) || part.mountedOn === undefined) return returnTerminal(part, terminal);
  return returnTerminal(parts[terminals[part.mountedOn]!.part]!, part.mountedOn);
}

/** Without any battery in its component: no unknown, and no result for shorts there. */
const outside = -2;
const reference = -1;

/**
 * By node: its number among those that batteries reach, through themselves too. One negative pole in each component is the
 * reference; everything without a battery is outside.
 */
function nodesWithBattery(
  { branches }: NetworkGraph,
  { nodes, nodeOf, joins }: FaultNetwork,
  batteries: readonly BatteryPart[],
): Int32Array {
  const linked = disjointSets(nodes);
  for (const { from, to } of branches) linked.union(nodeOf[from]!, nodeOf[to]!);
  for (const { a, b } of joins) linked.union(a, b);
  for (const { terminals } of batteries)
    linked.union(nodeOf[terminals.positive]!, nodeOf[terminals.negative]!);
  const numbers = new Int32Array(nodes).fill(outside);
  const pieces = new Set<number>();
  for (const { terminals } of batteries) {
    const node = nodeOf[terminals.negative]!;
    if (pieces.has(linked.find(node))) continue;
    pieces.add(linked.find(node));
    numbers[node] = reference;
  }
  let count = 0;
  for (let node = 0; node < nodes; node++) {
    if (numbers[node] === outside && pieces.has(linked.find(node))) numbers[node] = count++;
  }
  return numbers;
}

/** By battery: the negative pole of the string that it is in. */
function negativePoles(banks: readonly Bank[]): Map<number, number> {
  return new Map(
    banks.flatMap(({ strings, negatives }) =>
      strings.flatMap((string, index) => string.map((battery) => [battery, negatives[index]!] as const)),
    ),
  );
}

/** By point: the resistance of all conductors on the path there from the nearest battery, Ω. */
function ohmOnWays(
  { graph }: NetworkGraph,
  ohm: Float64Array,
  { order, cameBy }: NearestSources,
): Float64Array {
  const toPoint = new Float64Array(graph.nodes);
  for (const point of order) {
    const by = cameBy[point]!;
    if (by >= 0) toPoint[point] = toPoint[across(graph, by, point)]! + ohm[by]!;
  }
  return toPoint;
}
