import type { Citation } from "./citation.ts";

/** Usual lengths of spools, for builds that state none: where wire is sold by the metre, and where by the foot. */
export const usualSpoolLengths = {
  source: {
    document: "Common practice, no source",
    section: "",
    authority: "common practice",
    confirmed: "memory",
  } satisfies Citation,
  soldM: [5, 10, 25, 50, 100],
  soldFt: [25, 50, 100, 250],
} as const;
