import type { Severity } from "../../library/rules/finding.ts";
import { counted } from "../../library/rules/wording/format-number.ts";
import type { ReportedFinding } from "./report-schema.ts";

const order: Record<Severity, number> = { error: 0, warning: 1, info: 2, hint: 3 };

/** For sorting; accepted findings come last. */
export function worstFirst(a: ReportedFinding, b: ReportedFinding): number {
  const rank = (finding: ReportedFinding) => (finding.accepted === undefined ? order[finding.severity] : 4);
  return rank(a) - rank(b);
}

/** "2 errors, 1 warning, 3 accepted"; "no findings". */
export function countsOf(findings: readonly ReportedFinding[]): string {
  const open = findings.filter(({ accepted }) => accepted === undefined);
  const of = (severity: Severity) => open.filter((finding) => finding.severity === severity).length;
  const parts = [
    of("error") > 0 && counted(of("error"), "error"),
    of("warning") > 0 && counted(of("warning"), "warning"),
    of("info") > 0 && `${of("info")} for information`,
    of("hint") > 0 && counted(of("hint"), "hint"),
    open.length < findings.length && `${findings.length - open.length} accepted`,
  ].filter(Boolean);
  return parts.length > 0 ? parts.join(", ") : "no findings";
}
