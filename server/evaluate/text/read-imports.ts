import ts from "typescript";
import type { FileImports } from "./file-imports.ts";
import type { PlanFile } from "./parse.ts";

/** In a file of its own, because the parser is not loaded where the answer is kept from an earlier run. */
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

/** By the tree, because such a call in a comment or a text is none; the tree is only walked if the words occur. */
function callsForLibrary(file: PlanFile): boolean {
  const { text, instrumented } = file;
  if (!/\b(?:require|import)\s*\(\s*["'`]loomwright["'`/]/.test(text)) return false;
  // The text is half typed or refused, and there is no tree to look at.
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
