import type { WireIdentity } from "./wire-identity.ts";

/**
 * The file beside a plan that keeps the numbers of its conductors: plain text, a line a conductor, sorted by name. Two branches
 * that each add a circuit therefore seldom touch the same place.
 */
export interface KeptNumbers {
  /** In the order of the file. */
  readonly numbers: readonly KeptNumber[];
  /** Comments of people behind the last line. */
  readonly trailing: readonly string[];
  /** While there are any, the file must not be written: unreadable lines would be lost. */
  readonly problems: readonly NumbersProblem[];
}

export interface KeptNumber {
  readonly number: number;
  /** Its conductor is gone. */
  readonly retired: boolean;
  readonly identity: WireIdentity;
  /** From 1. */
  readonly line: number;
  /** Comments of people above it, with their #. */
  readonly comments: readonly string[];
}

export interface NumbersProblem {
  /** From 1. */
  readonly line: number;
  /** A sentence. */
  readonly text: string;
}
