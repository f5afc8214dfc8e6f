import type { Finding, Severity } from "../../rules/finding.ts";
import { messageOf } from "../../rules/message-of.ts";
import { namedByPlace } from "../difference/plan-difference.ts";

/**
 * Findings that are new, or weigh more than before. The same rule at the same value about the same subject is the same finding.
 */
export function addedFindings(before: readonly Finding[], after: readonly Finding[]): readonly Finding[] {
  const known = new Map<string, Severity[]>();
  for (const finding of before) {
    const severities = known.get(keyOf(finding)) ?? [];
    severities.push(finding.severity);
    known.set(keyOf(finding), severities);
  }
  // Compares the heaviest with the heaviest: one error and one hint are no excuse for two errors.
  const heaviestFirst = after.toSorted((one, other) => weight[other.severity] - weight[one.severity]);
  for (const severities of known.values()) severities.sort((one, other) => weight[other] - weight[one]);
  return heaviestFirst.filter((finding) => {
    const was = known.get(keyOf(finding))?.shift();
    return was === undefined || weight[finding.severity] > weight[was];
  });
}

/** Number of findings, hints aside, that remain with other figures: only a reader can judge whether they are better or worse. */
export function foundWithOtherFigures(before: readonly Finding[], after: readonly Finding[]): number {
  const all = new Set(before.map((finding) => keyOf(finding) + messageOf(finding)));
  const told = after.filter(({ severity }) => severity !== "hint");
  return told.filter((finding) => !all.has(keyOf(finding) + messageOf(finding))).length;
}

const weight: Readonly<Record<Severity, number>> = { hint: 0, info: 1, warning: 2, error: 3 };

/** Accepted and open make two findings: one that was accepted before may not come back open. */
function keyOf({ rule, at, ofRecord, subject, accepted }: Finding): string {
  const place = "record" in at ? [at.record, ...at.path] : ["problem", at.problem];
  // A part without a name is named by its line, which is another one once lines are added above it.
  const about = namedByPlace(subject) ? "" : subject;
  return JSON.stringify([rule, about, ofRecord ?? null, accepted ?? null, place]);
}
