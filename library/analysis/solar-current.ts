import { solarCurrentFactors } from "../standards/solar-factors.ts";

/** The current that parallel strings can drive into a conductor, and the ampacity the conductor should therefore have, A. */
export interface SolarCurrent {
  /** 1.25 · Isc of all strings: more sun than at standard test conditions. */
  readonly greatestA: number;
  /** 1.25 times that again, for hours of it: the requirement on conductor and fuse. */
  readonly neededA: number;
}

/**
 *     I_max = 1.25 · Isc · n;   I_needed = 1.25 · I_max = 1.5625 · Isc · n     Isc of one string, A; n strings in parallel
 *
 * NFPA 70, 690.8(A)(1) and 690.8(B). The product is not rounded to the 1.56 that is often printed.
 * The 125 % is compared here with the ampacity after all factors, which is stricter than the code requires.
 */
export function solarCurrent(shortCircuitA: number, strings: number): SolarCurrent {
  const greatestA = solarCurrentFactors.irradiance * shortCircuitA * strings;
  return { greatestA, neededA: solarCurrentFactors.continuous * greatestA };
}
