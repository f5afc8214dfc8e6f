import type { Network } from "./model/network.ts";
import type { Finding } from "./rules/finding.ts";
import type { Found, JudgedPlan, Rule } from "./rules/rule.ts";

/** A finding, the rule that made it, and its form as the rule made it. */
export interface WithRule {
  readonly finding: Finding;
  readonly found: Found<unknown>;
  readonly rule: Rule<unknown>;
}

/**
 * Findings that follow from another one name it. `resultsOf`: the results of the plan with a mended network, asked for only if a
 * finding has one.
 */
export function withCauses(all: readonly WithRule[], resultsOf: (mended: Network) => JudgedPlan): Finding[] {
  const causes = causesByRecord(all, resultsOf);
  if (causes.size === 0) return all.map(({ finding }) => finding);
  return all.map((one) => {
    const { finding, rule } = one;
    const cause = causeOf(causes, one);
    if (!cause) return finding;
    const { rule: id, subject, accepted } = cause.finding;
    const followsFrom = { rule: id, subject, folded: rule.neverFolded !== true };
    // A current that is gone with its cause needs no thicker conductor.
    const fixes = cause.isGone && accepted === undefined ? [] : finding.fixes;
    return { followsFrom, ...finding, fixes };
  });
}

interface CauseOfOthers extends WithRule {
  /** Whether a finding, with its severity, is gone if the cause is mended; undefined if that is not worked out. */
  readonly isGone: ((of: WithRule) => boolean) | undefined;
}

/** By record of the findings that they explain. */
type Causes = ReadonlyMap<number, readonly CauseOfOthers[]>;

function causesByRecord(all: readonly WithRule[], resultsOf: (mended: Network) => JudgedPlan): Causes {
  const causes = new Map<number, CauseOfOthers[]>();
  const explained = new Set<ReadonlySet<number>>();
  for (const one of all) {
    const { explains = [], asIfMended } = one.found;
    const islands = explains.filter((island) => asIfMended || !explained.has(island));
    if (islands.length === 0) continue;
    const cause = { isGone: asIfMended && goneIn(() => resultsOf(asIfMended())), ...one };
    for (const island of islands) {
      if (!asIfMended) explained.add(island);
      for (const record of island) causes.set(record, [...(causes.get(record) ?? []), cause]);
    }
  }
  return causes;
}

/** A cause that follows from another one explains no finding of its own. */
function causeOf(causes: Causes, of: WithRule): CauseOfOthers | undefined {
  const { finding, rule } = of;
  const record = "record" in finding.at ? finding.at.record : undefined;
  if (record === undefined) return undefined;
  return causes.get(record)?.find((cause) => {
    if (cause.rule === rule || !(rule.restsOn || cause.found.isOfConnections)) return false;
    const explains = cause.isGone ? cause.isGone(of) : rule.restsOn === "voltages";
    return explains && !causeOf(causes, cause);
  });
}

/** Waits for the first question, and works out each rule once. */
function goneIn(results: () => JudgedPlan): NonNullable<CauseOfOthers["isGone"]> {
  let mended: JudgedPlan | undefined;
  const left = new Map<Rule<unknown>, ReadonlySet<string>>();
  const keyOf = ({ at, severity }: Pick<Found<unknown>, "at" | "severity">, rule: Rule<unknown>) =>
    "record" in at ? `${at.record} ${severity ?? rule.severity}` : "";
  return ({ rule, found }) => {
    mended ??= results();
    const there = left.get(rule) ?? new Set(rule.check(mended).map((one) => keyOf(one, rule)));
    left.set(rule, there);
    return !there.has(keyOf(found, rule));
  };
}
