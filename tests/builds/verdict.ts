import type { Severity } from "../../library/rules/finding.ts";
import type { CheckedPlan, PlacedFinding } from "../../server/evaluate/checked-plan.ts";

/** More pieces of information than these hide each other. */
const mostInformation = 5;

/**
 * The verdict on a build, in the comments above its first statement:
 *
 *     // Expected: error protection/above-conductor at deck lamps
 *     // Because: IEC 60364-4-43, 433.1: the rating is at most the ampacity; 16 AWG may carry 25 A.
 *     // May follow: warning protection/does-not-clear at deck lamps
 *     // Not met yet: the rule does not exist
 *
 * An expected finding that has no rule yet is written in words: `error (reversed polarity) at deck lamps`. Alternatives for the
 * place are written with "or". A plan without "Expected" is clean.
 */
export interface Verdict {
  readonly expected: readonly ExpectedFinding[];
  /** Clause and reason. */
  readonly because: string;
  /** Consequences that may be reported beside the cause. */
  readonly mayFollow: readonly ExpectedFinding[];
  /** The reason why the code does not agree yet. */
  readonly notMetYet: string | undefined;
}

interface ExpectedFinding {
  readonly severity: Severity;
  /** Undefined: a kind of finding in words. */
  readonly rule: string | undefined;
  readonly subjects: readonly string[];
  readonly text: string;
}

export function readVerdict(plan: string): Verdict {
  const statements = new Map<string, string[]>();
  let last: string[] | undefined;
  for (const line of plan.split("\n")) {
    const [, name, text] = /^\/\/ (Expected|Because|May follow|Not met yet): (.+)$/.exec(line) ?? [];
    const [, more] = /^\/\/ {2,}(.+)$/.exec(line) ?? [];
    if (name && text) {
      last = [...(statements.get(name) ?? []), text];
      statements.set(name, last);
    } else if (last && more) last[last.length - 1] += ` ${more}`;
    else last = undefined;
  }
  return {
    expected: (statements.get("Expected") ?? []).map(readExpected),
    because: (statements.get("Because") ?? []).join(" "),
    mayFollow: (statements.get("May follow") ?? []).map(readExpected),
    notMetYet: statements.get("Not met yet")?.join(" "),
  };
}

function readExpected(text: string): ExpectedFinding {
  const [, severity, kind, subjects] =
    /^(error|warning|info|hint) (\S+\/\S+|\(.+?\)) at (.+)$/.exec(text) ?? [];
  if (!severity || !kind || !subjects) throw new Error(`No verdict: ${text}`);
  const rule = kind.startsWith("(") ? undefined : kind;
  return { severity: severity as Severity, rule, subjects: subjects.split(" or "), text };
}

/** Where the findings differ from the verdict, in words; none if they agree. */
export function disagreements({ expected, mayFollow }: Verdict, plan: CheckedPlan): string[] {
  const findings = plan.findings.filter(({ finding }) => finding.accepted === undefined);
  const follows = (finding: PlacedFinding) => mayFollow.some((one) => fits(one, finding));
  const isFound = (one: ExpectedFinding) =>
    findings.some((finding) => fits(one, finding) && !follows(finding));
  const isForeseen = (finding: PlacedFinding) =>
    [...expected, ...mayFollow].some((one) => fits(one, finding));
  const information = findings.filter(
    ({ finding }) => finding.severity === "info" || finding.severity === "hint",
  );
  const unexpected = findings.filter(
    (found) => !information.includes(found) && found.finding.followsFrom === undefined && !isForeseen(found),
  );
  return [
    ...expected.filter((one) => !isFound(one)).map(({ text }) => `missed: ${text}`),
    ...unexpected.map(
      ({ finding, subjects, message }) =>
        `not expected: ${finding.severity} ${finding.rule} at ${subjects.join(", ")}: ${message}`,
    ),
    ...(information.length > mostInformation
      ? information.map(({ message }) => `more than ${mostInformation} pieces of information: ${message}`)
      : []),
  ];
}

function fits({ severity, rule, subjects }: ExpectedFinding, found: PlacedFinding): boolean {
  return (
    found.finding.severity === severity &&
    (rule === undefined || found.finding.rule === rule) &&
    found.subjects.some((subject) => subjects.includes(subject))
  );
}
