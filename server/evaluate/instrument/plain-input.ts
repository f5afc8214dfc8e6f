import ts from "typescript";
import { isSamePlainData } from "../../../library/model/same-plain-data.ts";
import { staticValue } from "../provenance/static-value.ts";
import { unwrapExpression } from "../provenance/unwrap-expression.ts";

/**
 * The input of a call with one object literal that contains only literal values and names of terminals and parts; running it
 * could add no information: `cable({ from: house.positive, to: bus.stud, lengthM: 1, gauge: 4 })`. Undefined for all other
 * calls. Most calls of most plans have this form, and recording them takes most of the sandbox's time.
 */
export function writtenInput(call: ts.CallExpression): WrittenInput | undefined {
  const literal = literalGivenTo(call);
  if (!literal) return undefined;
  if (!known.has(literal)) known.set(literal, inputOf(literal));
  return known.get(literal);
}

/** The same after a change within the call, in the same tree. */
export function changedInput(call: ts.CallExpression): WrittenInput | undefined {
  const literal = literalGivenTo(call);
  if (literal) known.delete(literal);
  return writtenInput(call);
}

function literalGivenTo(call: ts.CallExpression): ts.ObjectLiteralExpression | undefined {
  const [argument] = call.arguments;
  if (!argument || call.arguments.length > 1 || call.questionDotToken) return undefined;
  const literal = unwrapExpression(argument);
  return ts.isObjectLiteralExpression(literal) ? literal : undefined;
}

export interface WrittenInput {
  /** With `undefined` in place of each name. */
  readonly object: Readonly<Record<string, unknown>>;
  /** In source order. Only the run determines the values of the names. */
  readonly named: readonly NamedValue[];
}

/** The property `from: house.positive`, `to: inverter`, or `on: board` in `at: { on: board, leftMm: 120, topMm: 80 }`. */
interface NamedValue {
  /** The names of the properties that lead to it: `["at", "on"]`. */
  readonly path: readonly string[];
  readonly expression: ts.Expression;
  /** "house". */
  readonly name: string;
}

/**
 * The record's input, once the run has determined the values of the names; undefined if their number differs. Returns the same
 * object again for the same values: callers cache by its identity.
 */
export function inputWith(read: WrittenInput, given: readonly unknown[]): object | undefined {
  const { object, named } = read;
  if (given.length !== named.length) return undefined;
  if (named.length === 0) return object;
  const before = madeBefore.get(read);
  if (before && isSamePlainData(before.given, given)) return before.whole;
  let whole: Plain = object;
  for (const [at, { path }] of named.entries()) whole = withValue(whole, path, given[at]);
  madeBefore.set(read, { given, whole });
  return whole;
}

type Plain = Readonly<Record<string, unknown>>;

/** With a value in place of another, properties in their order. */
function withValue(object: Plain, [name = "", ...rest]: readonly string[], value: unknown): Plain {
  return { ...object, [name]: rest.length === 0 ? value : withValue(object[name] as Plain, rest, value) };
}

const madeBefore = new WeakMap<
  WrittenInput,
  { readonly given: readonly unknown[]; readonly whole: object }
>();

/** The nodes that an edit leaves unchanged stay the same; see {@link changedInput}. */
const known = new WeakMap<ts.ObjectLiteralExpression, WrittenInput | undefined>();

// Far below the limits of the sandbox, to give the same record by both routes.
const deepest = 3;
const mostProperties = 100;
const mostCharacters = 500;

function inputOf(literal: ts.ObjectLiteralExpression): WrittenInput | undefined {
  const named: NamedValue[] = [];
  const object = writtenObject(literal, [], named);
  return object && { object, named };
}

/** `path`: the names of the properties that lead to the literal. */
function writtenObject(
  literal: ts.ObjectLiteralExpression,
  path: readonly string[],
  named: NamedValue[],
): Record<string, unknown> | undefined {
  const before = named.length;
  if (path.length >= deepest || literal.properties.length > mostProperties) return undefined;
  const object: Record<string, unknown> = {};
  for (const property of literal.properties) {
    if (!ts.isPropertyAssignment(property)) return undefined;
    const { name } = property;
    if (!(ts.isIdentifier(name) || ts.isStringLiteral(name)) || name.text === "__proto__") return undefined;
    const value = unwrapExpression(property.initializer);
    if (ts.isObjectLiteralExpression(value)) {
      const nested = writtenObject(value, [...path, name.text], named);
      if (!nested) return undefined;
      object[name.text] = nested;
      continue;
    }
    const known = staticValue(value);
    const base = known || !namesPart([...path, name.text]) ? undefined : baseOf(value);
    if (base) named.push({ path: [...path, name.text], expression: value, name: base.text });
    else if (!known || !fits(known.value)) return undefined;
    object[name.text] = known?.value;
  }
  // If a name occurs twice, its last property counts, in the order of the text: too complicated to combine with names.
  const twice = Object.keys(object).length < literal.properties.length;
  return twice && named.length > before ? undefined : object;
}

/**
 * Properties that refer to parts, terminals, surfaces or channels. For any other property, the sandbox also records which object its
 * value came from, and findings need that.
 */
const naming = new Set(["from", "to", "returnTo", "at.on", "at.endOf"]);

function namesPart(path: readonly string[]): boolean {
  return naming.has(path.join("."));
}

/** The `house` of `house`, `house.positive` and `house.front.positive`. */
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
