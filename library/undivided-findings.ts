import { unknownSharesOf } from "./analysis/network/unknown-shares.ts";
import type { Network } from "./model/network.ts";
import { noLength } from "./rules/conductor/no-length.ts";
import type { Finding, Severity } from "./rules/finding.ts";
import type { WithRule } from "./with-causes.ts";

/**
 * One rule's findings while each way carries all of a current that divides by an unknown length, `undivided`, and while the current
 * is divided with the shortest length for each, `divided`. A finding of both is a finding. One that only the undivided current has is
 * information about the missing length, and proposes no fix: with the length stated, it may be no error at all.
 */
export function undividedAsInformation(
  network: Network,
  undivided: readonly WithRule[],
  divided: readonly WithRule[],
): readonly WithRule[] {
  const left = new Map(divided.map((one) => [keyOf(one.finding), one]));
  const all = undivided.map((one): WithRule => {
    const key = keyOf(one.finding);
    const certain = left.get(key);
    left.delete(key);
    if (certain) return isWorse(one.finding, certain.finding) ? certain : one;
    const { ofRecord, at } = one.finding;
    const record = ofRecord ?? ("record" in at ? at.record : undefined);
    const subject = record === undefined ? undefined : runWithoutLength(network, record);
    // No unknown length decides a current at its place.
    if (subject === undefined) return one;
    const followsFrom = { rule: noLength.id, subject, folded: one.rule.neverFolded !== true };
    const severity = rank[one.finding.severity] < rank.info ? "info" : one.finding.severity;
    return { ...one, finding: { ...one.finding, severity, fixes: [], followsFrom, isUndivided: true } };
  });
  return [...all, ...left.values()];
}

const rank: Readonly<Record<Severity, number>> = { error: 0, warning: 1, info: 2, hint: 3 };

function isWorse(one: Finding, other: Finding): boolean {
  return rank[one.severity] < rank[other.severity];
}

function keyOf({ subject, at, ofRecord }: Finding): string {
  return JSON.stringify([subject, at, ofRecord]);
}

/** The name of a run whose unknown length decides the current of a conductor of this record, or at a terminal of this part. */
function runWithoutLength(network: Network, record: number): string | undefined {
  const { decidedBy } = unknownSharesOf(network);
  const terminals = new Set(
    network.parts.flatMap((part) => (part.record === record ? Object.values(part.terminals) : [])),
  );
  for (const scenario of network.scenarios) {
    for (const [index, { from, to, record: own }] of network.conductors.entries()) {
      if (own !== record && !terminals.has(from) && !terminals.has(to)) continue;
      const [unknown] = decidedBy(scenario, index);
      if (unknown !== undefined) return network.conductors[unknown]!.name;
    }
  }
  return undefined;
}
