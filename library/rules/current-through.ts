import type { NetworkResult, WorstOf } from "../analysis/network-result.ts";
import type { Part } from "../model/network.ts";
import type { Citation } from "../standards/citation.ts";

/** What a part may carry is what its maker says, and the plan repeats: no document stands behind it. */
export const statedRating: Citation = {
  document: "The maker's rating, as the plan states it",
  section: "",
  authority: "stated in the plan",
  confirmed: "read",
};

/** The greatest current through a part that only passes current on, whichever way it flows, and in which scenario. */
export function currentThrough({ parts }: NetworkResult, { index }: Part): WorstOf | undefined {
  const { feeds, draws } = parts[index] ?? {};
  return draws && (!feeds || draws.currentA > feeds.currentA) ? draws : feeds;
}

/** A worst current that is worth telling: the solver's answer for a conductor that carries nothing is dust, not 0. */
export function worthTelling(worst: WorstOf | undefined): WorstOf | undefined {
  return worst && worst.currentA >= leastToldA ? worst : undefined;
}

const leastToldA = 1e-3;

/**
 * Whether a current that was solved for lies above its limit. The solver's answer is true to about 1e-9 of itself:
 * what is exactly at its limit is within it.
 */
export function isAbove(currentA: number, limitA: number): boolean {
  return currentA > limitA * (1 + solverBlur);
}

const solverBlur = 1e-9;
