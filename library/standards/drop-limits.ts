import type { Citation } from "./citation.ts";

/** Panel feeds, navigation lights, bilge pumps and blowers, and other loads that are vital or sensitive to a drop. */
export const criticalDropLimit = {
  source: {
    document: "ISO 10133 (Small craft, extra-low-voltage d.c. installations)",
    section: "4.8",
    edition: "2012",
    authority: "standard",
    confirmed: "read",
  } satisfies Citation,
  percentOfNominal: 3,
} as const;

/** Inverters and the inputs of chargers. */
export const converterDropLimit = {
  source: {
    document: "Common practice, no source",
    section: "",
    authority: "common practice",
    confirmed: "memory",
    note: "ISO 10133 4.8 does not list inverters and chargers.",
  } satisfies Citation,
  percentOfNominal: 3,
} as const;

/** Everything else. */
export const ordinaryDropLimit = {
  source: {
    document: "Common practice, no source",
    section: "",
    authority: "common practice",
    confirmed: "memory",
  } satisfies Citation,
  percentOfNominal: 10,
} as const;

/** A limit that the circuit or its build states replaces both. */
export const statedDropLimit: Citation = {
  document: "Limit stated in the plan",
  section: "",
  authority: "stated in the plan",
  confirmed: "read",
};

/**
 * A drop meets its limit up to this far above it. Lengths are measured to some centimetres and copper is drawn to some percent: 3.04 %
 * and 3 % are the same build. Only drop limits have a tolerance; ampacity, fuses, withstand and interrupting have none.
 */
export const dropLimitTolerance = {
  source: {
    document: "Common practice, no source",
    section: "",
    authority: "common practice",
    confirmed: "memory",
  } satisfies Citation,
  percentagePoints: 0.05,
} as const;
