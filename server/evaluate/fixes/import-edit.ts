import ts from "typescript";
import { exportedNames, namesAround } from "../provenance/declarations.ts";
import { ImportedNames } from "../provenance/imported-names.ts";
import { callDeclared } from "../provenance/names-in-reach.ts";
import type { PlanSourceMap } from "../provenance/source-map.ts";
import type { PlanFile } from "../text/parse.ts";
import type { Uri } from "../workspace.ts";
import { endOfRemarks, indentAt, lineBreakOf, quoteOf, type TextEdit } from "./literal-edits.ts";

/** A name that a file gets by an import of its own. */
export interface ImportEdit {
  /** Its name in that file: no other identifier there has it. */
  readonly inText: string;
  readonly edit: TextEdit;
}

/**
 * Imports the result of a call, which another file of the plan exports by name: in an import of that file, or on a new line behind
 * the last one. Undefined if that file does not export it, if the call is made several times, or if a path cannot name the file.
 */
export function importEdit(record: number, into: PlanFile, places: PlanSourceMap): ImportEdit | undefined {
  const { call } = places.argumentOf(record);
  if (call.file === into || places.recordsOfCall(record).size > 1) return undefined;
  const imported = new ImportedNames(places.traced);
  const exported = exportedNames(call.file).find((name) => {
    const target = name === "default" ? undefined : imported.named(call.file, name);
    return target !== undefined && callDeclared(target) === call.node;
  });
  if (exported === undefined) return undefined;
  const inText = freeName(exported, into.tree.source);
  const written = inText === exported ? exported : `${exported} as ${inText}`;
  const lines = into.tree.source.statements.filter(ts.isImportDeclaration);
  const own = lines.filter(({ moduleSpecifier }) => imported.fileOf(moduleSpecifier, into) === call.file);
  for (const { importClause } of own) {
    const edit = importClause && addedTo(importClause, written, into.tree.source);
    if (edit) return { inText, edit };
  }
  const last = lines.at(-1);
  const path = ownPath(own) ?? pathTo(call.file.uri, into.uri, endingsIn(into, places));
  if (!last || path === undefined) return undefined;
  const { source } = into.tree;
  const quote = quoteOf(source);
  const semicolon = source.text[last.end - 1] === ";" ? ";" : "";
  const start = endOfRemarks(source.text, last.end);
  const newText = `${lineBreakOf(source.text)}import { ${written} } from ${quote}${path}${quote}${semicolon}`;
  return { inText, edit: { start, end: start, newText } };
}

/** Whether a file has a name already, declared or imported at its top level. */
export function hasName(file: PlanFile, name: string): boolean {
  return namesAround(file.tree.source, file).has(name);
}

/** The name itself, or with a number behind it: one that no identifier of the text has. */
function freeName(name: string, source: ts.SourceFile): string {
  const used = usedNames.get(source) ?? namesUsedIn(source);
  usedNames.set(source, used);
  if (!used.has(name)) return name;
  let number = 2;
  while (used.has(`${name}${number}`)) number++;
  return `${name}${number}`;
}

/** A view asks for each part without a place. */
const usedNames = new WeakMap<ts.SourceFile, ReadonlySet<string>>();

function namesUsedIn(source: ts.SourceFile): ReadonlySet<string> {
  const used = new Set<string>();
  const visit = (node: ts.Node): void => {
    if (ts.isIdentifier(node) && !isPropertyName(node)) used.add(node.text);
    ts.forEachChild(node, visit);
  };
  visit(source);
  return used;
}

function isPropertyName(node: ts.Identifier): boolean {
  const { parent } = node;
  return (ts.isPropertyAccessExpression(parent) || ts.isPropertyAssignment(parent)) && parent.name === node;
}

/** Behind the names that the line imports, in their layout; undefined for an import of types, of all, or of nothing by name. */
function addedTo(
  { phaseModifier, namedBindings }: ts.ImportClause,
  written: string,
  source: ts.SourceFile,
): TextEdit | undefined {
  if (phaseModifier !== undefined || !namedBindings || !ts.isNamedImports(namedBindings)) return undefined;
  const last = namedBindings.elements.at(-1);
  if (!last) return undefined;
  const { text } = source;
  const start = last.getStart(source);
  const onLines = text.slice(namedBindings.getStart(source), start).includes("\n");
  const newText = onLines ? `,${lineBreakOf(text)}${indentAt(text, start)}${written}` : `, ${written}`;
  return { start: last.end, end: last.end, newText };
}

function ownPath([line]: readonly ts.ImportDeclaration[]): string | undefined {
  return line && ts.isStringLiteral(line.moduleSpecifier) ? line.moduleSpecifier.text : undefined;
}

/** The ending that imports of the plan's files have: ".ts", ".js", or none; those of the file itself first. */
function endingsIn(file: PlanFile, { traced }: PlanSourceMap): string | undefined {
  for (const { tree } of [file, ...traced.files])
    for (const line of tree.source.statements) {
      if (!ts.isImportDeclaration(line) || !ts.isStringLiteral(line.moduleSpecifier)) continue;
      const { text } = line.moduleSpecifier;
      if (text.startsWith(".")) return endingOf(text);
    }
  return undefined;
}

function endingOf(path: string): string {
  return /\.[cm]?[jt]sx?$/.exec(path)?.[0] ?? "";
}

/** "./boards.ts": from the folder of one file to the other. `ending`: as other imports are written. */
function pathTo(file: Uri, from: Uri, ending: string | undefined): string | undefined {
  const [to, there] = [file, from].map((uri) => uri.split("/"));
  const common = to!.findIndex((folder, at) => at === to!.length - 1 || folder !== there![at]);
  const up = there!.length - 1 - common;
  const steps = [...(up > 0 ? Array.from({ length: up }, () => "..") : ["."]), ...to!.slice(common)];
  const path = steps.map(decodeURIComponent).join("/");
  // A name with a character that means something else in a path.
  if (new URL(path, from).href !== new URL(file).href) return undefined;
  const own = endingOf(path);
  const stem = path.slice(0, path.length - own.length);
  return `${stem}${ending?.includes("js") ? own.replace("t", "j") : ending === "" ? "" : own}`;
}
