import ts from "typescript";
import type { FileImports } from "./file-imports.ts";
import type { PlanFile } from "./parse.ts";

/** In a file of its own, to avoid loading the parser when the answer is stored from an earlier run. */
export function fileImports(file: PlanFile): FileImports {
  const { refusal, instrumented } = file;
  return {
    broken: instrumented === undefined,
    outOfTime: refusal?.reason === "reading-too-slow",
    callsForLibrary: callsForLibrary(file),
    lines: (instrumented?.imports ?? []).map(({ specifier, typesOnly, typesDeclared }) => ({
      specifier,
      typesOnly,
      typesDeclared,
    })),
  };
}

/** Uses the tree, because such a call in a comment or a string does not count; walks it only if the characters occur. */
function callsForLibrary(file: PlanFile): boolean {
  const { text, instrumented } = file;
  if (!/\b(?:require|import)\s*\(\s*["'`]loomwright["'`/]/.test(text)) return false;
  // The text is half typed or refused, and has no tree to search.
  if (!instrumented) return true;
  const waiting: ts.Node[] = [file.tree.source];
  for (const node of waiting) {
    if (ts.isCallExpression(node) || ts.isExternalModuleReference(node)) {
      const [asked] = ts.isCallExpression(node) ? node.arguments : [node.expression];
      const loads =
        !ts.isCallExpression(node) ||
        node.expression.kind === ts.SyntaxKind.ImportKeyword ||
        (ts.isIdentifier(node.expression) && node.expression.text === "require");
      if (loads && asked && ts.isStringLiteralLike(asked) && /^loomwright(?:$|\/)/.test(asked.text))
        return true;
    }
    ts.forEachChild(node, (child) => void waiting.push(child));
  }
  return false;
}
