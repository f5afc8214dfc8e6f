import ts from "typescript";
import { staticValue } from "../provenance/static-value.ts";
import { unwrapExpression } from "../provenance/unwrap-expression.ts";

/**
 * What a call is given, where it is one object of nothing but written-out values and names of terminals and parts, so that
 * running it could tell no more than reading it: `cable({ from: house.positive, to: bus.stud, lengthM: 1, gauge: 4 })`.
 * Undefined for everything else. Most calls of most plans are written so, and making records of them takes the sandbox most
 * of its time.
 */
export function writtenInput(call: ts.CallExpression): WrittenInput | undefined {
  const [argument] = call.arguments;
  if (!argument || call.arguments.length > 1 || call.questionDotToken) return undefined;
  const literal = unwrapExpression(argument);
  if (!ts.isObjectLiteralExpression(literal)) return undefined;
  if (!known.has(literal)) known.set(literal, inputOf(literal));
  return known.get(literal);
}

export interface WrittenInput {
  /** With `undefined` where something is named. */
  readonly object: Readonly<Record<string, unknown>>;
  /** In the order of the text. What the names stand for, only the run can tell. */
  readonly named: readonly NamedValue[];
}

/** The property `from: house.positive`, or `to: inverter`. */
interface NamedValue {
  readonly key: string;
  readonly expression: ts.Expression;
  /** "house". */
  readonly name: string;
}

/**
 * The record's input, once the run has told what the names stood for; undefined where it told something else. The same object
 * again for what was given before: who reads it remembers it by its identity.
 */
export function inputWith(read: WrittenInput, given: readonly unknown[]): object | undefined {
  const { object, named } = read;
  if (given.length !== named.length) return undefined;
  if (named.length === 0) return object;
  const before = madeBefore.get(read);
  if (before && isSame(before.given, given)) return before.whole;
  const whole = { ...object };
  for (const [at, { key }] of named.entries()) whole[key] = given[at];
  madeBefore.set(read, { given, whole });
  return whole;
}

const madeBefore = new WeakMap<
  WrittenInput,
  { readonly given: readonly unknown[]; readonly whole: object }
>();

/** Of plain data. */
function isSame(one: unknown, other: unknown): boolean {
  if (one === other) return true;
  if (typeof one !== "object" || typeof other !== "object" || one === null || other === null) return false;
  const [entries, others] = [Object.entries(one), Object.entries(other)];
  return (
    entries.length === others.length &&
    entries.every(([key, value], at) => key === others[at]![0] && isSame(value, others[at]![1]))
  );
}

/** The parser keeps the nodes of whatever an edit leaves as it was. */
const known = new WeakMap<ts.ObjectLiteralExpression, WrittenInput | undefined>();

// Far below what the sandbox cuts off, so that both ways to a record give the same one.
const deepest = 3;
const mostProperties = 100;
const mostCharacters = 500;

function inputOf(literal: ts.ObjectLiteralExpression): WrittenInput | undefined {
  const named: NamedValue[] = [];
  const object = writtenObject(literal, 1, named);
  // The record's properties come in the order of the text, the last one of a name counts: too much to tell with names.
  const twice = named.length > 0 && object && Object.keys(object).length < literal.properties.length;
  return object && !twice ? { object, named } : undefined;
}

function writtenObject(
  literal: ts.ObjectLiteralExpression,
  depth: number,
  named: NamedValue[],
): Record<string, unknown> | undefined {
  if (depth > deepest || literal.properties.length > mostProperties) return undefined;
  const object: Record<string, unknown> = {};
  for (const property of literal.properties) {
    if (!ts.isPropertyAssignment(property)) return undefined;
    const { name } = property;
    if (!(ts.isIdentifier(name) || ts.isStringLiteral(name)) || name.text === "__proto__") return undefined;
    const value = unwrapExpression(property.initializer);
    if (ts.isObjectLiteralExpression(value)) {
      const nested = writtenObject(value, depth + 1, named);
      if (!nested) return undefined;
      object[name.text] = nested;
      continue;
    }
    const known = staticValue(value);
    const base = known || depth > 1 || !naming.has(name.text) ? undefined : baseOf(value);
    if (base) named.push({ key: name.text, expression: value, name: base.text });
    else if (!known || !fits(known.value)) return undefined;
    object[name.text] = known?.value;
  }
  return object;
}

/**
 * Properties that name what another word made. Of any other property the sandbox also tells which object its value came from,
 * and findings need that.
 */
const naming = new Set(["from", "to", "returnTo"]);

/** `house` of `house`, `house.positive` and `house.front.positive`. */
function baseOf(value: ts.Expression): ts.Identifier | undefined {
  let base = value;
  while (ts.isPropertyAccessExpression(base) && ts.isIdentifier(base.name) && !base.questionDotToken) {
    base = base.expression;
  }
  return ts.isIdentifier(base) ? base : undefined;
}

function fits(value: unknown): boolean {
  if (typeof value === "number") return Number.isFinite(value);
  return typeof value !== "string" || value.length <= mostCharacters;
}
