import ts from "typescript";
import { bareExpression } from "./bare-expression.ts";
import { staticValue } from "./static-value.ts";

/**
 * What a call is given, where it is one object of nothing but written-out values, so that running it could tell no more than
 * reading it: `circuit({ load: 4, oneWayFt: 9, gauge: 12, protect: { ratingA: 10 } })`. Undefined for everything else.
 * Most circuits of most plans are written so, and making records of them takes the sandbox most of its time.
 */
export function writtenInput(call: ts.CallExpression): object | undefined {
  const [argument] = call.arguments;
  if (!argument || call.arguments.length > 1 || call.questionDotToken) return undefined;
  const literal = bareExpression(argument);
  if (!ts.isObjectLiteralExpression(literal)) return undefined;
  if (!known.has(literal)) known.set(literal, writtenObject(literal, 1));
  return known.get(literal);
}

/** The parser keeps the nodes of whatever an edit leaves as it was. */
const known = new WeakMap<ts.ObjectLiteralExpression, object | undefined>();

// Far below what the sandbox cuts off, so that both ways to a record give the same one.
const deepest = 3;
const mostProperties = 100;
const mostCharacters = 500;

function writtenObject(
  literal: ts.ObjectLiteralExpression,
  depth: number,
): Record<string, unknown> | undefined {
  if (depth > deepest || literal.properties.length > mostProperties) return undefined;
  const object: Record<string, unknown> = {};
  for (const property of literal.properties) {
    if (!ts.isPropertyAssignment(property)) return undefined;
    const { name } = property;
    if (!(ts.isIdentifier(name) || ts.isStringLiteral(name)) || name.text === "__proto__") return undefined;
    const value = bareExpression(property.initializer);
    if (ts.isObjectLiteralExpression(value)) {
      const nested = writtenObject(value, depth + 1);
      if (!nested) return undefined;
      object[name.text] = nested;
      continue;
    }
    const known = staticValue(value);
    if (!known || !fits(known.value)) return undefined;
    object[name.text] = known.value;
  }
  return object;
}

function fits(value: unknown): boolean {
  if (typeof value === "number") return Number.isFinite(value);
  return typeof value !== "string" || value.length <= mostCharacters;
}
