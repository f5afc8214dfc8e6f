import ts from "typescript";
import type { PlanFile } from "../text/parse.ts";
import type { SourceNode, TracedRun } from "./contexts.ts";
import { declarationOf, exportOf, passedOn } from "./declarations.ts";

/** Resolves names across files: through imports, re-exports, and `export *`. */
export class ImportedNames {
  readonly #traced: TracedRun;

  constructor(traced: TracedRun) {
    this.#traced = traced;
  }

  /** The target of an import; undefined for the library, and for other declarations. */
  ofImport(declaration: ts.Node, file: PlanFile): SourceNode | undefined {
    if (ts.isImportSpecifier(declaration)) {
      const other = this.fileOf(declaration.parent.parent.parent.moduleSpecifier, file);
      return other && this.named(other, (declaration.propertyName ?? declaration.name).text);
    }
    if (ts.isImportClause(declaration)) {
      const other = this.fileOf(declaration.parent.moduleSpecifier, file);
      return other && this.named(other, "default");
    }
    return undefined;
  }

  /** A file's export of a name. `asked` are the names already visited: re-exports may form a circle. */
  named(file: PlanFile, name: string, asked = new Set<string>()): SourceNode | undefined {
    const question = `${file.number} ${name}`;
    if (asked.has(question)) return undefined;
    asked.add(question);
    const node = exportOf(file, name);
    if (!node) {
      for (const text of name === "default" ? [] : passedOn(file)) {
        const other = this.#traced.imported(file, text);
        const found = other && this.named(other, name, asked);
        if (found) return found;
      }
      return undefined;
    }
    if (!ts.isExportSpecifier(node)) return { file, node };
    const { moduleSpecifier } = node.parent.parent;
    const inner = node.propertyName ?? node.name;
    if (moduleSpecifier) {
      const other = this.fileOf(moduleSpecifier, file);
      return other && this.named(other, inner.text, asked);
    }
    const declaration = ts.isIdentifier(inner) ? declarationOf(inner, file) : undefined;
    return declaration && (this.ofImport(declaration, file) ?? { file, node: declaration });
  }

  /** The target file of an import's text. */
  fileOf(specifier: ts.Expression, importer: PlanFile): PlanFile | undefined {
    return ts.isStringLiteral(specifier) ? this.#traced.imported(importer, specifier.text) : undefined;
  }
}
