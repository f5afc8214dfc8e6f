import type { Finding, Severity } from "../../rules/finding.ts";
import { ruleById } from "../../rules/registry.ts";

/** Findings that were not there before, or weigh more than before. The same rule at the same value about the same thing is the same. */
export function addedFindings(before: readonly Finding[], after: readonly Finding[]): readonly Finding[] {
  const known = new Map<string, Severity[]>();
  for (const finding of before) {
    const severities = known.get(keyOf(finding)) ?? [];
    severities.push(finding.severity);
    known.set(keyOf(finding), severities);
  }
  // The heaviest is held against the heaviest: one error and one hint are no excuse for two errors.
  const heaviestFirst = after.toSorted((one, other) => weight[other.severity] - weight[one.severity]);
  for (const severities of known.values()) severities.sort((one, other) => weight[other] - weight[one]);
  return heaviestFirst.filter((finding) => {
    const was = known.get(keyOf(finding))?.shift();
    return was === undefined || weight[finding.severity] > weight[was];
  });
}

/** How many findings, hints aside, are there before and after, with other figures: better or worse, only a reader can tell. */
export function foundWithOtherFigures(before: readonly Finding[], after: readonly Finding[]): number {
  const figures = ({ rule, values }: Finding) => ruleById(rule)?.message(values) ?? "";
  const all = new Set(before.map((finding) => keyOf(finding) + figures(finding)));
  const told = after.filter(({ severity }) => severity !== "hint");
  return told.filter((finding) => !all.has(keyOf(finding) + figures(finding))).length;
}

const weight: Readonly<Record<Severity, number>> = { hint: 0, info: 1, warning: 2, error: 3 };

/** Accepted or not makes two findings: what was accepted before may not come back open. */
function keyOf({ rule, at, subject, accepted }: Finding): string {
  const place = "record" in at ? [at.record, ...at.path] : ["problem", at.problem];
  return JSON.stringify([rule, subject, accepted ?? null, place]);
}
