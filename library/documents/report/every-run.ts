import type { Run } from "../../model/run.ts";
import type { JudgedPlan } from "../../rules/rule.ts";

/**
 * Every circuit and cable that could be read, in the order of the plan. Includes those of a network without a calculated current,
 * which are not among the circuits of the judgement.
 */
export function everyRun({ circuits, network }: JudgedPlan): readonly Run[] {
  const runs = new Map(network?.network.conductors.map(({ record, run }) => [record, run]));
  for (const { circuit } of circuits) runs.set(circuit.record, circuit);
  return [...runs.values()].sort((one, other) => one.record - other.record);
}
