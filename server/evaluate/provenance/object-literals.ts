import ts from "typescript";
import { staticValue } from "./static-value.ts";
import { unwrapExpression } from "./unwrap-expression.ts";

/** The name of a property, if the text determines it. */
export function propertyName(property: ts.ObjectLiteralElementLike): string | undefined {
  const { name } = property;
  if (!name) return undefined;
  if (ts.isIdentifier(name) || ts.isStringLiteralLike(name) || ts.isNumericLiteral(name)) return name.text;
  const computed = ts.isComputedPropertyName(name)
    ? staticValue(unwrapExpression(name.expression))
    : undefined;
  return computed && String(computed.value);
}

/** The value expression of a property; its own name for a shorthand; undefined for methods and accessors. */
export function propertyValue(property: ts.ObjectLiteralElementLike): ts.Expression | undefined {
  if (ts.isPropertyAssignment(property)) return property.initializer;
  return ts.isShorthandPropertyAssignment(property) ? property.name : undefined;
}
