import type { Citation } from "./citation.ts";

/**
 * Usual charge currents of batteries, for use if their maker states none, as a fraction of the capacity: 0.2 of 100 Ah
 * is 20 A. Both ends of the usual ranges. Rules of thumb, recalled; not a limit of any document.
 */
export const usualChargeRates = {
  source: {
    document: "Common practice, no source",
    section: "",
    authority: "common practice",
    confirmed: "memory",
    note: "Usual bulk charging rates of each chemistry, recalled. The maker's figure goes before them.",
  } satisfies Citation,
  leastPerAh: { "flooded lead-acid": 0.1, AGM: 0.2, gel: 0.1, LiFePO4: 0.2 },
  greatestPerAh: { "flooded lead-acid": 0.25, AGM: 0.4, gel: 0.2, LiFePO4: 0.5 },
} as const;

/**
 * Usual discharge current of batteries for hours, for use if their maker states no limit, as a fraction of the capacity. Rules of thumb,
 * recalled; not a limit of any document.
 */
export const usualDischargeRates = {
  source: {
    document: "Common practice, no source",
    section: "",
    authority: "common practice",
    confirmed: "memory",
    note: "Usual discharge rates for hours, recalled; protection circuits of LiFePO4 batteries cut off from 0.5 to 1 A per Ah. The maker's figure goes before them.",
  } satisfies Citation,
  greatestPerAh: { "flooded lead-acid": 0.25, AGM: 0.4, gel: 0.25, LiFePO4: 0.5 },
} as const;
