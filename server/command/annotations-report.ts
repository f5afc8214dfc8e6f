import { counted } from "../../library/rules/wording/format-number.ts";
import { mayHideHazard } from "../evaluate/files/passed-by.ts";
import type { CheckedPlans } from "./check-result.ts";
import { countsOf, worstFirst } from "./finding-counts.ts";
import { type PassedFile, passedInLines } from "./passed-files.ts";
import type { ReportedFinding } from "./report-schema.ts";
import { printable } from "./terminal.ts";

/**
 * Findings as the workflow commands that a continuous integration service shows beside the lines of a change: `::error
 * file=plan.ts,line=3,col=56,endColumn=58,title=winch: conductor/ampacity::…`. Worst first, because such a service shows only the
 * first ten or so of each kind; then a line with all counts, for the log. Hints are left out. An accepted finding is a notice
 * with its reason.
 */
export function annotationsReport({ plans, passedBy }: Pick<CheckedPlans, "plans" | "passedBy">): string {
  const findings = plans.flatMap((plan) => plan.findings);
  const commands = findings
    .filter(({ severity, accepted }) => severity !== "hint" || accepted !== undefined)
    .sort(worstFirst)
    .map(command);
  const counts = [
    `${counted(plans.length, "plan")}: ${countsOf(findings)}`,
    ...passedInLines(passedBy).map(({ title }) => title),
  ];
  return [
    ...passedBy.filter(mayHideHazard).map(notJudged),
    ...commands,
    ...knownOnes(passedBy),
    counts.join("; "),
    "",
  ].join("\n");
}

function notJudged({ file, why }: PassedFile): string {
  const title = escapedProperty("not judged");
  return `::error file=${escapedProperty(file)},title=${title}::${escapedMessage(printable(`${file} ${why}`))}`;
}

/** One notice for all of them: a service shows only a limited number. */
function knownOnes(passedBy: readonly PassedFile[]): string[] {
  return passedInLines(passedBy.filter((file) => !mayHideHazard(file))).map(
    ({ title, lines }) => `::notice title=${escapedProperty(title)}::${escapedMessage(lines.join("\n"))}`,
  );
}

function command(finding: ReportedFinding): string {
  const { rule, severity, subject, message, accepted, fixes } = finding;
  const kind = accepted !== undefined || severity === "info" ? "notice" : severity;
  const lines = [
    accepted === undefined ? message : `Accepted: ${accepted}`,
    ...(accepted === undefined ? [] : [message]),
    ...fixes.slice(0, 1).map((fix) => `${fix.kind === "repair" ? "Fix" : "By hand"}: ${fix.title}`),
  ];
  const properties = { ...placeOf(finding), title: printable(`${subject}: ${rule}`) };
  const written = Object.entries(properties).map(([name, value]) => `${name}=${escapedProperty(value)}`);
  return `::${kind} ${written.join(",")}::${escapedMessage(lines.map(printable).join("\n"))}`;
}

/** Includes columns only for a range within one line: the service refuses them for several lines. */
function placeOf({ file, line, column, endLine, endColumn }: ReportedFinding) {
  const columns = line === endLine ? { col: column, endColumn } : {};
  return { file, line, endLine, ...columns };
}

/** Escaped for the service: a percent sign begins an escape, and a line break would begin another command. */
function escapedMessage(text: string): string {
  return text.replaceAll("%", "%25").replaceAll("\r", "%0D").replaceAll("\n", "%0A");
}

/** In a property's value a comma would begin another property, and a colon would end them all. */
function escapedProperty(value: string | number): string {
  return escapedMessage(String(value)).replaceAll(":", "%3A").replaceAll(",", "%2C");
}
