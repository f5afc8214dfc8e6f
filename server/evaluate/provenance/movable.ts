import ts from "typescript";
import type { PropertyPath } from "../../../library/model/plain-values.ts";
import type { Movable } from "../checked-plan.ts";
import type { SourceNode } from "./contexts.ts";
import { declarationOf } from "./declarations.ts";
import type { PlanSourceMap } from "./source-map.ts";
import { staticValue } from "./static-value.ts";
import { unwrapExpression } from "./unwrap-expression.ts";

/** How a number of a record is written. */
export function movableAt(record: number, path: PropertyPath, places: PlanSourceMap): Movable {
  const { call, given } = places.argumentOf(record);
  const around = callsAround(call.node) ?? (places.recordsOfCall(record).size > 1 ? "in a loop" : undefined);
  if (around) return { state: "fixed", why: around };
  const value = places.valueOf(record, path);
  const origin = places.originOf(record, path);
  if (value === undefined && !origin?.whole) return { state: "absent" };
  const end = origin?.whole ? origin.trail.at(-1) : undefined;
  if (!origin || !end || !ts.isExpression(end.node)) return { state: "fixed", why: "computed" };
  for (const { file, node } of origin.trail) {
    if (!ts.isIdentifier(node)) continue;
    const declaration = declarationOf(node, file);
    if (declaration && isVariable(declaration)) return { state: "fixed", why: "reassigned", name: node.text };
  }
  const known = staticValue(end.node);
  if (!known || typeof known.value !== "number" || !Object.is(known.value, value))
    return { state: "fixed", why: "computed" };
  const { holder } = origin;
  const argument = given && unwrapExpression(given);
  const isOwn = isWithin({ file: holder.file, node: holder.literal }, call);
  if (!isOwn && !(argument && ts.isIdentifier(argument) && usesOf({ file: call.file, node: argument }) === 1))
    return { state: "fixed", why: "from a spread" };
  // A constant may set the same property of several parts, such as the batteries of a bank; any other use of it makes it shared.
  const sets = Math.max(1, places.recordsSetAt(path, end).size);
  const constant = origin.trail.find(({ node }) => ts.isIdentifier(node));
  if (constant && usesOf(constant) !== sets)
    return { state: "fixed", why: "a shared constant", name: (constant.node as ts.Identifier).text };
  return { state: "written", sets };
}

/** A function around a call may make several records, and so may a loop: also one that ran once. */
function callsAround(call: ts.Node): "in a factory" | "in a loop" | undefined {
  for (let node = call.parent; node; node = node.parent) {
    if (ts.isIterationStatement(node, false)) return "in a loop";
    if (!ts.isFunctionLike(node)) continue;
    return ts.isCallExpression(node.parent) && node.parent.arguments.includes(node as ts.Expression as never)
      ? "in a loop"
      : "in a factory";
  }
  return undefined;
}

/** `let` and `var`, and parameters. */
function isVariable(declaration: ts.Node): boolean {
  if (ts.isParameter(declaration)) return true;
  const list = declaration.parent;
  return list && ts.isVariableDeclarationList(list) && (list.flags & ts.NodeFlags.Const) === 0;
}

/** How often a name is used in its file, apart from its declaration; one that other files may import counts as shared. */
function usesOf({ file, node: name }: SourceNode): number {
  const { text } = name as ts.Identifier;
  let found = 0;
  const visit = (node: ts.Node): void => {
    if (ts.isIdentifier(node) && node.text === text && !isNameOnly(node)) found++;
    ts.forEachChild(node, visit);
  };
  visit(file.tree.source);
  const declaration = declarationOf(name as ts.Identifier, file);
  if (!declaration || !isOfThisFile(declaration)) return Number.POSITIVE_INFINITY;
  return found - 1;
}

/** Neither imported nor exported. */
function isOfThisFile(declaration: ts.Node): boolean {
  if (!ts.isVariableDeclaration(declaration)) return false;
  const statement = declaration.parent.parent;
  return !(
    ts.isVariableStatement(statement) &&
    statement.modifiers?.some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword)
  );
}

/** A property's name, not a use of the variable. */
function isNameOnly(node: ts.Identifier): boolean {
  const { parent } = node;
  return (
    (ts.isPropertyAccessExpression(parent) && parent.name === node) ||
    (ts.isPropertyAssignment(parent) && parent.name === node)
  );
}

function isWithin(inner: SourceNode, outer: SourceNode): boolean {
  return inner.file === outer.file && inner.node.pos >= outer.node.pos && inner.node.end <= outer.node.end;
}
