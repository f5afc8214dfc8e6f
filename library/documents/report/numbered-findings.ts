import type { Severity } from "../../rules/finding.ts";
import type { NumberedFinding, ReportFinding } from "./chapter.ts";

/** Findings with their numbers, the worst first: F1, F2 …, then the accepted ones: A1, A2 … */
export function numberFindings(findings: readonly ReportFinding[]): readonly NumberedFinding[] {
  const inOrder = severities.flatMap((severity) => findings.filter((one) => one.severity === severity));
  const numbered = (letter: string, accepted: boolean) =>
    inOrder
      .filter((finding) => (finding.accepted !== undefined) === accepted)
      .map((finding, index): NumberedFinding => ({ ...finding, number: `${letter}${index + 1}` }));
  return [...numbered("F", false), ...numbered("A", true)];
}

/** The worst first. */
const severities: readonly Severity[] = ["error", "warning", "info", "hint"];

/** "F1, F4, A2": the findings about something of this name. */
export function numbersAbout(findings: readonly NumberedFinding[], name: string): string {
  return findings
    .filter(({ subjects }) => subjects.includes(name))
    .map(({ number }) => number)
    .join(", ");
}

/** " (F1, F2)": the findings of a rule, to follow a sentence; empty if there are none. */
export function numbersOf(findings: readonly NumberedFinding[], rule: string): string {
  const numbers = findings.filter((finding) => finding.rule === rule).map(({ number }) => number);
  return numbers.length === 0 ? "" : ` (${numbers.join(", ")})`;
}
