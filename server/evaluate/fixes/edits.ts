import ts from "typescript";
import type { PropertyPath } from "../../../library/model/plain-values.ts";
import {
  type Change,
  isNamedInPlan,
  type NamedInPlan,
  type ProposedFix,
  type Settable,
} from "../../../library/rules/finding.ts";
import type { Edit, PlacedFix } from "../checked-plan.ts";
import type { SourceNode } from "../provenance/contexts.ts";
import { propertyValue } from "../provenance/object-literals.ts";
import type { Origin } from "../provenance/provenance.ts";
import type { PlanSourceMap } from "../provenance/source-map.ts";
import { unwrapExpression } from "../provenance/unwrap-expression.ts";
import type { PlanFile } from "../text/parse.ts";
import { hasName, importEdit } from "./import-edit.ts";
import { insertProperties, quoteOf, removeProperty, renameProperty, type TextEdit } from "./literal-edits.ts";
import { printValue } from "./print-value.ts";

/**
 * The text edits of a fix, made where the values are written. Undefined when one of them cannot be edited there, or when two
 * conflict. A fix that also changes other circuits is a suggestion, even if the rule calls it a repair.
 */
export function editsOf(fix: ProposedFix, places: PlanSourceMap): PlacedFix | undefined {
  const changed = new Set(fix.changes.map(({ record }) => record));
  const changing = new Set<ReadonlySet<number>>();
  const edits: Edit[] = [];
  const insertions = new Map<ts.Node, Insertion>();
  for (const change of fix.changes) {
    const made =
      change.do === "set"
        ? set(change, places)
        : change.do === "remove"
          ? remove(change, places)
          : rename(change, places);
    if (!made) return undefined;
    changing.add(made.records);
    for (const named of change.do === "set" ? namesIn(change.value) : []) {
      const imported = importOf(named, made.file, places);
      if (imported === "impossible") return undefined;
      if (imported && !edits.some((other) => sameEdit(imported, other))) edits.push(imported);
    }
    if ("edit" in made) {
      const edit = editIn(made.file, made.edit);
      // One edit changes all cables that share a size.
      if (!edits.some((other) => sameEdit(edit, other))) edits.push(edit);
    } else {
      const sameLiteral = insertions.get(made.literal);
      if (sameLiteral) {
        const there = sameLiteral.properties.find(({ name }) => name === made.property.name);
        if (there && there.value !== made.property.value) return undefined;
        if (!there) sameLiteral.properties.push(made.property);
      } else insertions.set(made.literal, { file: made.file, properties: [made.property], wrap: made.wrap });
    }
  }
  for (const [node, { file, properties, wrap }] of insertions) {
    const { source } = file.tree;
    if (wrap) {
      const printed = properties.map(({ name, value }) => `, ${name}: ${value}`).join("");
      const text = `{ ...${node.getText(source)}${printed} }`;
      edits.push(editIn(file, { start: node.getStart(source), end: node.end, newText: text }));
    } else if (ts.isObjectLiteralExpression(node)) {
      for (const edit of insertProperties(node, properties, source)) edits.push(editIn(file, edit));
    }
  }
  if (overlap(edits)) return undefined;
  const { title } = fix;
  const changesOthers = [...changing].some((records) => hasOthers(records, changed));
  edits.sort(byPlace);
  if (!changesOthers) return { title, kind: fix.kind, edits, alsoChanges: [] };
  let others: readonly number[] | undefined;
  return {
    title,
    kind: "suggestion",
    edits,
    // Computed on demand: of thousands of fixes that each change thousands of circuits, only a few are ever viewed.
    get alsoChanges() {
      others ??= othersIn(changing, changed);
      return others;
    },
  };
}

/** The names of other calls in a value. */
function namesIn(value: Settable): readonly NamedInPlan[] {
  if (typeof value !== "object") return [];
  return isNamedInPlan(value) ? [value] : Object.values(value).flatMap(namesIn);
}

/** The import that a name needs in the file where it is written; undefined if that file has the name. */
function importOf(
  { inText, reference: { id } }: NamedInPlan,
  file: PlanFile,
  places: PlanSourceMap,
): Edit | "impossible" | undefined {
  if (places.argumentOf(id).call.file === file || hasName(file, inText)) return undefined;
  const made = importEdit(id, file, places);
  return made?.inText === inText ? editIn(file, made.edit) : "impossible";
}

function hasOthers(records: ReadonlySet<number>, than: ReadonlySet<number>): boolean {
  for (const record of records) if (!than.has(record)) return true;
  return false;
}

function othersIn(sets: Iterable<ReadonlySet<number>>, than: ReadonlySet<number>): readonly number[] {
  const others = new Set<number>();
  for (const records of sets) for (const record of records) if (!than.has(record)) others.add(record);
  return [...others].sort((a, b) => a - b);
}

/** True if two edits touch the same characters, or insert at the same position. */
export function overlap(edits: readonly Edit[]): boolean {
  const sorted = [...edits].sort(byPlace);
  return sorted.some((edit, index) => {
    const next = sorted[index + 1];
    if (!next || next.uri !== edit.uri) return false;
    return next.start < edit.end || (next.start === edit.start && next.end === edit.end);
  });
}

