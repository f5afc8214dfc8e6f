import ts from "typescript";
import type { ImportLine } from "./import-lines.ts";
import type { PlanFile } from "./parse.ts";

/** What the text of one file asks of others. It follows from the text alone, so that it can be kept beside a digest of it. */
export interface FileImports {
  /** The file is half typed; what it asks for cannot be told. */
  readonly broken: boolean;
  readonly lines: readonly AskedImport[];
  /** It loads the library by a call, `require("loomwright")` or `import("loomwright")`, which is not run. */
  readonly callsForLibrary: boolean;
}

type AskedImport = Pick<ImportLine, "specifier" | "typesOnly" | "typesDeclared">;

export function fileImports(file: PlanFile): FileImports {
  const { syntaxError, marked } = file;
  return {
    broken: syntaxError !== undefined,
    callsForLibrary: callsForLibrary(file),
    lines: (marked?.imports ?? []).map(({ specifier, typesOnly, typesDeclared }) => ({
      specifier,
      typesOnly,
      typesDeclared,
    })),
  };
}

/** By the tree, so that a comment or a text with such a call in it is none; which is only walked where the words occur. */
function callsForLibrary({ text, syntaxError, tree }: PlanFile): boolean {
  if (!/\b(?:require|import)\s*\(\s*["'`]loomwright["'`/]/.test(text)) return false;
  if (syntaxError) return true;
  const waiting: ts.Node[] = [tree.source];
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

/** Whether an import says what a file is a part of. A plan whose `circuit` is not called yet is one already. */
export function isPlansOwn({ specifier, typesOnly, typesDeclared }: AskedImport): boolean {
  return !(specifier === "loomwright" ? typesDeclared : typesOnly);
}
