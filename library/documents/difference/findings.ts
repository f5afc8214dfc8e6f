import type { Finding } from "../../rules/finding.ts";
import { messageOf } from "../../rules/message-of.ts";
import type { JudgedPlan } from "../../rules/rule.ts";
import type { Matching } from "./match.ts";
import type { Subject } from "./subject.ts";

/** Findings that came, that went, and that remain with another weight. Moved lines change nothing. */
export interface FindingsDifference {
  readonly came: readonly DiffFinding[];
  readonly went: readonly DiffFinding[];
  readonly changed: readonly ChangedFinding[];
  /** In both plans, and of the same weight; accepted ones counted apart. */
  readonly kept: { readonly open: number; readonly accepted: number };
}

export interface DiffFinding {
  readonly rule: string;
  readonly severity: Finding["severity"];
  /** As the plan gives it, like the message: not yet fit to be shown. */
  readonly subject: string;
  readonly message: string;
  /** The builder's reason, if it is accepted. */
  readonly accepted: string | undefined;
  /** State of its subject, for "with the circuit that went". */
  readonly of: "kept" | "removed" | "added";
}

interface ChangedFinding {
  readonly before: DiffFinding;
  readonly after: DiffFinding;
  /** More serious than before: of a higher severity, or no longer accepted. */
  readonly worse: boolean;
}

/** The subjects that both plans have, and those that only one of them has. */
type MatchedRecords = Pick<Matching, "pairs" | "removed" | "added">;

type Judged = JudgedPlan & { readonly findings: readonly Finding[] };

/** Findings are the same if their rule, subject and property are, even with other figures. */
export function compareFindings(before: Judged, after: Judged, matched: MatchedRecords): FindingsDifference {
  const after2before = new Map(matched.pairs.map((pair) => [pair.after.record, pair.before.record]));
  const before2after = new Map([...after2before].map(([other, one]) => [one, other]));
  const [removed, added] = [recordsOf(matched.removed), recordsOf(matched.added)];
  const old = before.findings.map((finding) => placed(finding, removed, "removed"));
  const now = after.findings.map((finding) => placed(finding, added, "added"));
  // A subject that could not be read cannot be matched; its name identifies it.
  const unread = ({ subject }: Finding) => `unread ${subject}`;
  const subjectBefore = (finding: Finding): unknown => {
    const record = recordOf(finding);
    if (record === undefined) return "the plan";
    return before2after.has(record) || removed.has(record) ? record : unread(finding);
  };
  const subjectAfter = (finding: Finding): unknown => {
    const record = recordOf(finding);
    if (record === undefined) return "the plan";
    return after2before.get(record) ?? (added.has(record) ? `new ${record}` : unread(finding));
  };
  const open = { old: new Set(old), now: new Set(now) };
  const both: [Placed, Placed][] = [];
  // By the figures too, then by the property, then by the subject alone: a size that was `gauge` may be `mm2` now.
  const looks: readonly ((one: Placed, subject: unknown) => string)[] = [
    ({ finding, told }, subject) => key(finding.rule, subject, propertyOf(finding), told.message),
    ({ finding }, subject) => key(finding.rule, subject, propertyOf(finding)),
    ({ finding }, subject) => key(finding.rule, subject),
  ];
  for (const look of looks) {
    const waiting = new Map<string, Placed[]>();
    for (const one of open.old) {
      const print = look(one, subjectBefore(one.finding));
      waiting.set(print, [...(waiting.get(print) ?? []), one]);
    }
    for (const other of open.now) {
      const one = waiting.get(look(other, subjectAfter(other.finding)))?.shift();
      if (!one) continue;
      open.old.delete(one);
      open.now.delete(other);
      both.push([one, other]);
    }
  }
  const changed = both.flatMap(([one, other]) => changedWeight(one.told, other.told));
  const same = both.filter(([one, other]) => changedWeight(one.told, other.told).length === 0);
  const accepted = same.filter(([, { told }]) => told.accepted !== undefined).length;
  return {
    came: [...open.now].map(({ told }) => told).sort(worstFirst),
    went: [...open.old].map(({ told }) => told).sort(worstFirst),
    changed: changed.sort((one, other) => worstFirst(one.after, other.after)),
    kept: { open: same.length - accepted, accepted },
  };
}

/** True if a reader of a pull request should stop here: an error or a warning that is new or became worse. */
export function somethingWorse({ came, changed }: FindingsDifference): boolean {
  const matters = ({ severity, accepted }: DiffFinding) =>
    accepted === undefined && (severity === "error" || severity === "warning");
  return came.some(matters) || changed.some(({ worse, after }) => worse && matters(after));
}

interface Placed {
  readonly finding: Finding;
  readonly told: DiffFinding;
}

function placed(finding: Finding, alone: ReadonlySet<number>, of: "removed" | "added"): Placed {
  const { rule, severity, subject, accepted } = finding;
  const message = messageOf(finding);
  const about = alone.has(recordOf(finding) ?? -1) ? of : "kept";
  return { finding, told: { rule, severity, subject, message, accepted, of: about } };
}

function recordsOf(subjects: readonly Subject[]): ReadonlySet<number> {
  return new Set(subjects.flatMap(({ record }) => record ?? []));
}

/** A finding from running the plan belongs to the plan. */
function recordOf({ at }: Finding): number | undefined {
  return "record" in at ? at.record : undefined;
}

function propertyOf({ at }: Finding): string {
  return "record" in at ? (at.path[0] ?? "") : "";
}

function key(...parts: readonly unknown[]): string {
  return JSON.stringify(parts);
}

const order = { error: 0, warning: 1, info: 2, hint: 3, accepted: 4 } as const;

function weightOf({ severity, accepted }: DiffFinding): number {
  return order[accepted === undefined ? severity : "accepted"];
}

function worstFirst(one: DiffFinding, other: DiffFinding): number {
  return weightOf(one) - weightOf(other);
}

function changedWeight(before: DiffFinding, after: DiffFinding): ChangedFinding[] {
  if (before.severity === after.severity && before.accepted === after.accepted) return [];
  return [{ before, after, worse: weightOf(after) < weightOf(before) }];
}
