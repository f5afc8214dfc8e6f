import type { EliminationOrder } from "./sparse-order.ts";

/**
 * A sparse system of linear equations with a fixed pattern and changing values. The pattern is computed once for all
 * iterations in all scenarios; then `values` are written, factored and solved as often as needed.
 *
 * Our own, because no typed, maintained and small package does it. Of those that npm has, mathjs (about 10 MB unpacked)
 * has a sparse LU that orders and allocates anew for each matrix and boxes each number; ml-matrix is dense only;
 * numeric has not been maintained since 2013 and is not typed.
 *
 * Factored without row exchanges: the nodal matrix of a network at a stable operating point is symmetric and positive
 * definite (except for the one-sided coupling of converters). Elimination along its diagonal in any order is then backward
 * stable: N. J. Higham, "Accuracy and Stability of Numerical Algorithms", 2nd ed., chapter 10. A pivot that is not positive
 * means that the point is not stable, or that converters couple. {@link factor} reports it, and no solution is then used
 * unchecked.
 * The caller's Newton steps remove the rounding that is left, micro-ohms beside kilo-ohms: each solves for a correction.
 */
export interface SparseSystem {
  readonly size: number;
  /** Diagonal first, by row, then the other entries, fill-in included; {@link entryAt} gives their positions. */
  readonly values: Float64Array;
  /**
   * Position of an entry in {@link values}. It must be one of the pattern's. Rows and columns are in the order of
   * elimination.
   */
  entryAt(row: number, column: number): number;
  /**
   * Computes the factors of {@link values}, which it leaves unchanged. Returns the least pivot, as a share of the original
   * diagonal. A pivot that is mere rounding counts as 0, and a small positive one replaces it: a step is then still possible.
   */
  factor(): number;
  /** About the latest factors: an odd number of pivots is negative, and so is the determinant, in any order of elimination. */
  hasNegativeDeterminant(): boolean;
  /** Overwrites the right-hand side with the solution. */
  solve(rightHandSide: Float64Array): void;
}

export function sparseSystem({ place, upperStart, upper, work }: EliminationOrder): SparseSystem {
  const size = place.length;
  const below = size + upper.length;
  const values = new Float64Array(below + upper.length);
  const factors = new Float64Array(values.length);
  const pivots = new Float64Array(size);
  let negativePivots = 0;

  function entryAt(row: number, column: number): number {
    if (row === column) return row;
    const first = Math.min(row, column);
    const second = Math.max(row, column);
    let low = upperStart[first]!;
    let high = upperStart[first + 1]! - 1;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (upper[middle]! < second) low = middle + 1;
      else high = middle;
    }
    if (upper[low] !== second) throw new Error(`No entry at ${row}, ${column}.`);
    return (row < column ? size : below) + low;
  }

  const targets = targetsOf({ upperStart, upper, work, entryAt, size });

  function factor(): number {
    let leastShare = 1;
    let target = 0;
    negativePivots = 0;
    factors.set(values);
    for (let row = 0; row < size; row++) {
      const before = Math.abs(values[row]!) || leastPivot;
      let pivot = factors[row]!;
      if (pivot < leastShare * before) {
        const share = pivot / before;
        leastShare = Math.abs(share) <= leastPivotShare ? Math.min(leastShare, 0) : share;
      }
      if (!(Math.abs(pivot) > leastPivotShare * before)) pivot = leastPivotShare * before;
      if (pivot < 0) negativePivots++;
      pivots[row] = pivot;
      const start = upperStart[row]!;
      const end = upperStart[row + 1]!;
      for (let one = start; one < end; one++) {
        const multiple = factors[below + one]! / pivot;
        factors[below + one] = multiple;
        for (let other = start; other < end; other++) {
          factors[targets[target]!]! -= multiple * factors[size + other]!;
          target += 1;
        }
      }
    }
    return leastShare;
  }

  function solve(b: Float64Array): void {
    for (let row = 0; row < size; row++) {
      const value = b[row]!;
      if (value === 0) continue;
      const end = upperStart[row + 1]!;
      for (let at = upperStart[row]!; at < end; at++) b[upper[at]!]! -= factors[below + at]! * value;
    }
    for (let row = size - 1; row >= 0; row--) {
      let sum = b[row]!;
      const end = upperStart[row + 1]!;
      for (let at = upperStart[row]!; at < end; at++) sum -= factors[size + at]! * b[upper[at]!]!;
      b[row] = sum / pivots[row]!;
    }
  }

  return { size, values, entryAt, factor, hasNegativeDeterminant: () => negativePivots % 2 === 1, solve };
}

/** As a share of the diagonal before elimination; smaller values are rounding. */
const leastPivotShare = 1e-15;
const leastPivot = 1e-12;

/**
 * The entries from which the multiplications of the elimination subtract their products, in order: looked up once for the
 * pattern, so a factorisation neither searches nor gathers.
 */
function targetsOf(of: {
  upperStart: Int32Array;
  upper: Int32Array;
  work: number;
  entryAt: SparseSystem["entryAt"];
  size: number;
}): Int32Array {
  const { upperStart, upper, work, entryAt, size } = of;
  const targets = new Int32Array(work);
  let first = 0;
  for (let row = 0; row < size; row++) {
    const start = upperStart[row]!;
    const neighbours = upperStart[row + 1]! - start;
    for (let one = 0; one < neighbours; one++) {
      targets[first + one * neighbours + one] = upper[start + one]!;
      for (let other = one + 1; other < neighbours; other++) {
        const above = entryAt(upper[start + one]!, upper[start + other]!);
        targets[first + one * neighbours + other] = above;
        targets[first + other * neighbours + one] = above + upper.length;
      }
    }
    first += neighbours * neighbours;
  }
  return targets;
}
