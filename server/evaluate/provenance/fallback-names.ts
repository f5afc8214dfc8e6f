import ts from "typescript";
import { workedOutOnce } from "../../../library/model/worked-out-once.ts";
import { fileName } from "../files/file-name.ts";
import type { PlanFile } from "../text/parse.ts";
import type { SourceNode } from "./contexts.ts";
import type { Provenance } from "./provenance.ts";
import { unwrapExpression } from "./unwrap-expression.ts";

/**
 * Names for unnamed records: the variable or property that they are assigned to, else the distinguishing call site ("camper.ts
 * line 12"). Equal names are numbered.
 */
export function fallbackNames(
  records: readonly number[],
  provenance: Provenance,
): ReadonlyMap<number, string> {
  const names = new Map<number, string>();
  const used = new Map<string, number>();
  for (const record of records) {
    const callers = provenance.callersOf(record);
    const outermost = callers.at(-1);
    const name = firstName(callers) ?? (outermost ? lineOf(outermost) : "circuit");
    const count = (used.get(name) ?? 0) + 1;
    used.set(name, count);
    names.set(record, count === 1 ? name : `${name} no. ${count}`);
  }
  return names;
}

function firstName(callers: readonly SourceNode[]): string | undefined {
  for (const { node } of callers) {
    const name = assignedTo(node);
    if (name) return name;
  }
  return undefined;
}

function assignedTo(call: ts.Node): string | undefined {
  let node = call;
  while (ts.isExpression(node.parent) && unwrapExpression(node.parent) === call) node = node.parent;
  const { parent } = node;
  if (ts.isVariableDeclaration(parent) && ts.isIdentifier(parent.name)) return parent.name.text;
  if (ts.isPropertyAssignment(parent) && !ts.isComputedPropertyName(parent.name)) return parent.name.text;
  if (ts.isBinaryExpression(parent) && parent.operatorToken.kind === ts.SyntaxKind.EqualsToken) {
    if (ts.isIdentifier(parent.left)) return parent.left.text;
    if (ts.isPropertyAccessExpression(parent.left)) return parent.left.name.text;
  }
  return undefined;
}

function lineOf({ file, node }: SourceNode): string {
  const { source } = file.tree;
  const start = node.getStart(source);
  const { line } = source.getLineAndCharacterOfPosition(start);
  const before = separatorsIn(file).filter((at) => at < start).length;
  return `${fileName(file.uri)} line ${line - before + 1}`;
}

/** Offsets of U+2028 and U+2029: they separate lines for TypeScript, but not for editors. */
const separatorsIn = workedOutOnce(({ text }: PlanFile): readonly number[] =>
  [...text.matchAll(/[\u2028\u2029]/g)].map(({ index }) => index),
);
