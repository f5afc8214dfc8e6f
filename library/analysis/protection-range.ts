import type { Run } from "../model/run.ts";
import { ratingBetweenLoadAndConductor, ratingOverContinuousLoad } from "../standards/protection-rules.ts";
import type { Ampacity, ProtectionRange } from "./circuit-result.ts";
import { type Family, smallestRatingBetween } from "./made-ratings.ts";
import { withoutDust } from "./rounding-dust.ts";

/**
 * Ratings that carry the load and protect the conductor.
 *
 *     I_load ≤ I_rating ≤ I_max;   aim: I_rating ≥ 1.25 · I_load for a continuous load, all in A
 *
 * Both bounds: IEC 60364-4-43, 433.1 (from memory), with the ampacity I_max after all factors. Stricter than 33 CFR
 * 183.455(c)(1), which allows 150 % of the table below 50 V. Aim: NFPA 70, 210.20(A). No upper bound and no best rating
 * if the ampacity cannot be judged.
 */
export function protectionRangeOf(circuit: Run, ampacity: Ampacity): ProtectionRange {
  const loadA = withoutDust(circuit.loadA);
  const maxA = ampacity.judged ? ampacity.ampacityA : undefined;
  const aimA = circuit.continuous ? withoutDust(ratingOverContinuousLoad.factor * loadA) : loadA;
  const bestRatingA = bestRating({ aimA, maxA }, circuit.protection?.family);
  return { minA: loadA, maxA, aimA, bestRatingA, source: ratingBetweenLoadAndConductor };
}

/**
 * The smallest made rating that reaches the aim and protects the conductor, A, of one family or of any. Undefined:
 * there is none.
 */
export function bestRating(
  range: Pick<ProtectionRange, "aimA" | "maxA">,
  family?: Family,
): number | undefined {
  return range.maxA === undefined ? undefined : smallestRatingBetween(range.aimA, range.maxA, family);
}
