import type { Citation } from "./citation.ts";

/** The least size of conductors that may be put in parallel. */
export const parallelConductors = {
  source: {
    document: "NFPA 70 (National Electrical Code)",
    section: "310.10(G), 310.10(H) before 2020",
    authority: "standard",
    confirmed: "read",
    note: "Read in reproductions. 1/0 AWG and larger, of the same length, material, size and termination. Written for fixed wiring of buildings.",
  } satisfies Citation,
  leastAwg: "1/0",
  /** The metric size that is sold as 1/0 AWG. */
  leastMm2: 50,
} as const;
