import { note2Bundling } from "./ampacity-33cfr183-425.ts";
import type { Citation } from "./citation.ts";

/** Conductors that share a channel warm each other. The factors are those of {@link note2Bundling}. */
export const sharedChannel = {
  source: note2Bundling.source,
  /** From this nominal voltage on the regulation asks for the factors. */
  demandedFromV: 50,
  /** A shorter stretch counts for nothing. */
  leastLengthIn: 24,
  leastLengthSource: {
    document: "NFPA 70 (National Electrical Code)",
    section: "310.15",
    authority: "standard",
    confirmed: "memory",
    note: "Conductors that lie together over at most 24 in are not derated there. Written for fixed wiring of buildings.",
  } satisfies Citation,
} as const;
