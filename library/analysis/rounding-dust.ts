/**
 * A current without the dust of binary fractions: 25 × 0.58 gives 14.5, not 14.499999999999998.
 * Limits are compared exactly, so the dust would turn "just at the limit" into "just over" it.
 * Rounds to 1e-9, far below anything that can be measured.
 */
export function withoutDust(amperes: number): number {
  return Math.round(amperes * 1e9) / 1e9;
}
