import { disjointSets } from "../../../model/disjoint-sets.ts";
import { type EliminationOrder, eliminationOrder } from "./sparse-order.ts";

/**
 * A network of resistances between nodes and a common reference, factored once. It gives the voltages for given currents, and
 * single entries of the inverse of its conductance matrix (the voltage by which 1 A into one node lifts another, V), each at
 * the cost of a look-up.
 */
export interface SparseInverse {
  /** Overwrites currents into the nodes, A, with the voltages of the nodes, V. */
  solve(currents: Float64Array): void;
  /**
   * The voltages for currents into a few nodes. The cost is that of the islands of those nodes: thousands of islands take no
   * longer than one of the same size.
   */
  response(currents: readonly CurrentIntoNode[]): Response;
  /** The island number of a node. An island is a set of nodes connected other than through the reference. */
  islandOf(node: number): number;
  /** For two nodes that meet in the matrix or in `pairs`, and for one node and itself; Ω. */
  entry(a: number, b: number): number;
}

/** By node, V; 0 in every other island. */
export type Response = (node: number) => number;

interface CurrentIntoNode {
  readonly node: number;
  readonly currentA: number;
}

export interface Resistances {
  /** Ends of each; −1 is the reference. */
  readonly a: ArrayLike<number>;
  readonly b: ArrayLike<number>;
  readonly ohm: ArrayLike<number>;
}

/**
 * Symmetric factors L·D·Lᵀ, and the entries of the inverse at the positions of L's entries, from the last row upwards:
 *
 *     Z = D⁻¹L⁻¹ + (I − Lᵀ)·Z
 *
 * K. Takahashi, J. Fagan, M. Chen, "Formation of a sparse bus impedance matrix and its application to short circuit study",
 * PICA Conference 1973; utilities use it for the same purpose. Every node must be connected to the reference in some way: then
 * the matrix is positive definite and needs no row exchanges.
 *
 * @param pairs Nodes, two and two, whose entry is needed although no branch connects them.
 * @returns undefined if the factors would be too large: no real network is so meshed.
 */
