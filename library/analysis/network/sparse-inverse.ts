import { eliminationOrder } from "./sparse-order.ts";

/**
 * A network of resistances between nodes and a common reference, split once: the voltages that given currents make, and
 * single entries of the inverse of its conductance matrix (what 1 A into one node lifts another by, V), each at the cost of
 * a look-up.
 */
export interface SparseInverse {
  /** Overwrites currents into the nodes, A, with the voltages of the nodes, V. */
  solve(currents: Float64Array): void;
  /** For two nodes that meet in the matrix or in `pairs`, and for one node and itself; Ω. */
  entry(a: number, b: number): number;
}

export interface Resistances {
  /** Ends of each; −1 is the reference. */
  readonly a: ArrayLike<number>;
  readonly b: ArrayLike<number>;
  readonly ohm: ArrayLike<number>;
}

/**
 * Symmetric factors L·D·Lᵀ, and those entries of the inverse that lie where L has entries, from the last row upwards:
 *
 *     Z = D⁻¹L⁻¹ + (I − Lᵀ)·Z
 *
 * K. Takahashi, J. Fagan, M. Chen, "Formation of a sparse bus impedance matrix and its application to short circuit study",
 * PICA Conference 1973, which is what utilities use it for too. Every node must be joined to the reference in some way: then
 * the matrix is positive definite and no exchange of rows is needed.
 *
 * @param pairs Nodes whose entry is asked for although nothing joins them, two and two.
 * @returns undefined where the factors would be too great: no real network is so meshed.
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
        // The columns that come after this one in the row are columns of the other row too: that is what filling up means.
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
  function solve(currents: Float64Array): void {
    for (let node = 0; node < nodes; node++) work[place[node]!] = currents[node]!;
    for (let row = 0; row < nodes; row++) {
      const value = work[row]!;
      if (value === 0) continue;
      const end = upperStart[row + 1]!;
      for (let at = upperStart[row]!; at < end; at++) work[upper[at]!]! -= rows[at]! * value;
    }
    for (let row = nodes - 1; row >= 0; row--) {
      let value = work[row]! / pivots[row]!;
      const end = upperStart[row + 1]!;
      for (let at = upperStart[row]!; at < end; at++) value -= rows[at]! * work[upper[at]!]!;
      work[row] = value;
    }
    for (let node = 0; node < nodes; node++) currents[node] = work[place[node]!]!;
  }

  function entry(one: number, other: number): number {
    const [a, b] = [place[one]!, place[other]!];
    return a === b ? diagonal[a]! : inverse[position(Math.min(a, b), Math.max(a, b))]!;
  }

  return { solve, entry };
}
