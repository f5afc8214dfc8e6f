import { analyseCircuit } from "./analysis/analyse-circuit.ts";
import { analyseNetwork } from "./analysis/analyse-network.ts";
import { readModel } from "./model/read-model.ts";
import type { PlanProblem, PlanRecord } from "./model/record.ts";
import type { PlanModel, Run } from "./model/run.ts";
import type { Finding } from "./rules/finding.ts";
import { rules } from "./rules/registry.ts";
import type { JudgedNetwork, JudgedPlan } from "./rules/rule.ts";

/** What the engine says of a plan: what it is, what was computed, what was found. */
export interface Judgement extends JudgedPlan {
  /** In the order of the records they are about, worst first within a record. Accepted ones included. */
  readonly findings: readonly Finding[];
}

/**
 * The engine: records of a plan in, model, results and findings out.
 * Pure: no files, no clock, no randomness; bad plans are values, never exceptions. `before` is any earlier judgement, best one
 * of nearly the same plan: what is the same in both need not be worked out again. The answer does not depend on it.
 */
export function judge(
  records: readonly PlanRecord[],
  problems: readonly PlanProblem[],
  before?: Judgement,
): Judgement {
  const model = readModel(records);
  const network = model.network && {
    network: model.network,
    result: analyseNetwork(model.network, before?.network),
  };
  const circuits = [...loneCircuits(model), ...runsInNetwork(network)].map((circuit) => ({
    circuit,
    result: analyseCircuit(circuit),
  }));
  const plan: JudgedPlan = { model, circuits, network, problems };
  const reasons = acceptedReasons(model);
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

/** Circuits of a network that could not be read are still judged by the load that they state themselves. */
function loneCircuits({ circuits, network }: PlanModel): readonly Run[] {
  return network ? circuits.filter(({ inNetwork }) => !inNetwork) : circuits;
}

/**
 * The runs of a network, each with the greatest current that flows in it for longer than a moment: in any scenario, or that
 * the circuit itself states (a load in watts draws the most at the device's own minimum voltage).
 * A run in which no current could be worked out is not there: voltage/collapse or network/shorted says why.
 */
function runsInNetwork(judged: JudgedNetwork | undefined): readonly Run[] {
  if (!judged) return [];
  const { network, result } = judged;
  // Both conductors of a circuit are one run. Usually they carry the same; where another return joins in, one carries more.
  const currents = new Map<Run, number>();
  network.conductors.forEach(({ run }, index) => {
    const currentA = result.conductors[index]?.worst?.currentA ?? Number.NaN;
    currents.set(run, Math.max(currents.get(run) ?? run.loadA, currentA));
  });
  return [...currents].flatMap(([run, loadA]) => (Number.isNaN(loadA) ? [] : [{ ...run, loadA }]));
}

function acceptedReasons({ circuits, network }: PlanModel): ReadonlyMap<number, Run["accept"]> {
  const reasons = new Map(circuits.map(({ record, accept }) => [record, accept]));
  for (const { record, run } of network?.conductors ?? []) reasons.set(record, run.accept);
  for (const { record, accept } of network?.parts ?? [])
    if (!reasons.has(record)) reasons.set(record, accept);
  return reasons;
}

const severityOrder = { error: 0, warning: 1, info: 2, hint: 3 };

function byPlaceThenSeverity(a: Finding, b: Finding): number {
  return placeOf(a) - placeOf(b) || severityOrder[a.severity] - severityOrder[b.severity];
}

/** Problems of the run come first. */
function placeOf({ at }: Finding): number {
  return "record" in at ? at.record : -1;
}
