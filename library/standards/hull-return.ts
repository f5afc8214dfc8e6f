import type { Citation } from "./citation.ts";

/** The hull of a boat is no conductor of its system, except for the start of an engine. */
export const hullReturn: Citation = {
  document: "46 CFR 111 (Electric systems on vessels, general requirements)",
  section: "111.05-11(a)",
  authority: "regulation",
  confirmed: "read",
  note: "The hull must not carry current as a conductor; excepted are cathodic protection and limited, locally grounded systems such as those that start an engine. Binds inspected vessels, as 120.370(a) does with the same words; taken over for others.",
};
