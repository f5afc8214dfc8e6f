import type { AmountUnit } from "../../model/property-table.ts";
import type { Unit } from "../../rules/wording/format-number.ts";

/** One value of a subject. Two are the same if their content is, even with other text. */
export interface Property {
  /** Stable, for programs: "length", "protection.ratingA". */
  readonly id: string;
  /** For people, without the unit: "length one way". */
  readonly words: string;
  readonly value: PropertyValue;
}

export type PropertyValue =
  /** Two numbers are two values if they differ by more than the computer's rounding. */
  | { readonly as: "quantity"; readonly amount: number; readonly unit: Unit | AmountUnit }
  | ({ readonly as: "text" } & Worded)
  /** A terminal: the same if it is of the same part, even under another name. */
  | { readonly as: "end"; readonly text: string; readonly end: End }
  /** Parts by index; only those that both plans have count. */
  | { readonly as: "parts"; readonly parts: readonly number[] };

/** A text, and the value that counts if several texts mean the same: metres for feet. Left out: the text itself counts. */
export interface Worded {
  readonly text: string;
  readonly compare?: Compared;
}

export type Compared = number | string | readonly Compared[];

export interface End {
  readonly part: number;
  readonly terminal: string;
}

/** An end with the property that states it. The load that a circuit states itself is not an end that a builder can move. */
export interface NamedEnd {
  readonly property: "from" | "to" | "returnTo";
  readonly end: End;
  readonly text: string;
}

export function quantity(id: string, words: string, amount: number, unit: QuantityUnit): Property {
  return { id, words, value: { as: "quantity", amount, unit } };
}

export type QuantityUnit = Extract<PropertyValue, { as: "quantity" }>["unit"];

export function stated(
  id: string,
  words: string,
  amount: number | undefined,
  unit: Unit | AmountUnit,
): Property[] {
  return amount === undefined ? [] : [quantity(id, words, amount, unit)];
}

export function count(id: string, words: string, amount: number): Property {
  return quantity(id, words, amount, "");
}

/** A word from the builder, or yes or no. */
export function said(value: string | boolean | Worded | undefined, id: string, words: string): Property[] {
  if (value === undefined) return [];
  if (typeof value === "object") return [{ id, words, value: { as: "text", ...value } }];
  return [text(id, words, typeof value === "string" ? value : value ? "yes" : "no")];
}

export function text(id: string, words: string, said: string): Property {
  return { id, words, value: { as: "text", text: said } };
}
