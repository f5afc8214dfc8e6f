import ts from "typescript";
import type { PlanFile } from "../text/parse.ts";
import type { SourceNode, TracedRun } from "./contexts.ts";
import { namesAround } from "./declarations.ts";
import { ImportedNames } from "./imported-names.ts";
import { unwrapExpression } from "./unwrap-expression.ts";

/**
 * The names that a text at a place may use for results of calls, by the call: `house` for the call of `battery` in
 * `const house = battery(…)`, in the same file or imported. A variable that is declared further down has no value yet.
 */
export function namesInReach(
  file: PlanFile,
  offset: number,
  traced: TracedRun,
): ReadonlyMap<ts.Node, string> {
  const imported = new ImportedNames(traced);
  const names = new Map<ts.Node, string>();
  for (const [name, declaration] of namesAround(nodeAt(file.tree.source, offset), file)) {
    const target = imported.ofImport(declaration, file) ?? { file, node: declaration };
    if (target.file === file && declaration === target.node && declaration.end > offset) continue;
    const call = callDeclared(target);
    if (call && !names.has(call)) names.set(call, name);
  }
  return names;
}

/** The call whose result a variable is declared with. */
export function callDeclared({ node }: SourceNode): ts.Node | undefined {
  if (!ts.isVariableDeclaration(node) || !ts.isIdentifier(node.name) || !node.initializer) return undefined;
  return unwrapExpression(node.initializer);
}

function nodeAt(source: ts.SourceFile, offset: number): ts.Node {
  const around = (child: ts.Node) => (child.pos <= offset && offset <= child.end ? child : undefined);
  let node: ts.Node = source;
  for (let inner = ts.forEachChild(node, around); inner; inner = ts.forEachChild(node, around)) node = inner;
  return node;
}
