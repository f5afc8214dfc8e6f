import type { Circuit } from "../model/circuit.ts";
import type { JudgedPlan } from "./rule.ts";

/**
 * Whether a property of the circuit, or something inside it, was given but could not be read. The model then holds the
 * default instead, which is nobody's statement: a rule must not blame the builder for it, and no fix may write over
 * the text that is there. plan/invalid-value has told the builder already.
 */
export function refused(plan: JudgedPlan, circuit: Circuit, ...properties: readonly string[]): boolean {
  return plan.model.invalid.some(
    ({ record, path }) => record === circuit.record && path[0] !== undefined && properties.includes(path[0]),
  );
}
