import { describeValue } from "./describe-value.ts";
import { nearestName } from "./nearest-name.ts";
import { isNonPlain, isObject } from "./plain-values.ts";
import type { Property } from "./property-table.ts";
import {
  type Choice,
  isSound,
  markOfWord,
  numberOfCall,
  type Properties,
  type PropertyTable,
  type ValuesOf,
} from "./property-table.ts";
import type { Refusal } from "./run.ts";

/**
 * Reads the valid values of an argument, and reports the errors in the rest. Arguments do not change once made, so a valid one
 * remains valid: the same object recurs with every keystroke elsewhere in the plan.
 */
export function readValues<Shape extends Properties>(
  input: unknown,
  table: PropertyTable<Shape>,
): ReadValues<Shape> {
  if (isObject(input) && !isNonPlain(input)) {
    // Nearly every argument is valid: one pass over all of it is several times quicker than property by property.
    const before = inOrder.get(input);
    if (before?.table === table) return before.read as ReadValues<Shape>;
    const read = table.schema.safeParse(input);
    if (read.success) {
      const values: ReadValues<Shape> = { values: read.data, invalid: [], unusable: nothing };
      inOrder.set(input, { table, read: values });
      return values;
    }
  }
  return explain(input, table);
}

export interface ReadValues<Shape extends Properties> {
  readonly values: ValuesOf<Shape>;
  readonly invalid: readonly Refusal[];
  /** Refused or missing properties that affect some figure, and {@link unknownProperty}. */
  readonly unusable: ReadonlySet<string>;
}

/** An invalid value, without its record and name. */

/** Placeholder for a refused property that matches no known name. */
export const unknownProperty = "*";

const nothing: ReadonlySet<string> = new Set();

const inOrder = new WeakMap<object, { readonly table: unknown; readonly read: ReadValues<Properties> }>();

/** Property by property, for an argument with an error. */
function explain<Shape extends Properties>(input: unknown, table: PropertyTable<Shape>): ReadValues<Shape> {
  if (!isObject(input) || isNonPlain(input)) {
    const refusal =
      input === undefined
        ? { given: undefined, wrong: "the object with its properties is missing" }
        : { given: describeValue(input), wrong: "is not an object" };
    const invalid = [{ path: [], ...refusal, allowed: "an object with named properties" }];
    return { values: {} as ValuesOf<Shape>, invalid, unusable: new Set([unknownProperty]) };
  }
  const reading: Reading = { input, table, values: {}, invalid: [], unusable: new Set(), meant: new Set() };
  const marked = table.word !== undefined && input[markOfWord] === table.word;
  for (const [name, value] of Object.entries(input)) {
    if (reading.invalid.length >= mostExplained) {
      reading.unusable.add(unknownProperty);
      break;
    }
    const made = name === markOfWord ? marked : name === numberOfCall && input[markOfWord] !== undefined;
    if (value !== undefined && !made) readProperty(reading, name, value);
  }
  for (const choice of table.choices) readChoice(reading, choice);
  for (const name of table.needed ?? []) if (!isGiven(input, name)) requireProperty(reading, name);
  const { values, invalid, unusable } = reading;
  const isSound = invalid.length === 0;
  for (const refusal of table.contradictions?.(values) ?? []) {
    // A value that is missing here may be the one that was refused.
    if (refusal.path.length === 0 && !isSound) continue;
    invalid.push(refusal);
    const name = refusal.path[0] ?? unknownProperty;
    delete values[name];
    if (table.properties.get(name)?.affectsResults) unusable.add(name);
  }
  return { values: values as ValuesOf<Shape>, invalid, unusable };
}

/** More would not be read, and an object of a million properties must not make a million findings. */
const mostExplained = 20;

type Input = Readonly<Record<string, unknown>>;

interface Reading {
  readonly input: Input;
  readonly table: PropertyTable;
  readonly values: Record<string, unknown>;
  readonly invalid: Refusal[];
  readonly unusable: Set<string>;
  /** Properties most likely meant by misspelt ones: not also reported as missing. */
  readonly meant: Set<string>;
}

function readProperty(reading: Reading, name: string, value: unknown): void {
  const property = reading.table.properties.get(name);
  if (!property) {
    refuseUnknown(reading, name, value);
  } else if (property.parts && isObject(value) && !isNonPlain(value)) {
    const parts = explain(value, property.parts);
    for (const refusal of parts.invalid)
      reading.invalid.push({ ...refusal, path: [name, ...refusal.path], ...purposeOf(property) });
    if (property.affectsResults && parts.unusable.size > 0) reading.unusable.add(name);
    else if (property.whenRefused && parts.invalid.length > 0) refuseWhole(reading, name);
    else reading.values[name] = parts.values;
  } else if (property.elements && Array.isArray(value)) {
    readElements(reading, name, property, value);
  } else {
    const read = property.schema.safeParse(value);
    if (read.success) {
      reading.values[name] = read.data;
      return;
    }
    const nearest = nearestValue(value, property);
    for (const { message: wrong, path } of firstOfEachPlace(read.error.issues)) {
      const given = describeValue(valueAt(value, path));
      const refusal = { path: [name, ...path.map(String)], given, wrong, allowed: property.allowed };
      reading.invalid.push({ ...refusal, ...(nearest !== undefined && { nearest }), ...purposeOf(property) });
    }
    if (property.affectsResults) reading.unusable.add(name);
    refuseWhole(reading, name);
  }
}

function refuseWhole({ table, values }: Reading, name: string): void {
  const instead = table.properties.get(name)?.whenRefused?.value;
  if (instead !== undefined) values[name] = instead;
}

