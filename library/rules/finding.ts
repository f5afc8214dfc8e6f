import type { PropertyPath } from "../model/plain-values.ts";

export type Severity = "error" | "warning" | "info" | "hint";

/** Place of a finding or a change: a value of a record, or a problem met while the plan ran. */
export type At = PropertyAt | { readonly problem: number };

export interface PropertyAt {
  readonly record: number;
  readonly path: PropertyPath;
}

/** One result of a rule. Data only: {@link import("./rule.ts").Rule.message} words it. */
export interface Finding<Values = unknown> {
  readonly rule: string;
  readonly severity: Severity;
  /** Name of the circuit it is about, "the build" or "the plan". */
  readonly subject: string;
  readonly at: At;
  /** The record that it is about, beside the place: each of two banks may run short in one period. */
  readonly ofRecord?: number;
  /** Every number and word in the message. */
  readonly values: Values;
  readonly related: readonly Related[];
  readonly fixes: readonly ProposedFix[];
  /** The builder's reason, if the plan accepts the finding. */
  readonly accepted?: string;
  /** The finding that causes this one; this one counts with its own severity wherever findings are counted. */
  readonly followsFrom?: Cause;
  /** It is found only if one way carries all of a current that divides by an unknown length: information, not an error. */
  readonly isUndivided?: true;
}

/** The finding from which another one follows. */
export interface Cause {
  readonly rule: string;
  readonly subject: string;
  /** The other one is shown under its cause. False for ampacity, fuses and short circuits, which are always shown by themselves. */
  readonly folded: boolean;
}

export interface Related {
  readonly at: At;
  readonly text: string;
}

/** Values for properties, not text: the folder that knows the text makes the edits, and proves them by running again. */
export interface ProposedFix {
  /** In a builder's words, with the value: "Use 6 AWG". */
  readonly title: string;
  /** "repair": sound on its own, "fix all" may apply it. "suggestion": only applied by hand. */
  readonly kind: "repair" | "suggestion";
  readonly changes: readonly Change[];
  /**
   * Present in an offer: the number of other devices on conductors that it makes thicker. That, or a conductor far above its need, is its
   * only reason to be a suggestion.
   */
  readonly otherDevices?: number;
}

export type Change =
  /** Sets the property; adds it if it is absent. */
  | { readonly do: "set"; readonly record: number; readonly path: PropertyPath; readonly value: Settable }
  | { readonly do: "remove"; readonly record: number; readonly path: PropertyPath }
  /** Keeps the value and its text, changes the property's name: for a length that was meant in metres. */
  | { readonly do: "rename"; readonly record: number; readonly path: PropertyPath; readonly to: string };

export type Settable = Single | { readonly [key: string]: Single };

type Single = number | string | boolean | NamedInPlan;

/** A result of another call of the plan, such as the surface that a part is on. */
export interface NamedInPlan {
  /** Its name where it is written. */
  readonly inText: string;
  /** As records refer to it. */
  readonly reference: { readonly kind: string; readonly id: number };
}

export function isNamedInPlan(value: Settable): value is NamedInPlan {
  return typeof value === "object" && typeof value.inText === "string" && typeof value.reference === "object";
}
