import * as z from "zod";
import type { Refusal, Serves } from "./run.ts";

/** One property of a DSL function: the values that zod accepts, and their description for people. */
export interface Property<Value = unknown> {
  /** The messages of its issues state the error in a value: "is negative". */
  readonly schema: z.ZodType<Value>;
  readonly allowed: string;
  /** Of an amount: its unit and limits. */
  readonly unit?: AmountUnit;
  readonly limits?: Limits;
  /** Whether any figure or limit is calculated from it. If so, a circuit with a refused one is not judged. */
  readonly affectsResults: boolean;
  /** If no network is left unread by an error in it: the results that it serves instead. */
  readonly serves?: Serves;
  /** Of an object without meaning if a part of it is refused: the value in place of it. Such an object is used whole or not at all. */
  readonly whenRefused?: { readonly value: Value | undefined };
  /** For a property that may be an object: the properties of that object. */
  readonly parts?: PropertyTable;
  /** For a list of objects: the properties of each. A refused object is left out; the others are used. */
  readonly elements?: ListElements;
  /** For a property that is one of some texts: those texts, to find the one meant by a misspelt text. */
  readonly texts?: readonly string[];
}

export interface ListElements {
  readonly table: PropertyTable;
  readonly most: number;
  /** Elements that contradict each other, although each is allowed by itself; paths begin with the index of the element. */
  contradictions?(list: readonly Readonly<Record<string, unknown>>[]): readonly Refusal[];
}

/** The unit of an amount that a plan states; "" for a count. */
export type AmountUnit =
  | ""
  | "A"
  | "V"
  | "W"
  | "Ah"
  | "%"
  | "°C"
  | "% per °C"
  | "m"
  | "mm"
  | "m²"
  | "cm²"
  | "kg"
  | "ft"
  | "in"
  | "Ω"
  | "mΩ"
  | "mV"
  | "N·m"
  | "A²s"
  | "h"
  | "°"
  | "s";

/** The lower limit, exclusive (`above`) or inclusive (`from`), and the upper limit, inclusive. */
export type Limits = ({ readonly above: number } | { readonly from: number }) & { readonly upTo: number };

/** Every property of a DSL function's input, or of an object in it, by name. */
export interface PropertyTable<Shape extends Properties = Properties> extends Structure {
  readonly properties: ReadonlyMap<string, Property>;
  /** Accepts an argument if all of it is valid. Quick, but its issues are not for people. */
  readonly schema: z.ZodType<ValuesOf<Shape>>;
}

export type Properties = Readonly<Record<string, Property>>;

export type ValuesOf<Shape extends Properties> = {
  readonly [Name in keyof Shape]?: (Shape[Name] extends Property<infer Value> ? Value : never) | undefined;
};

/** Requirements on an object besides those on each property. */
export interface Structure {
  /** The DSL function whose result may be spread into its own argument: `circuit({ ...lamp, name: "Second lamp" })`. */
  readonly word?: string;
  /** Message for an unknown name: "is not a property of circuit". */
  readonly unknown: string;
  /** Properties that must be given. */
  readonly needed?: readonly string[];
  /** Properties that replace each other. */
  readonly choices: readonly Choice[];
  /** Values that contradict each other, although each is allowed by itself. */
  contradictions?(values: Readonly<Record<string, unknown>>): readonly Refusal[];
}

/** Alternative ways to state the same; only one may be used. Each is one property, or several that belong together. */
export interface Choice {
  readonly ways: readonly (readonly string[])[];
  /** Noun for messages, if one of them is required: "a size"; undefined if there may be none. */
  readonly needed?: string;
}

export function propertyTable<Shape extends Properties>(
  properties: Shape,
  structure: Structure,
): PropertyTable<Shape> {
  const { word, needed, choices } = structure;
  const shape = Object.entries(properties).map(([name, { schema }]): [string, z.ZodType] => [
    name,
    needed?.includes(name) ? schema : schema.optional(),
  ]);
  if (word) shape.push([markOfWord, z.literal(word).optional()], [numberOfCall, z.unknown().optional()]);
  const object = z.strictObject(Object.fromEntries(shape), { error: "is not an object" });
  const marked = (input: Input) => input[numberOfCall] === undefined || input[markOfWord] !== undefined;
  const sound = (input: Input) =>
    choices.every((choice) => isSound(input, choice)) && !structure.contradictions?.(input).length;
  const whole = word || choices.length > 0 ? object.refine((input) => marked(input) && sound(input)) : object;
  return {
    properties: new Map(Object.entries(properties)),
    schema: whole as unknown as z.ZodType<ValuesOf<Shape>>,
    ...structure,
  };
}

/** Properties that mark the result of a DSL function. Builders do not write them, so they are not offered. */
export const markOfWord = "kind";
export const numberOfCall = "id";

type Input = Readonly<Record<string, unknown>>;

/** True if exactly one way is used, and completely; or none, if none is required. */
export function isSound(input: Input, { ways, needed }: Choice): boolean {
  let begun = 0;
  let whole = 0;
  for (const way of ways) {
    let given = 0;
    for (const name of way) if (input[name] !== undefined) given++;
    if (given > 0) begun++;
    if (given === way.length) whole++;
  }
  return begun === whole && (begun === 1 || (begun === 0 && needed === undefined));
}
