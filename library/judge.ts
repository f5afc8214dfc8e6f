import { analyseCircuit } from "./analysis/analyse-circuit.ts";
import { analyseNetwork } from "./analysis/analyse-network.ts";
import { machineLimit } from "./analysis/machine-protection.ts";
import { workedOutOnce } from "./analysis/worked-out-once.ts";
import type { PlanModel } from "./model/plan-model.ts";
import { readModel } from "./model/read-model.ts";
import type { PlanProblem, PlanRecord } from "./model/record.ts";
import type { Run } from "./model/run.ts";
import type { Finding } from "./rules/finding.ts";
import { rules } from "./rules/registry.ts";
import type { JudgedNetwork, JudgedPlan, JudgedRun } from "./rules/rule.ts";

/** The engine's result for a plan: its model, the computed results and the findings. */
export interface Judgement extends JudgedPlan {
  /** In the order of their records, most severe first within a record. Accepted ones included. */
  readonly findings: readonly Finding[];
}

/**
 * The engine: records of a plan in, model, results and findings out.
 * Pure: no files, no clock, no randomness; bad plans are values, never exceptions. `before` is any earlier judgement, ideally of
 * nearly the same plan: results for unchanged parts are reused. The answer does not depend on it.
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
  const circuits = [...loneCircuits(model), ...runsInNetwork(network)].map(judgedRun);
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

/** A circuit that an edit leaves as it was is the same object in the next judgement. */
const judgedRun = workedOutOnce((circuit: Run): JudgedRun => ({ circuit, result: analyseCircuit(circuit) }));

/** If the network could not be read, its circuits are still judged by the load that they state themselves. */
function loneCircuits({ circuits, network }: PlanModel): readonly Run[] {
  return network ? circuits.filter(({ inNetwork }) => !inNetwork) : circuits;
}

/**
 * The runs of a network, each with its maximum current for longer than a moment: from any scenario, or as the circuit itself
 * states it (a load in watts draws most at the device's own minimum voltage).
 * Runs without a calculated current are omitted: voltage/collapse or network/shorted reports the reason.
 */
function runsInNetwork(judged: JudgedNetwork | undefined): readonly Run[] {
  if (!judged) return [];
  const { network, result } = judged;
  // Both conductors of a circuit are one run. Usually they carry the same current; with another return joined, one carries more.
  const currents = new Map<Run, DesignCurrent>();
  const machines = new Map<Run, number>();
  network.conductors.forEach(({ run }, index) => {
    const { worst, design } = result.conductors[index] ?? {};
    const known: DesignCurrent = currents.get(run) ?? run;
    const loadA = Math.max(known.loadA, worst?.currentA ?? Number.NaN);
    const isHighest = design !== undefined && design.currentA >= Math.max(loadA, known.lowVoltageA ?? 0);
    const { currentA: lowVoltageA = 0, estimate } = isHighest
      ? design
      : { currentA: known.lowVoltageA, estimate: known.estimate };
    currents.set(run, {
      loadA,
      ...(lowVoltageA > loadA && { lowVoltageA }),
      ...(estimate && { estimate }),
    });
    const limit = machineLimit(network, index);
    if (limit) machines.set(run, limit.maxA);
  });
  return [...currents].flatMap(([run, current]) => {
    if (Number.isNaN(current.loadA)) return [];
    const { lowVoltageA: _, estimate: __, ...rest } = run;
    const machineMaxA = machines.get(run);
    return [{ ...rest, ...current, ...(machineMaxA !== undefined && { machineMaxA }) }];
  });
}

type DesignCurrent = Pick<Run, "loadA" | "lowVoltageA" | "estimate">;

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

/** Problems in running the plan come first. */
function placeOf({ at }: Finding): number {
  return "record" in at ? at.record : -1;
}
