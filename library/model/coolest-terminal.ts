import type { TerminalC } from "../plan/sizes.ts";

/** The terminal with the lowest temperature rating of those where the conductors of a run end. */
export interface CoolestTerminal {
  readonly ratedC: TerminalC;
  /** The name of its part; absent for the fuse or breaker that the run itself states. */
  readonly of?: string;
}

/** The cooler one; the first of two alike. */
export function cooler(
  one: CoolestTerminal | undefined,
  other: CoolestTerminal | undefined,
): CoolestTerminal | undefined {
  if (!one || !other) return one ?? other;
  return other.ratedC < one.ratedC ? other : one;
}
