import type { Finding } from "../../../library/rules/finding.ts";

export const severityOrder = { error: 0, warning: 1, info: 2, hint: 3 };

/** Open findings by their key, each with its worst severity. */
export function keysOf(findings: readonly Finding[]): ReadonlyMap<string, Finding["severity"]> {
  const keys = new Map<string, Finding["severity"]>();
  for (const finding of findings) {
    if (finding.accepted !== undefined) continue;
    const key = keyOf(finding);
    const was = keys.get(key);
    if (was === undefined || severityOrder[finding.severity] < severityOrder[was])
      keys.set(key, finding.severity);
  }
  return keys;
}

/**
 * The rule, the circuit, and the property, or the record that it is about beside its place: both ends of a circuit may be wrongly protected. The ends of a cable are one place: a
 * finding about the whole cable may move from one to the other.
 */
export function keyOf({ rule, at, ofRecord }: Finding): string {
  if (!("record" in at)) return `${rule}\nproblem ${at.problem}`;
  const [property = ""] = at.path;
  const of = ofRecord === undefined ? "" : `\nof ${ofRecord}`;
  return `${rule}\n${at.record}\n${property === "to" ? "from" : property}${of}`;
}
