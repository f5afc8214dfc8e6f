import type { Citation } from "../standards/citation.ts";

/** The source of a rule about the plan as a text, not about the wiring: no document requires it. The note gives the reason. */
export function ownRequirement(note: string): Citation {
  return {
    document: "Common practice, no source",
    section: "",
    authority: "common practice",
    confirmed: "memory",
    note,
  };
}
