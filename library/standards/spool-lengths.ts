import type { Citation } from "./citation.ts";

/** Usual lengths of spools, for builds that state none: metric sizes in m, AWG sizes in ft. */
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
