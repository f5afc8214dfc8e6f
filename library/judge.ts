import { analyseCircuit } from "./analysis/analyse-circuit.ts";
import { analyseNetwork } from "./analysis/analyse-network.ts";
import { energyOfPlan, type World } from "./analysis/energy/energy-of-plan.ts";
import { topologyOf } from "./analysis/network/topology/topology.ts";
import { aloneCurrents } from "./analysis/network/worst-alone.ts";
import type { FaultResult } from "./analysis/network-result.ts";
import { bundledNetwork } from "./analysis/placement/bundled-network.ts";
import { placementOf } from "./analysis/placement/placement.ts";
import { waysOfRuns } from "./analysis/placement/run-ways.ts";
import { runsWithCurrents } from "./analysis/runs-with-currents.ts";
import { acceptingIn } from "./model/accepting.ts";
import type { Network } from "./model/network.ts";
import type { PlanModel } from "./model/plan-model.ts";
import { readModel } from "./model/read-model.ts";
import type { PlanProblem, PlanRecord } from "./model/record.ts";
import type { Run } from "./model/run.ts";
import { workedOutOnce } from "./model/worked-out-once.ts";
import type { Finding } from "./rules/finding.ts";
import { rules } from "./rules/registry.ts";
import type { Found, JudgedNetwork, JudgedPlan, JudgedRun, Rule } from "./rules/rule.ts";
import { undividedAsInformation } from "./undivided-findings.ts";
import { type WithRule, withCauses } from "./with-causes.ts";

/** The engine's result for a plan: its model, the computed results and the findings. */
export interface Judgement extends JudgedPlan {
  /** In the order of their records, most severe first within a record. Accepted ones included. */
  readonly findings: readonly Finding[];
}

/**
 * The engine: records of a plan in, model, results and findings out.
 * Pure: no files, no clock, no randomness; bad plans are values, never exceptions. `before` is any earlier judgement, ideally of
 * nearly the same plan: results for unchanged parts are reused. The answer does not depend on it. `world` gives the table of the world,
 * and is called only for a plan with a period: without it, such a plan has no energy.
 */
export function judge(
  records: readonly PlanRecord[],
  problems: readonly PlanProblem[],
  before?: Judgement,
  world?: () => World,
): Judgement {
  const read = readModel(records, waysOfRuns);
  const first = judgedPlan(read, read.network ?? read.remains?.sound, problems, before?.network);
  const judged = withBundles(first, problems);
  const { model } = judged;
  const plan: JudgedPlan = {
    model,
    circuits: judged.circuits,
    network: judged.network,
    problems,
    energy: energyOf(model, judged.network, world),
    placement: judged.placement,
  };
  const reasons = new Map(acceptingIn(model).map(({ record, accept }) => [record, accept]));
  const divided = dividedPlan(plan);
  const foundBy = (rule: Rule<unknown>, others: readonly Finding[] = []) => {
    const made = (found: Found<unknown>): WithRule => ({
      rule,
      found,
      finding: madeOf(rule, found, reasons),
    });
    const all = foundIn(plan, rule, others).map(made);
    if (!divided || rule.ignoresLoads) return all;
    return undividedAsInformation(divided.network.network, all, rule.check(divided, others).map(made));
  };
  const ofRules = rules.filter(({ afterOthers }) => !afterOthers).flatMap((rule) => foundBy(rule));
  const others = ofRules.map(({ finding }) => finding);
  const last = rules.filter(({ afterOthers }) => afterOthers).flatMap((rule) => foundBy(rule, others));
  const findings = withCauses([...ofRules, ...last], (mended) =>
    judgedPlan(model, mended, problems, plan.network),
  );
  // Islands alone are no picture of the plan: only their findings are shown.
  return {
    findings: findings.sort(byPlaceThenSeverity),
    ...plan,
    network: model.network ? plan.network : undefined,
  };
}

function foundIn(
  plan: JudgedPlan,
  rule: Rule<unknown>,
  others: readonly Finding[],
): readonly Found<unknown>[] {
  // Without a circuit, a rule may be silent on the same network that it has findings in once the circuit is taken out of the plan.
  const isWhole = plan.model.withoutCircuits.length === 0;
  const kept = rule.ignoresLoads && isWhole ? plan.network : undefined;
  const known = kept && foundBesideLoads(kept.result.faults);
  const before = known?.get(rule);
  if (before) return before;
  const found = rule.check(plan, others);
  if (found.length === 0 || rule.ignoresLoads === "entirely") known?.set(rule, found);
  return found;
}

/** By rule: its findings that no load changes. An edit of loads leaves the faults the same object. */
const foundBesideLoads = workedOutOnce(
  (_: FaultResult) => new Map<Rule<unknown>, readonly Found<unknown>[]>(),
);

function madeOf(
  { id, severity, acceptable }: Rule<unknown>,
  found: Found<unknown>,
  reasons: ReadonlyMap<number, Run["accept"]>,
): Finding {
  const reason = "record" in found.at ? reasons.get(found.at.record)?.[id]?.trim() : undefined;
  return {
    rule: id,
    severity: found.severity ?? severity,
    subject: found.subject,
    at: found.at,
    ...(found.ofRecord !== undefined && { ofRecord: found.ofRecord }),
    values: found.values,
    related: found.related ?? [],
    fixes: found.fixes ?? [],
    ...(acceptable && reason && !found.isNeverAccepted ? { accepted: reason } : {}),
  };
}

