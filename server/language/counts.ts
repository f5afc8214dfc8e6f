import { contentsOf, networkStateInWords } from "../../library/documents/network-summary.ts";
import { counted } from "../../library/rules/wording/format-number.ts";
import type { CheckedPlan } from "../evaluate/checked-plan.ts";
import type { Counts } from "./messages.ts";

/** The counts of a plan, for the status and the code lens. */
export function countsOf(plan: CheckedPlan): Counts {
  const open = plan.findings.filter(({ finding }) => finding.accepted === undefined);
  const of = (severity: string) => open.filter(({ finding }) => finding.severity === severity).length;
  const { model, network } = plan.judgement;
  return {
    circuits: model.circuits.length + model.unjudged.length,
    ...(network ? contentsOf(network.network) : { parts: 0, cables: 0 }),
    errors: of("error"),
    warnings: of("warning"),
    infos: of("info"),
    hints: of("hint"),
    accepted: plan.findings.length - open.length,
  };
}

/** "5 circuits, 12 parts, 9 cables, 1 warning", and the unchecked parts of the plan. */
export function planInWords(plan: CheckedPlan): string {
  const counts = countsOf(plan);
  return [
    contentsInWords(counts) || "no circuits",
    countsInWords(counts),
    networkStateInWords(plan.judgement),
    plan.judgement.problems.length > 0 ? "not checked to the end" : "",
  ]
    .filter((part) => part !== "")
    .join(", ");
}

/** "2 circuits"; "5 circuits, 12 parts, 9 cables"; empty for an empty plan. */
export function contentsInWords({ circuits, parts, cables }: Counts): string {
  return [several(circuits, "circuit"), several(parts, "part"), several(cables, "cable")]
    .filter((part) => part !== "")
    .join(", ");
}

/** "2 errors, 1 warning"; "no findings"; "nothing to check" for an empty plan. Hints are left to their own place in the text, accepted findings are named. */
export function countsInWords(counts: Counts): string {
  const parts = [
    several(counts.errors, "error"),
    several(counts.warnings, "warning"),
    several(counts.infos, "note"),
    several(counts.hints, "hint"),
    counts.accepted > 0 ? `${counts.accepted} accepted` : "",
  ].filter((part) => part !== "");
  if (parts.length > 0) return parts.join(", ");
  // A plan whose functions are never called would otherwise look checked.
  return contentsInWords(counts) === "" ? "nothing to check" : "no findings";
}

/** "1 circuit", "20 circuits"; empty for none. */
export function several(count: number, what: string): string {
  return count === 0 ? "" : counted(count, what);
}
