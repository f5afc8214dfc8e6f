import type { Citation } from "./citation.ts";

/** The hull of a boat is no conductor of its system, except for the start of an engine. */
export const hullReturn: Citation = {
  document: "46 CFR 111 (Electric systems on vessels, general requirements)",
  section: "111.05-11(a)",
  authority: "regulation",
  confirmed: "memory",
  note: "Excepts systems that are local to an engine and its start; binds inspected vessels, taken over for others.",
};
