import type { Termination } from "../../plan/termination.ts";

/**
 * The fitting at the end of a conductor for a terminal: "ring terminal, stud M8", "ferrule", "receptacle, 6.3 mm", "not stated".
 */
export function fittingInWords(termination: Termination | undefined): string {
  if (termination === undefined) return "not stated";
  if (termination === "screw clamp") return "ferrule";
  if (termination === "6.3 mm tab") return "receptacle, 6.3 mm";
  return `ring terminal, stud ${termination}`;
}

/** The same in a narrow column: "M8 ring", "ferrule", "6.3 mm receptacle"; empty if it is not stated. */
export function fittingInShort(termination: Termination | undefined): string | null {
  if (termination === undefined) return null;
  if (termination === "screw clamp") return "ferrule";
  if (termination === "6.3 mm tab") return "6.3 mm receptacle";
  return `${termination} ring`;
}
