/**
 * Solves a small system of linear equations by Gaussian elimination with row exchanges. For tests only: slow, and
 * independent of the sparse solvers.
 */
export function solveDense(
  matrix: readonly (readonly number[])[],
  rightHandSide: readonly number[],
): number[] {
  const size = rightHandSide.length;
  const rows = matrix.map((row, index) => [...row, rightHandSide[index]!]);
  for (let column = 0; column < size; column++) {
    let best = column;
    for (let row = column + 1; row < size; row++) {
      if (Math.abs(rows[row]![column]!) > Math.abs(rows[best]![column]!)) best = row;
    }
    [rows[column], rows[best]] = [rows[best]!, rows[column]!];
    for (let row = column + 1; row < size; row++) {
      const multiple = rows[row]![column]! / rows[column]![column]!;
      if (multiple === 0) continue;
      for (let at = column; at <= size; at++) rows[row]![at]! -= multiple * rows[column]![at]!;
    }
  }
  const solution = new Array<number>(size).fill(0);
  for (let row = size - 1; row >= 0; row--) {
    let sum = rows[row]![size]!;
    for (let column = row + 1; column < size; column++) sum -= rows[row]![column]! * solution[column]!;
    solution[row] = sum / rows[row]![row]!;
  }
  return solution;
}
