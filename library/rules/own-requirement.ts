import type { Citation } from "../standards/citation.ts";

/**
 * The source of a rule about the plan as a text, not about the wiring: no document asks for it. The note says what
 * it rests on.
 */
export function ownRequirement(note: string): Citation {
  return {
    document: "Common practice, no source",
    section: "",
    authority: "common practice",
    confirmed: "memory",
    note,
  };
}
