import ts from "typescript";
import type { TextSplices } from "../instrument/text-splices.ts";

/** Reads an import declaration, and removes type-only and unused names from the text. */
export function importLine(line: ts.ImportDeclaration, around: FileAround): ImportLine {
  const { source, used, splices } = around;
  const { importClause: clause } = line;
  const place = specifierPlace(line.moduleSpecifier, source);
  if (!clause) return { ...place, names: [], typesOnly: false, typesDeclared: false };
  if (clause.phaseModifier === ts.SyntaxKind.TypeKeyword) {
    return { ...place, names: [], typesOnly: true, typesDeclared: true };
  }
  const names: { name: string; start: number; end: number }[] = [];
  const unused: ts.Node[] = [];
  let kept = 0;
  const sort = (node: ts.Identifier, whole: ts.Node, imported: string | undefined, typeOnly: boolean) => {
    if (typeOnly || !used.has(node.text)) {
      unused.push(whole);
      return;
    }
    kept++;
    if (imported !== undefined) names.push({ name: imported, start: whole.getStart(source), end: whole.end });
  };
  if (clause.name) sort(clause.name, clause.name, "default", false);
  const bindings = clause.namedBindings;
  if (bindings && ts.isNamespaceImport(bindings)) sort(bindings.name, bindings, undefined, false);
  if (bindings && ts.isNamedImports(bindings)) {
    for (const element of bindings.elements) {
      sort(element.name, element, (element.propertyName ?? element.name).text, element.isTypeOnly);
    }
  }
  if (kept > 0) for (const node of unused) leaveOutWithComma(node, around);
  // `import "./galley.ts"` remains: the circuits made there count, even if their names are unused.
  else splices.leaveOut(clause.getStart(source), line.moduleSpecifier.getStart(source));
  const typesOnly = kept === 0 && unused.length > 0 && !place.specifier.startsWith(".");
  if (typesOnly) splices.leaveOut(line.getStart(source), line.end);
  return { names, typesOnly, typesDeclared: false, ...place };
}

/** A re-export also requests another module; it is not changed. */
export function exportLine(line: ts.ExportDeclaration, source: ts.SourceFile): ImportLine[] {
  const { moduleSpecifier, exportClause } = line;
  if (!moduleSpecifier) return [];
  const elements = exportClause && ts.isNamedExports(exportClause) ? exportClause.elements : [];
  const names = elements
    .filter((element) => !element.isTypeOnly)
    .map((element) => ({
      name: (element.propertyName ?? element.name).text,
      start: element.getStart(source),
      end: element.end,
    }));
  return [{ ...specifierPlace(moduleSpecifier, source), names, typesOnly: false, typesDeclared: false }];
}

/** The file that contains the line. */
export interface FileAround {
  readonly source: ts.SourceFile;
  /** Names that it uses as values anywhere. */
  readonly used: ReadonlySet<string>;
  readonly splices: TextSplices;
}

/** An import or a re-export. */
export interface ImportLine {
  readonly specifier: string;
  /** The text that names the module, with its quotes. */
  readonly start: number;
  readonly end: number;
  /** Names of the other module that this line needs to run. */
  readonly names: readonly { readonly name: string; readonly start: number; readonly end: number }[];
  /** All its names are used as types only: the module need not exist when the plan runs. */
  readonly typesOnly: boolean;
  /** It is written as `import type`; false if it is only types because a name is not used yet. */
  readonly typesDeclared: boolean;
}

function specifierPlace(specifier: ts.Expression, source: ts.SourceFile) {
  return {
    specifier: ts.isStringLiteralLike(specifier) ? specifier.text : specifier.getText(source),
    start: specifier.getStart(source),
    end: specifier.end,
  };
}

function leaveOutWithComma(node: ts.Node, { source, splices }: FileAround): void {
  const { text } = source;
  let end = node.end;
  while (/\s/.test(text.charAt(end))) end++;
  splices.leaveOut(node.getStart(source), text[end] === "," ? end + 1 : node.end);
}