interface Insertion {
  readonly file: PlanFile;
  readonly properties: { readonly name: string; readonly value: string }[];
  /** The argument is a name or similar: it is spread into a new literal. */
  readonly wrap: boolean;
}

/** `records`: all records that the edit changes; may include the fix's own. */
type Made = { readonly file: PlanFile; readonly records: ReadonlySet<number> } & (
  | { readonly edit: TextEdit }
  | {
      readonly literal: ts.Expression;
      readonly property: { readonly name: string; readonly value: string };
      readonly wrap: boolean;
    }
);

function set(change: Change & { readonly do: "set" }, places: PlanSourceMap): Made | undefined {
  const { record, path, value } = change;
  const origin = places.originOf(record, path);
  const end = origin && (isNamedInPlan(value) ? asWritten(origin) : origin.trail.at(-1));
  if (!origin || !end) return insert(record, path, change, places);
  if (!ts.isExpression(end.node)) return undefined;
  const { source } = end.file.tree;
  const newText = printValue(value, quoteOf(source));
  const records = places.recordsSetBy(record, end);
  const isName = ts.isShorthandPropertyAssignment(end.node.parent) && end.node.parent.name === end.node;
  const start = end.node.getStart(source);
  if (isName) {
    // `{ load }` with a name that cannot be followed: sets the property, and no longer uses the name.
    return {
      file: end.file,
      records,
      edit: { start, end: end.node.end, newText: `${source.text.slice(start, end.node.end)}: ${newText}` },
    };
  }
  if (ts.isParameter(end.node.parent) && end.node.parent.name === end.node) return undefined;
  return { file: end.file, records, edit: { start, end: end.node.end, newText } };
}

/** The expression in the literal itself: the name of another call is replaced, and never that call. */
function asWritten({ holder, property }: Origin): SourceNode {
  return { file: holder.file, node: propertyValue(property) ?? property };
}

function insert(
  record: number,
  path: PropertyPath,
  change: Change & { readonly do: "set" },
  places: PlanSourceMap,
): Made | undefined {
  const name = path.at(-1);
  if (name === undefined) return undefined;
  const { call, given } = places.argumentOf(record);
  const object = places.provenance.objectAt(record, path.slice(0, -1));
  if (object) {
    const { file, literal } = object;
    const records = places.recordsHaving({ file, node: literal });
    const property = { name, value: printValue(change.value, quoteOf(file.tree.source)) };
    const elsewhere = given !== undefined && unwrapExpression(given) !== literal;
    // A shared literal stays unchanged if the call can be given one of its own.
    const own = new Set([record]);
    const wrap =
      path.length === 1 &&
      elsewhere &&
      hasOthers(records, own) &&
      !hasOthers(places.recordsOfCall(record), own);
    if (!wrap) return { file, records, literal, property, wrap: false };
  }
  if (!given || path.length !== 1 || !isReference(unwrapExpression(given))) return undefined;
  return {
    file: call.file,
    records: places.recordsOfCall(record),
    literal: given,
    property: { name, value: printValue(change.value, quoteOf(call.file.tree.source)) },
    wrap: true,
  };
}

function remove({ record, path }: Change, places: PlanSourceMap): Made | undefined {
  const origin = places.originOf(record, path);
  if (!origin?.whole || origin.element) return undefined;
  const { holder, property } = origin;
  const edit = removeProperty(holder.literal, property, holder.file.tree.source);
  return { file: holder.file, edit, records: places.recordsHaving(literalOf(holder)) };
}

function rename(change: Change & { readonly do: "rename" }, places: PlanSourceMap): Made | undefined {
  const { record, path, to } = change;
  const origin = places.originOf(record, path);
  if (!origin?.whole || origin.element) return undefined;
  const { holder, property } = origin;
  const edit = renameProperty(property, to, holder.file.tree.source);
  return edit && { file: holder.file, edit, records: places.recordsHaving(literalOf(holder)) };
}

function literalOf({
  file,
  literal,
}: {
  readonly file: PlanFile;
  readonly literal: ts.Expression;
}): SourceNode {
  return { file, node: literal };
}

/** An expression that can be spread in place. */
function isReference(node: ts.Expression): boolean {
  return ts.isIdentifier(node) || ts.isPropertyAccessExpression(node) || ts.isCallExpression(node);
}

function editIn(file: PlanFile, { start, end, newText }: TextEdit): Edit {
  return { uri: file.uri, start, end, version: file.version, expected: file.text.slice(start, end), newText };
}

function sameEdit(a: Edit, b: Edit): boolean {
  return a.uri === b.uri && a.start === b.start && a.end === b.end && a.newText === b.newText;
}

function byPlace(a: Edit, b: Edit): number {
  return a.uri < b.uri ? -1 : a.uri > b.uri ? 1 : a.start - b.start || a.end - b.end;
}
