import type { EliminationOrder } from "./sparse-order.ts";

/**
 * A sparse system of linear equations whose pattern stays while its values change: the pattern is worked out once for all
 * iterations in all scenarios, then `values` are written, factored and solved as often as needed.
 *
 * Of our own, because nothing typed, maintained and small does it: of the packages that npm has, mathjs (about 10 MB
 * unpacked) has a sparse LU that orders and allocates anew for each matrix and boxes each number; ml-matrix is dense only;
 * numeric has not been maintained since 2013 and is not typed.
 *
 * Factored without exchanging rows: the nodal matrix of a network at a stable operating point is symmetric and positive
 * definite (but for the coupling of converters, which is one-sided), for which elimination along the diagonal in any order
 * is backward stable: N. J. Higham, "Accuracy and Stability of Numerical Algorithms", 2nd ed., chapter 10. A pivot
 * that is not positive says that the point is not a stable one; {@link factor} tells, and no answer is then used unchecked.
 * What rounding is left, micro-ohms beside kilo-ohms, the caller's Newton steps remove: they solve for a correction each.
 */
export interface SparseSystem {
  readonly size: number;
  /** Diagonal first, by row, then the other entries; {@link entryAt} tells where. Rows are in the order of elimination. */
  readonly values: Float64Array;
  /** Where in {@link values} the entry of a row and a column is. It must be one of the pattern's. */
  entryAt(row: number, column: number): number;
  /**
   * Splits {@link values} into factors. The answer is the least pivot, as a share of the diagonal there was before; 0 for one
   * that is nothing but rounding. A pivot that is not positive is replaced by a small one that is, so that a step can be
   * taken all the same.
   */
  factor(): number;
  /** Overwrites the right-hand side with the solution. */
  solve(rightHandSide: Float64Array): void;
}

export function sparseSystem(order: EliminationOrder, pairs: ArrayLike<number>): SparseSystem {
  const { place, upperStart, upper } = order;
  const size = place.length;
  const entries = entriesOf(place, pairs);
  const values = new Float64Array(size + entries.columns.length);
  const lowerStart = new Int32Array(size + 1);
  for (const column of upper) lowerStart[column + 1]! += 1;
  for (let row = 0; row < size; row++) lowerStart[row + 1]! += lowerStart[row]!;
  const lower = new Int32Array(upper.length);
  const filled = lowerStart.slice();
  // Rows in ascending order, so that each row's columns come out ascending too.
  for (let row = 0; row < size; row++) {
    for (let at = upperStart[row]!; at < upperStart[row + 1]!; at++) {
      const column = upper[at]!;
      lower[filled[column]!] = row;
      filled[column]! += 1;
    }
  }
  const upperValues = new Float64Array(upper.length);
  const lowerValues = new Float64Array(upper.length);
  const pivots = new Float64Array(size);
  const row = new Float64Array(size);

  function entryAt(rowIndex: number, column: number): number {
    if (rowIndex === column) return rowIndex;
    let low = entries.start[rowIndex]!;
    let high = entries.start[rowIndex + 1]! - 1;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (entries.columns[middle]! < column) low = middle + 1;
      else high = middle;
    }
    if (entries.columns[low] !== column) throw new Error(`No entry at ${rowIndex}, ${column}.`);
    return size + low;
  }

  function factor(): number {
    let leastShare = 1;
    for (let index = 0; index < size; index++) {
      for (let at = upperStart[index]!; at < upperStart[index + 1]!; at++) row[upper[at]!] = 0;
      for (let at = lowerStart[index]!; at < lowerStart[index + 1]!; at++) row[lower[at]!] = 0;
      row[index] = values[index]!;
      for (let at = entries.start[index]!; at < entries.start[index + 1]!; at++) {
        row[entries.columns[at]!] = values[size + at]!;
      }
      for (let at = lowerStart[index]!; at < lowerStart[index + 1]!; at++) {
        const earlier = lower[at]!;
        const multiple = row[earlier]! / pivots[earlier]!;
        lowerValues[at] = multiple;
        if (multiple === 0) continue;
        const end = upperStart[earlier + 1]!;
        for (let above = upperStart[earlier]!; above < end; above++) {
          row[upper[above]!]! -= multiple * upperValues[above]!;
        }
      }
      for (let at = upperStart[index]!; at < upperStart[index + 1]!; at++) {
        upperValues[at] = row[upper[at]!]!;
      }
      const least = leastPivotShare * Math.abs(values[index]!) || leastPivot;
      const share = row[index]! / (Math.abs(values[index]!) || leastPivot);
      if (share < leastShare) leastShare = Math.abs(share) <= leastPivotShare ? 0 : share;
      pivots[index] = Math.max(row[index]!, least);
    }
    return leastShare;
  }

  function solve(b: Float64Array): void {
    for (let index = 0; index < size; index++) {
      let sum = b[index]!;
      const end = lowerStart[index + 1]!;
      for (let at = lowerStart[index]!; at < end; at++) sum -= lowerValues[at]! * b[lower[at]!]!;
      b[index] = sum;
    }
    for (let index = size - 1; index >= 0; index--) {
      let sum = b[index]!;
      const end = upperStart[index + 1]!;
      for (let at = upperStart[index]!; at < end; at++) sum -= upperValues[at]! * b[upper[at]!]!;
      b[index] = sum / pivots[index]!;
    }
  }

  return { size, values, entryAt, factor, solve };
}

/** Of the diagonal before elimination; what is left below that is rounding. */
const leastPivotShare = 1e-15;
const leastPivot = 1e-12;

/** The places off the diagonal that hold a value before elimination, row by row in the order of elimination. */
function entriesOf(place: Int32Array, pairs: ArrayLike<number>): { start: Int32Array; columns: Int32Array } {
  const size = place.length;
  const counts = new Int32Array(size + 1);
  for (let index = 0; index + 1 < pairs.length; index += 2) {
    const one = place[pairs[index]!]!;
    const other = place[pairs[index + 1]!]!;
    if (one === other) continue;
    counts[one + 1]! += 1;
    counts[other + 1]! += 1;
  }
  for (let row = 0; row < size; row++) counts[row + 1]! += counts[row]!;
  const doubled = new Int32Array(counts[size]!);
  const filled = counts.slice();
  for (let index = 0; index + 1 < pairs.length; index += 2) {
    const one = place[pairs[index]!]!;
    const other = place[pairs[index + 1]!]!;
    if (one === other) continue;
    doubled[filled[one]!] = other;
    filled[one]! += 1;
    doubled[filled[other]!] = one;
    filled[other]! += 1;
  }
  const start = new Int32Array(size + 1);
  let kept = 0;
  for (let row = 0; row < size; row++) {
    const columns = doubled.subarray(counts[row]!, counts[row + 1]!).sort();
    let last = -1;
    for (const column of columns) {
      if (column === last) continue;
      doubled[kept] = column;
      kept += 1;
      last = column;
    }
    start[row + 1] = kept;
  }
  return { start, columns: doubled.slice(0, kept) };
}
