import { analyseCircuit } from "./analysis/analyse-circuit.ts";
import { readModel } from "./model/read-model.ts";
import type { PlanProblem, PlanRecord } from "./model/record.ts";
import type { Finding } from "./rules/finding.ts";
import { rules } from "./rules/registry.ts";
import type { JudgedPlan } from "./rules/rule.ts";

/** What the engine says of a plan: what it is, what was computed, what was found. */
export interface Judgement extends JudgedPlan {
  /** In the order of the records they are about, worst first within a record. Accepted ones included. */
  readonly findings: readonly Finding[];
}

/**
 * The engine: records of a plan in, model, results and findings out.
 * Pure: no files, no clock, no randomness; bad plans are values, never exceptions.
 */
export function judge(records: readonly PlanRecord[], problems: readonly PlanProblem[]): Judgement {
  const model = readModel(records);
  const circuits = model.circuits.map((circuit) => ({ circuit, result: analyseCircuit(circuit) }));
  const plan: JudgedPlan = { model, circuits, problems };
  const reasons = new Map(model.circuits.map((circuit) => [circuit.record, circuit.accept]));
  const findings = rules.flatMap((rule) =>
    rule.check(plan).map((found): Finding => {
      const reason = "record" in found.at ? reasons.get(found.at.record)?.[rule.id]?.trim() : undefined;
      return {
        rule: rule.id,
        severity: found.severity ?? rule.severity,
        subject: found.subject,
        at: found.at,
        values: found.values,
        related: found.related ?? [],
        fixes: found.fixes ?? [],
        ...(rule.acceptable && reason ? { accepted: reason } : {}),
      };
    }),
  );
  return { ...plan, findings: findings.sort(byPlaceThenSeverity) };
}

const severityOrder = { error: 0, warning: 1, info: 2, hint: 3 };

function byPlaceThenSeverity(a: Finding, b: Finding): number {
  return placeOf(a) - placeOf(b) || severityOrder[a.severity] - severityOrder[b.severity];
}

/** Problems of the run come first. */
function placeOf({ at }: Finding): number {
  return "record" in at ? at.record : -1;
}