export function sparseInverse(
  nodes: number,
  { a, b, ohm }: Resistances,
  pairs: readonly number[],
): SparseInverse | undefined {
  const meeting = [...pairs];
  for (let at = 0; at < ohm.length; at++) if (a[at]! >= 0 && b[at]! >= 0) meeting.push(a[at]!, b[at]!);
  const order = eliminationOrder(nodes, meeting);
  if (!order) return undefined;
  const { place, upperStart, upper } = order;

  const pivots = new Float64Array(nodes);
  const rows = new Float64Array(upper.length);
  for (let at = 0; at < ohm.length; at++) {
    const siemens = 1 / ohm[at]!;
    const one = a[at]! < 0 ? -1 : place[a[at]!]!;
    const other = b[at]! < 0 ? -1 : place[b[at]!]!;
    if (one === other) continue;
    if (one >= 0) pivots[one]! += siemens;
    if (other >= 0) pivots[other]! += siemens;
    if (one >= 0 && other >= 0) rows[position(Math.min(one, other), Math.max(one, other))]! -= siemens;
  }
  factor();
  const inverse = new Float64Array(upper.length);
  const diagonal = new Float64Array(nodes);
  invert();

  function position(row: number, column: number): number {
    let [low, high] = [upperStart[row]!, upperStart[row + 1]! - 1];
    while (low < high) {
      const middle = (low + high) >> 1;
      if (upper[middle]! < column) low = middle + 1;
      else high = middle;
    }
    if (upper[low] !== column) throw new Error(`The nodes at ${row} and ${column} do not meet.`);
    return low;
  }

  function factor(): void {
    for (let row = 0; row < nodes; row++) {
      const end = upperStart[row + 1]!;
      for (let at = upperStart[row]!; at < end; at++) {
        const column = upper[at]!;
        const share = rows[at]! / pivots[row]!;
        pivots[column]! -= share * rows[at]!;
        // The columns after this one in the row are also columns of the other row: this is the fill-in.
        for (let next = at + 1, target = upperStart[column]!; next < end; next++) {
          while (upper[target] !== upper[next]) target++;
          rows[target]! -= share * rows[next]!;
        }
      }
      for (let at = upperStart[row]!; at < end; at++) rows[at]! /= pivots[row]!;
    }
  }

  function invert(): void {
    const sums = new Float64Array(nodes);
    for (let row = nodes - 1; row >= 0; row--) {
      const start = upperStart[row]!;
      const end = upperStart[row + 1]!;
      for (let at = start; at < end; at++) sums[upper[at]!] = 0;
      for (let at = start; at < end; at++) {
        const column = upper[at]!;
        sums[column]! += rows[at]! * diagonal[column]!;
        for (let next = at + 1, target = upperStart[column]!; next < end; next++) {
          while (upper[target] !== upper[next]) target++;
          sums[upper[next]!]! += rows[at]! * inverse[target]!;
          sums[column]! += rows[next]! * inverse[target]!;
        }
      }
      diagonal[row] = 1 / pivots[row]!;
      for (let at = start; at < end; at++) {
        inverse[at] = -sums[upper[at]!]!;
        diagonal[row]! -= rows[at]! * inverse[at]!;
      }
    }
  }

  const work = new Float64Array(nodes);
  const allRows = Int32Array.from({ length: nodes }, (_, row) => row);
  const islands = islandsOf(nodes, order);

  /** Forward and back substitution over rows that are connected to no others. */
  function substitute(among: ArrayLike<number>): void {
    for (let index = 0; index < among.length; index++) {
      const row = among[index]!;
      const value = work[row]!;
      if (value === 0) continue;
      const end = upperStart[row + 1]!;
      for (let at = upperStart[row]!; at < end; at++) work[upper[at]!]! -= rows[at]! * value;
    }
    for (let index = among.length - 1; index >= 0; index--) {
      const row = among[index]!;
      let value = work[row]! / pivots[row]!;
      const end = upperStart[row + 1]!;
      for (let at = upperStart[row]!; at < end; at++) value -= rows[at]! * work[upper[at]!]!;
      work[row] = value;
    }
  }

  function solve(currents: Float64Array): void {
    for (let node = 0; node < nodes; node++) work[place[node]!] = currents[node]!;
    substitute(allRows);
    for (let node = 0; node < nodes; node++) currents[node] = work[place[node]!]!;
  }

  function response(currents: readonly CurrentIntoNode[]): Response {
    const voltagesIn = new Map<number, Float64Array>();
    for (const island of new Set(currents.map(({ node }) => islands.of[place[node]!]!))) {
      const among = islands.rows[island]!;
      for (const row of among) work[row] = 0;
      for (const { node, currentA } of currents) {
        if (islands.of[place[node]!] === island) work[place[node]!]! += currentA;
      }
      substitute(among);
      voltagesIn.set(
        island,
        Float64Array.from(among, (row) => work[row]!),
      );
    }
    return (node) => {
      const row = place[node]!;
      return voltagesIn.get(islands.of[row]!)?.[islands.indexIn[row]!] ?? 0;
    };
  }

  function entry(one: number, other: number): number {
    const [a, b] = [place[one]!, place[other]!];
    return a === b ? diagonal[a]! : inverse[position(Math.min(a, b), Math.max(a, b))]!;
  }

  return { solve, response, islandOf: (node) => islands.of[place[node]!]!, entry };
}

/** Connected rows of the factors: by row the number of its island and its place there, by island its rows in order. */
function islandsOf(nodes: number, { upperStart, upper }: EliminationOrder) {
  const joined = disjointSets(nodes);
  for (let row = 0; row < nodes; row++) {
    for (let at = upperStart[row]!; at < upperStart[row + 1]!; at++) joined.union(row, upper[at]!);
  }
  const numbers = new Map<number, number>();
  const of = new Int32Array(nodes);
  const indexIn = new Int32Array(nodes);
  const rows: number[][] = [];
  for (let row = 0; row < nodes; row++) {
    const root = joined.find(row);
    let island = numbers.get(root);
    if (island === undefined) {
      island = rows.push([]) - 1;
      numbers.set(root, island);
    }
    of[row] = island;
    indexIn[row] = rows[island]!.push(row) - 1;
  }
  return { of, indexIn, rows };
}
