import type { Citation } from "./citation.ts";

/** Lengths in which conductors are usually sold where a builder states none: metric ones in m, AWG ones in ft. */
export const usualSpoolLengths = {
  source: {
    document: "Common practice, no source",
    section: "",
    authority: "common practice",
    confirmed: "memory",
  } satisfies Citation,
  metricM: [5, 10, 25, 50, 100],
  awgFt: [25, 50, 100, 250],
} as const;
