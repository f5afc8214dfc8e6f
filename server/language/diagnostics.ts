import {
  type Diagnostic,
  type DiagnosticRelatedInformation,
  DiagnosticSeverity,
  DiagnosticTag,
} from "vscode-languageserver-types";
import type { Severity } from "../../library/rules/finding.ts";
import type { PlacedFinding } from "../evaluate/checked-plan.ts";
import { shownFindings } from "../evaluate/shown-findings.ts";
import type { Uri } from "../evaluate/workspace.ts";
import { plainWords } from "./plain-words.ts";
import type { PlanInView } from "./plan-in-view.ts";

/** The name beside every squiggle. */
export const source = "loomwright";

/**
 * The findings of a plan that are in one file, as squiggles. Only findings whose text is unedited since are given. For thousands
 * of one rule, the worst ones are shown, with the number of others.
 * An accepted finding stays visible as information with the builder's reason, and never counts as an error.
 */
export function diagnostics(view: PlanInView, uri: Uri): Diagnostic[] {
  const here = view.plan.findings.filter(({ place }) => place.uri === uri);
  const { shown, leftOut } = shownFindings(here, ({ finding: { rule, severity, accepted } }) => ({
    rule,
    file: uri,
    severity,
    accepted: accepted !== undefined,
  }));
  return [
    ...shown.flatMap((placed) => toDiagnostic(view, placed) ?? []),
    ...leftOut.flatMap((one) => closingDiagnostic(view, one) ?? []),
  ];
}

/** At the first finding that is not shown: the number of others of its kind. */
function closingDiagnostic(view: PlanInView, leftOut: readonly PlacedFinding[]): Diagnostic | undefined {
  const first = leftOut.find(({ place }) => view.range(place));
  const diagnostic = first && toDiagnostic(view, first);
  if (!diagnostic) return undefined;
  const { relatedInformation: _, tags: __, ...rest } = diagnostic;
  return {
    ...rest,
    message: `${rest.message} And ${(leftOut.length - 1).toLocaleString("en-GB")} more of this kind in this file; loomwright check --format json lists all.`,
  };
}

/** One finding as a squiggle; undefined if its text was edited since. Code actions name the findings they solve with it. */
export function toDiagnostic(view: PlanInView, placed: PlacedFinding): Diagnostic | undefined {
  const range = view.range(placed.place);
  if (!range) return undefined;
  const { finding } = placed;
  const related = placed.related.flatMap((place): DiagnosticRelatedInformation[] => {
    const at = view.range(place.place);
    if (!at) return [];
    return [
      { location: { uri: view.client(place.place.uri).uri, range: at }, message: plainWords(place.text) },
    ];
  });
  return {
    range,
    severity: severityOf(shownAs(finding)),
    code: finding.rule,
    codeDescription: { href: rulePage(finding.rule) },
    source,
    message: plainWords(messageOf(placed)),
    ...(related.length > 0 ? { relatedInformation: related } : {}),
    ...(withoutEffect(placed) ? { tags: [DiagnosticTag.Unnecessary] } : {}),
  };
}

/** With the circuit's name first: a list of findings shows no line of the plan that would name it. */
function messageOf(placed: PlacedFinding): string {
  const { at, subject, accepted, followsFrom } = placed.finding;
  // The compiler checks TypeScript by itself, and JavaScript only if it is asked to.
  const isCompiled = /\.[mc]?tsx?$/i.test(placed.place.uri);
  const own = (isCompiled && placed.besideCompiler) || placed.message;
  const message = followsFrom ? `${own} Follows from ${followsFrom.rule} at ${followsFrom.subject}.` : own;
  const name = "record" in at && subject !== "the build" ? subject : "";
  if (accepted !== undefined) return `${name === "" ? "" : `${name}, `}accepted: ${accepted}. ${message}`;
  return name === ""
    ? message
    : `${name}: ${message.replace(/^[A-Z](?=[a-z ])/, (first) => first.toLowerCase())}`;
}

/** The page of a rule, of the running version: the pages are beside the bundle. */
export function rulePage(rule: string): string {
  return new URL(`../dist/rules/${rule}.md`, import.meta.url).href;
}

const severities: Record<Severity, DiagnosticSeverity> = {
  error: DiagnosticSeverity.Error,
  warning: DiagnosticSeverity.Warning,
  info: DiagnosticSeverity.Information,
  hint: DiagnosticSeverity.Hint,
};

function severityOf(severity: Severity): DiagnosticSeverity {
  return severities[severity];
}

/** A finding that is folded under its cause is no problem of its own in the editor's list. */
function shownAs({ severity, accepted, followsFrom }: PlacedFinding["finding"]): Severity {
  if (followsFrom?.folded) return "hint";
  return accepted === undefined ? severity : acceptedAs(severity);
}

/** Accepted findings stay visible; a hint has no squiggle to begin with, and gets none by being accepted. */
function acceptedAs(severity: Severity): Severity {
  return severity === "hint" ? "hint" : "info";
}

/** A property that no DSL function knows has no effect on the plan: the editor fades it. A test fixes the wording. */
function withoutEffect({ finding }: PlacedFinding): boolean {
  if (finding.rule !== "plan/invalid-value") return false;
  const { wrong } = finding.values as { readonly wrong?: unknown };
  return typeof wrong === "string" && wrong.startsWith("is not a property of ");
}
