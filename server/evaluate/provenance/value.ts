import type ts from "typescript";
import type { EvaluationContext } from "./contexts.ts";

export interface Value {
  readonly node: ts.Expression;
  readonly context: EvaluationContext;
}

export type Element =
  | Value
  | { readonly pair: readonly ts.Expression[]; readonly context: EvaluationContext };
