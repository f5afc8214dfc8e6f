import type { Citation } from "./citation.ts";

/** Meaning of insulation colours for direct current. */
export const conductorColours = {
  source: {
    document: "ISO 10133",
    section: "identification of conductors",
    authority: "standard",
    confirmed: "memory",
    note: "Black negatives must be distinguished from black conductors of mains wiring. Superseded by ISO 13297.",
  } satisfies Citation,
  /** Any other colour that is not reserved is allowed too. */
  positive: "red",
  negative: ["black", "yellow"],
  /** For bonding only. */
  bonding: ["green", "green with yellow stripe"],
} as const;
