import type { Citation } from "./citation.ts";

/**
 * Up to which current batteries are usually charged where their maker says nothing, in parts of the capacity: 0.2 of 100 Ah
 * are 20 A. The upper ends of the usual ranges. Rules of thumb, recalled; no limit of any document.
 */
export const usualChargeRates = {
  source: {
    document: "Common practice, no source",
    section: "",
    authority: "common practice",
    confirmed: "memory",
    note: "Usual bulk charging rates of each chemistry, recalled. The maker's figure goes before them.",
  } satisfies Citation,
  greatestPerAh: { "flooded lead-acid": 0.25, AGM: 0.4, gel: 0.2, LiFePO4: 0.5 },
} as const;
