/**
 * A current without the dust of binary fractions: 300 × 0.58 gives 174, not 173.99999999999997.
 * Limits are compared exactly, so the dust would turn "just at the limit" into "just over" it.
 * Rounds to 1e-9, far below anything that can be measured.
 */
export function withoutDust(amperes: number): number {
  return Math.round(amperes * 1e9) / 1e9;
}
