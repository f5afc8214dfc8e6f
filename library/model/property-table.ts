import * as z from "zod";
import type { Property } from "./property.ts";
import type { Word } from "./record.ts";

/** Every property of a word, or of an object in one, by name. */
export interface PropertyTable<Shape extends Properties = Properties> extends Structure {
  readonly properties: ReadonlyMap<string, Property>;
  /** Lets an argument through if all of it is in order. Quick, but its issues are not made for people. */
  readonly schema: z.ZodType<ValuesOf<Shape>>;
}

export type Properties = Readonly<Record<string, Property>>;

export type ValuesOf<Shape extends Properties> = {
  readonly [Name in keyof Shape]?: (Shape[Name] extends Property<infer Value> ? Value : never) | undefined;
};

/** What an object must be besides each property by itself. */
export interface Structure {
  /** The word whose result may be spread into its own argument: `circuit({ ...lamp, name: "Second lamp" })`. */
  readonly word?: Word;
  /** What is wrong with a name that is not there: "is not a property of circuit". */
  readonly unknown: string;
  /** Properties that must be given. */
  readonly needed?: readonly string[];
  /** Properties that take each other's place. */
  readonly choices: readonly Choice[];
}

/** Ways to say the same thing, of which only one is to be taken. Each is one property, or several that belong together. */
export interface Choice {
  readonly ways: readonly (readonly string[])[];
  /** What there must be one of: "a size"; undefined where there may be none. */
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
  const sound = (input: Input) => choices.every((choice) => isSound(input, choice));
  const whole = word || choices.length > 0 ? object.refine((input) => marked(input) && sound(input)) : object;
  return {
    properties: new Map(Object.entries(properties)),
    schema: whole as unknown as z.ZodType<ValuesOf<Shape>>,
    ...structure,
  };
}

/** The properties by which a word marks what it gives back. Nobody writes them, so they are not offered. */
export const markOfWord = "kind";
export const numberOfCall = "id";

type Input = Readonly<Record<string, unknown>>;

/** Exactly one way is taken, and taken whole; or none where none is needed. */
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
