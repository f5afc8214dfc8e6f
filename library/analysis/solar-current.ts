import { solarCurrentFactors } from "../standards/solar-factors.ts";

/** What panels side by side can drive into a conductor, and what the conductor should therefore be made for, A. */
export interface SolarCurrent {
  /** 1.25 · Isc of all strings: more sun than at standard test conditions. */
  readonly greatestA: number;
  /** 1.25 times that again, for hours of it: what conductor and fuse must bear. */
  readonly neededA: number;
}

/**
 *     I_max = 1.25 · Isc · n;   I_needed = 1.25 · I_max = 1.5625 · Isc · n     Isc of one string, A; n strings side by side
 *
 * NFPA 70, 690.8(A)(1) and 690.8(B). The product is not rounded to the 1.56 that is often printed.
 * The 125 % is held here against the ampacity after all factors, which is stricter than the code asks.
 */
export function solarCurrent(shortCircuitA: number, strings: number): SolarCurrent {
  const greatestA = solarCurrentFactors.irradiance * shortCircuitA * strings;
  return { greatestA, neededA: solarCurrentFactors.continuous * greatestA };
}