function judgedPlan(
  model: PlanModel,
  read: Network | undefined,
  problems: readonly PlanProblem[],
  before: JudgedNetwork | undefined,
): JudgedPlan {
  const network = read && { network: read, result: analyseNetwork(read, before) };
  const placement = model.layout && placementOf(model.layout);
  return { model, circuits: judgedRuns(model, network), network, problems, energy: [], placement };
}

function judgedRuns(model: PlanModel, network: JudgedNetwork | undefined): readonly JudgedRun[] {
  const runs = [...loneCircuits(model), ...runsInNetwork(network), ...runsInGaps(model)];
  return Array.from(runs, judgedRun);
}

/** The plan with every unknown length at its shortest; undefined if no current divides by one. */
function dividedPlan(plan: JudgedPlan): (JudgedPlan & { readonly network: JudgedNetwork }) | undefined {
  const { network: whole, model } = plan;
  if (!whole?.result.divided) return undefined;
  const network = { network: whole.network, result: { ...whole.result, ...whole.result.divided } };
  return { ...plan, network, circuits: judgedRuns(model, network) };
}

/** The plan judged once more with the bundles in its channels, if its builder asks for that. */
function withBundles(plan: JudgedPlan, problems: readonly PlanProblem[]): JudgedPlan {
  const { model, network: judged, placement } = plan;
  if (!model.build.bundledInChannels || !model.network || !judged || !placement) return plan;
  const network = bundledNetwork(judged.network, judged.result.scenarios, placement);
  return network === judged.network ? plan : judgedPlan({ ...model, network }, network, problems, judged);
}

/**
 * A network that was not read whole has none: islands alone are no picture of the plan. A circuit that the network is without counts
 * as one without hours, and makes every verdict one "at best".
 */
function energyOf(
  { periods, network, networkUnread, withoutCircuits, invalid }: PlanModel,
  judged: JudgedNetwork | undefined,
  world: (() => World) | undefined,
): JudgedPlan["energy"] {
  if (periods.length === 0 || networkUnread || !world) return [];
  const energy = energyOfPlan(
    periods,
    network &&
      judged && {
        network,
        topology: judged.result.topology,
        // Bundled along their ways, conductors are warmer there.
        scenarios: judged.network === network ? judged.result.scenarios : [],
      },
    world,
    new Set(invalid.flatMap(({ serves, record }) => (serves === "balance" ? [record] : []))),
  );
  if (withoutCircuits.length === 0) return energy;
  const leftOut = withoutCircuits.map(({ record, name }) => ({ record, name, isInvalid: true as const }));
  return energy.map(({ banks, ...one }) => ({
    ...one,
    banks: banks.map((bank) => ({ ...bank, withoutHours: [...bank.withoutHours, ...leftOut] })),
  }));
}

/** A circuit that an edit leaves as it was is the same object in the next judgement. */
const judgedRun = workedOutOnce((circuit: Run): JudgedRun => ({ circuit, result: analyseCircuit(circuit) }));

/** Circuits outside of the judged network, or all if nothing of it could be read, are judged by the load that they state themselves. */
function loneCircuits({ circuits, network, remains, withoutCircuits }: PlanModel): readonly Run[] {
  if (!network && !remains) return circuits;
  const leftOut = new Set(withoutCircuits.map(({ record }) => record));
  return circuits.filter(({ inNetwork, record }) => !inNetwork || leftOut.has(record));
}

/** The runs of the islands with a refused value, each with the load that it states or the greatest of a single device behind it. */
function runsInGaps({ remains }: PlanModel): readonly Run[] {
  if (!remains) return [];
  const { sound, sketch } = remains;
  const known = new Set(sound?.conductors.map(({ record }) => record));
  const alone = aloneCurrents(sketch, topologyOf(sketch), []);
  const conductors = alone.conductors.map((own) => ({
    ...{ worst: undefined, design: undefined, forHours: undefined },
    least: { worst: own?.worst, design: own?.design },
  }));
  return runsWithCurrents(sketch, conductors).filter(({ record }) => !known.has(record));
}

/**
 * The runs of a network, each with its maximum current for longer than a moment: from any scenario, or as the circuit itself
 * states it (a load in watts draws most at the device's own minimum voltage).
 * If that current is unknown, the load stated and that of any single device are the least that flows; voltage/collapse or
 * network/shorted reports the reason.
 */
function runsInNetwork(judged: JudgedNetwork | undefined): readonly Run[] {
  return judged ? runsWithCurrents(judged.network, judged.result.conductors) : [];
}

const severityOrder = { error: 0, warning: 1, info: 2, hint: 3 };

function byPlaceThenSeverity(a: Finding, b: Finding): number {
  return placeOf(a) - placeOf(b) || severityOrder[a.severity] - severityOrder[b.severity];
}

/** Problems in running the plan come first. */
function placeOf({ at }: Finding): number {
  return "record" in at ? at.record : -1;
}