/** Valid elements of a list are used, even if others are invalid. */
function readElements(reading: Reading, name: string, property: Property, list: readonly unknown[]): void {
  const { values, invalid, unusable } = reading;
  const { table, most, contradictions } = property.elements!;
  if (list.length > most) {
    const refusal = { path: [name], given: describeValue(list), wrong: "is too long" };
    invalid.push({ ...refusal, allowed: property.allowed, ...purposeOf(property) });
    if (property.affectsResults) unusable.add(name);
    return;
  }
  const sound: Readonly<Record<string, unknown>>[] = [];
  list.forEach((element, at) => {
    const read = readValues(element, table);
    for (const refusal of read.invalid)
      if (invalid.length < mostExplained)
        invalid.push({ ...refusal, path: [name, String(at), ...refusal.path], ...purposeOf(property) });
    if (read.unusable.size === 0) sound.push(read.values);
    else if (property.affectsResults) unusable.add(name);
  });
  const contradicting = sound.length === list.length ? (contradictions?.(sound) ?? []) : [];
  for (const refusal of contradicting) invalid.push({ ...refusal, path: [name, ...refusal.path] });
  if (contradicting.length > 0 && property.affectsResults) unusable.add(name);
  values[name] = sound;
}

function purposeOf({ serves }: Property): Pick<Refusal, "serves"> {
  return serves ? { serves } : {};
}

/** For a list, each refused element; for any other value, its first error. */
function firstOfEachPlace(issues: readonly Issue[]): readonly Issue[] {
  const places = new Map<string, Issue>();
  for (const issue of issues) {
    const place = issue.path.map(String).join("\n");
    if (!places.has(place) && places.size < mostExplained) places.set(place, issue);
  }
  return [...places.values()];
}

interface Issue {
  readonly message: string;
  readonly path: readonly PropertyKey[];
}

function valueAt(value: unknown, path: readonly PropertyKey[]): unknown {
  return path.reduce<unknown>((at, key) => (at as Readonly<Record<PropertyKey, unknown>>)?.[key], value);
}

function nearestValue(value: unknown, { texts }: Property): string | undefined {
  const comparable = typeof value === "string" || typeof value === "number";
  return texts && comparable ? nearestName(String(value), texts) : undefined;
}

/**
 * A misspelt property may be one that reduces a conductor's ampacity; leaving it out could make a figure too good.
 * A text value under a name that resembles no property cannot be one of those, because none of them is text.
 */
function refuseUnknown(reading: Reading, name: string, value: unknown): void {
  const { table, invalid, unusable, meant } = reading;
  const nearest = nearestName(name, table.properties.keys());
  const meantProperty = nearest === undefined ? undefined : table.properties.get(nearest);
  // A slip for another property would hardly have a value that is valid for this one.
  const isMeant = meantProperty?.serves !== undefined && meantProperty.schema.safeParse(value).success;
  const allowed = nearest ?? [...table.properties.keys()].join(", ");
  invalid.push({
    path: [name],
    given: undefined,
    wrong: table.unknown,
    allowed,
    ...(nearest && { nearest }),
    ...(isMeant && purposeOf(meantProperty)),
  });
  if (nearest === undefined || (meantProperty?.serves && !isMeant)) {
    if (typeof value !== "string" && value !== null) unusable.add(unknownProperty);
  } else {
    meant.add(nearest);
    refuseWhole(reading, nearest);
    if (meantProperty?.affectsResults) unusable.add(nearest);
  }
}

function readChoice(reading: Reading, choice: Choice): void {
  const { input, table, values, invalid, unusable, meant } = reading;
  if (isSound(input, choice)) return;
  const all = choice.ways.flat();
  const given = Object.keys(input).filter((name) => all.includes(name) && isGiven(input, name));
  const [first] = given;
  const way = choice.ways.find((names) => first !== undefined && names.includes(first));
  const ways = choice.ways.map((names) => names.join(" + "));
  const others = given.filter((name) => !way?.includes(name));
  const replaced = all.map((name) => table.properties.get(name)!);
  const purpose = replaced.every(({ serves }) => serves) ? purposeOf(replaced[0]!) : {};
  if (!way) {
    if (!all.some((name) => meant.has(name)))
      invalid.push({
        path: [],
        given: undefined,
        wrong: `${choice.needed} is missing`,
        allowed: listed(ways),
        ...purpose,
      });
  } else if (others.length > 0) {
    for (const name of others) {
      const wrong = `cannot be given together with ${first}`;
      invalid.push({
        path: [name],
        given: describeValue(input[name]),
        wrong,
        allowed: `only one of ${ways.join(", ")}`,
        ...purpose,
      });
    }
  } else {
    for (const name of way.filter((name) => !isGiven(input, name) && !meant.has(name)))
      invalid.push({
        path: [],
        given: undefined,
        wrong: `${name} is missing`,
        allowed: `${way.join(" + ")} together`,
        ...purpose,
      });
  }
  for (const name of all) {
    delete values[name];
    if (table.properties.get(name)?.affectsResults) unusable.add(name);
  }
}

function requireProperty({ table, invalid, unusable, meant }: Reading, name: string): void {
  const property = table.properties.get(name);
  if (!property) return;
  unusable.add(name);
  if (!meant.has(name))
    invalid.push({ path: [], given: undefined, wrong: `${name} is missing`, allowed: property.allowed });
}

function isGiven(input: Input, name: string): boolean {
  return input[name] !== undefined;
}

/** "a, b or c" */
function listed(names: readonly string[]): string {
  return [names.slice(0, -1).join(", "), ...names.slice(-1)].filter(Boolean).join(" or ");
}
