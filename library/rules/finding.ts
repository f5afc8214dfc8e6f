import type { PropertyPath } from "../model/record.ts";

export type Severity = "error" | "warning" | "info" | "hint";

/** Where a finding or a change sits: on a value of a record, or on a problem met while the plan ran. */
export type At = { readonly record: number; readonly path: PropertyPath } | { readonly problem: number };

/** One thing a rule found. Data only: {@link import("./rule.ts").Rule.message} makes words of it. */
export interface Finding<Values = unknown> {
  readonly rule: string;
  readonly severity: Severity;
  /** Name of the circuit it is about, "the build" or "the plan". */
  readonly subject: string;
  readonly at: At;
  /** Every number and word that the message uses. */
  readonly values: Values;
  readonly related: readonly Related[];
  readonly fixes: readonly ProposedFix[];
  /** The builder's reason, when the finding was accepted in the plan. */
  readonly accepted?: string;
}

export interface Related {
  readonly at: At;
  readonly text: string;
}

/** Values for properties, not text: the room that knows the text makes the edits, and proves them by running again. */
export interface ProposedFix {
  /** In a builder's words, with the value: "Use 6 AWG". */
  readonly title: string;
  /** "repair": sound on its own, may be applied by "fix all". "suggestion": only ever by hand. */
  readonly kind: "repair" | "suggestion";
  readonly changes: readonly Change[];
}

export type Change =
  /** Sets the property, adding it where it is absent. */
  | { readonly do: "set"; readonly record: number; readonly path: PropertyPath; readonly value: Settable }
  | { readonly do: "remove"; readonly record: number; readonly path: PropertyPath }
  /** Keeps the value and its text, changes the property's name: a length that was meant in metres. */
  | { readonly do: "rename"; readonly record: number; readonly path: PropertyPath; readonly to: string };

export type Settable = number | string | boolean | { readonly [key: string]: number | string | boolean };
