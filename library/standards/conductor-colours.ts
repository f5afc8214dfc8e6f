import type { Citation } from "./citation.ts";

/** What colours of insulation mean on direct current. */
export const conductorColours = {
  source: {
    document: "ISO 10133",
    section: "identification of conductors",
    authority: "standard",
    confirmed: "memory",
    note: "Black negatives must be told apart from black conductors of mains wiring. Superseded by ISO 13297.",
  } satisfies Citation,
  /** Or any other that is not reserved. */
  positive: "red",
  negative: ["black", "yellow"],
  /** For bonding, and for nothing else. */
  bonding: ["green", "green with yellow stripe"],
} as const;
