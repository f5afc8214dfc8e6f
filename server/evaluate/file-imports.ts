import ts from "typescript";
import type { ImportLine } from "./import-lines.ts";
import type { PlanFile } from "./parse.ts";

/** What the text of one file asks of others. It follows from the text alone, so that it can be kept beside a digest of it. */
export interface FileImports {
  /** The file is half typed, or refused; what it asks for is unknown. */
  readonly broken: boolean;
  /** Reading it was given up for want of time. Another time, or with more time, it may be read: this is not to be kept. */
  readonly outOfTime: boolean;
  readonly lines: readonly AskedImport[];
  /** It loads the library by a call, `require("loomwright")` or `import("loomwright")`, which is not run. */
  readonly callsForLibrary: boolean;
}

type AskedImport = Pick<ImportLine, "specifier" | "typesOnly" | "typesDeclared">;

export function fileImports(file: PlanFile): FileImports {
  const { refusal, marked } = file;
  return {
    broken: marked === undefined,
    outOfTime: refusal?.reason === "reading-too-slow",
    callsForLibrary: callsForLibrary(file),
    lines: (marked?.imports ?? []).map(({ specifier, typesOnly, typesDeclared }) => ({
      specifier,
      typesOnly,
      typesDeclared,
    })),
  };
}

/** By the tree, so that a comment or a text with such a call in it is none; which is only walked where the words occur. */
function callsForLibrary(file: PlanFile): boolean {
  const { text, marked } = file;
  if (!/\b(?:require|import)\s*\(\s*["'`]loomwright["'`/]/.test(text)) return false;
  // The text is half typed or refused, and there is no tree to look at.
  if (!marked) return true;
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

/** Whether an import says what a file is a part of. A plan whose `circuit` is not called yet is one already. */
export function isPlansOwn({ specifier, typesOnly, typesDeclared }: AskedImport): boolean {
  return !(specifier === "loomwright" ? typesDeclared : typesOnly);
}
