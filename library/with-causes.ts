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
  return all.map(({ finding, rule }) => {
    const cause = "record" in finding.at ? causeOf(causes, rule, finding.at.record) : undefined;
    if (!cause) return finding;
    const { rule: id, subject, accepted } = cause.finding;
    const followsFrom = { rule: id, subject, folded: rule.neverFolded !== true };
    // A current that is gone with its cause needs no thicker conductor.
    const fixes = cause.isGone && accepted === undefined ? [] : finding.fixes;
    return { ...finding, followsFrom, fixes };
  });
}

interface CauseOfOthers extends WithRule {
  /** Whether the finding of a rule at a record is gone if the cause is mended; undefined if that is not worked out. */
  readonly isGone: ((rule: Rule<unknown>, record: number) => boolean) | undefined;
}

/** By record of the findings that they explain. */
type Causes = ReadonlyMap<number, readonly CauseOfOthers[]>;

function causesByRecord(all: readonly WithRule[], resultsOf: (mended: Network) => JudgedPlan): Causes {
  const causes = new Map<number, CauseOfOthers[]>();
  const explained = new Set<ReadonlySet<number>>();
  for (const one of all) {
    const { explains = [], asIfMended } = one.found;
    const islands = explains.filter((island) => asIfMended || !explained.has(island));
    const cause = { ...one, isGone: asIfMended && goneIn(() => resultsOf(asIfMended())) };
    for (const island of islands) {
      if (!asIfMended) explained.add(island);
      for (const record of island) causes.set(record, [...(causes.get(record) ?? []), cause]);
    }
  }
  return causes;
}

/** A cause that follows from another one explains no finding of its own. */
function causeOf(causes: Causes, rule: Rule<unknown>, record: number): CauseOfOthers | undefined {
  return causes.get(record)?.find((cause) => {
    if (cause.rule === rule || !(rule.restsOn || cause.found.isOfConnections)) return false;
    const explains = cause.isGone ? cause.isGone(rule, record) : rule.restsOn === "voltages";
    const { at } = cause.finding;
    return explains && !("record" in at && causeOf(causes, cause.rule, at.record));
  });
}

/** Waits for the first question, and works out each rule once. */
function goneIn(results: () => JudgedPlan): NonNullable<CauseOfOthers["isGone"]> {
  let mended: JudgedPlan | undefined;
  const left = new Map<Rule<unknown>, ReadonlySet<number>>();
  return (rule, record) => {
    mended ??= results();
    const records =
      left.get(rule) ?? new Set(rule.check(mended).flatMap(({ at }) => ("record" in at ? [at.record] : [])));
    left.set(rule, records);
    return !records.has(record);
  };
}
