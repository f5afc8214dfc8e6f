import ts from "typescript";
import type { Instrumented } from "./instrument.ts";
import { sitesInFile } from "./instrument.ts";

/**
 * One row of a list that a loop goes through: `for (const row of rows) circuit({ ...row })`. In a plan without side effects, the
 * records of one row depend on no other row, and nothing else in the plan depends on them.
 */
export interface IndependentRow {
  readonly index: number;
  /** Number of rows in the list. */
  readonly count: number;
  /** Call sites in the loop; each is entered once for each row. */
  readonly callSites: readonly number[];
  /** The instrumented text of the file with this row alone in the list. Line numbers are not kept. */
  readonly js: string;
}

/**
 * The row that contains a range of the instrumented text; undefined if it is in none, or in a list with another use.
 *
 * @param file the number of the file
 */
export function independentRow(
  source: ts.SourceFile,
  instrumented: Instrumented,
  file: number,
  range: { readonly start: number; readonly end: number },
): IndependentRow | undefined {
  const start = instrumented.js.offsetBefore(range.start);
  const end = instrumented.js.offsetBefore(range.end);
  const row = rowAround(source, start, end);
  const list = row?.parent as ts.ArrayLiteralExpression | undefined;
  const body = list && knownLoopOver(list, source);
  if (!row || !body || list.elements.some((element) => notOneRow.has(element.kind))) return undefined;
  // A call in the row itself makes its record before the loop.
  if (hasCall(row)) return undefined;
  const siteOf = (node: ts.Node) => {
    const index = instrumented.sites.findIndex((site) => site.node === node);
    return index < 0 ? undefined : file * sitesInFile + index;
  };
  const callSites = callsIn(body).map(siteOf);
  if (callSites.length === 0 || !callSites.every((site) => site !== undefined)) return undefined;
  const index = list.elements.indexOf(row);
  const js = textWithRow(list, index, { instrumented, source, first: siteOf(list.elements[0]!) });
  return { index, count: list.elements.length, callSites, js };
}

const K = ts.SyntaxKind;

const notOneRow: ReadonlySet<ts.SyntaxKind> = new Set([K.SpreadElement, K.OmittedExpression]);

/** The element of the outermost list around a range. */
function rowAround(source: ts.SourceFile, start: number, end: number): ts.Expression | undefined {
  let found: ts.Expression | undefined;
  const visit = (node: ts.Node): ts.Node | undefined => {
    if (node.pos > start || node.end < end) return undefined;
    const isElement = ts.isArrayLiteralExpression(node.parent) && node.getStart(source) <= start;
    // A list inside a row belongs to the row.
    if (isElement && !found) found = node as ts.Expression;
    return ts.forEachChild(node, visit) ?? node;
  };
  ts.forEachChild(source, visit);
  return found;
}

function knownLoopOver(list: ts.ArrayLiteralExpression, source: ts.SourceFile): ts.Node | undefined {
  const known = bodies.get(source) ?? new Map<ts.Node, ts.Node | undefined>();
  bodies.set(source, known);
  if (!known.has(list)) known.set(list, loopOver(list, source));
  return known.get(list);
}

/** By tree and list. An edit of a literal changes a tree in place, and not its loops; any other edit makes a new tree. */
const bodies = new WeakMap<ts.SourceFile, Map<ts.Node, ts.Node | undefined>>();

/** The body of the only loop at the top of the file over a list, if the list has no other use. */
function loopOver(list: ts.ArrayLiteralExpression, source: ts.SourceFile): ts.Node | undefined {
  let whole: ts.Node = list;
  while (ts.isAsExpression(whole.parent) || ts.isSatisfiesExpression(whole.parent)) whole = whole.parent;
  const { parent } = whole;
  if (!ts.isVariableDeclaration(parent)) return bodyOfLoop(whole);
  const statement = parent.parent.parent;
  const isLocal = statement.parent === source && ts.isVariableStatement(statement) && !statement.modifiers;
  if (!isLocal || !ts.isIdentifier(parent.name)) return undefined;
  const uses = usesOf(parent.name, source);
  return uses.length === 1 ? bodyOfLoop(uses[0]!) : undefined;
}

/** The body of the loop that goes through a list once, at the top of a file. */
function bodyOfLoop(list: ts.Node): ts.Node | undefined {
  const { parent } = list;
  if (ts.isForOfStatement(parent))
    return parent.expression === list && ts.isSourceFile(parent.parent) ? parent.statement : undefined;
  if (!ts.isPropertyAccessExpression(parent) || parent.name.text !== "forEach") return undefined;
  const call = parent.parent;
  const isStatement =
    ts.isCallExpression(call) && ts.isExpressionStatement(call.parent) && ts.isSourceFile(call.parent.parent);
  const callback = isStatement && call.expression === parent ? call.arguments[0] : undefined;
  // A second parameter would be the row's number.
  return callback && ts.isArrowFunction(callback) && callback.parameters.length === 1
    ? callback.body
    : undefined;
}

function hasCall(node: ts.Node): boolean {
  return ts.isCallExpression(node) || ts.forEachChild(node, (child) => hasCall(child) || undefined) === true;
}

/** Every other identifier of the same name. */
function usesOf(name: ts.Identifier, source: ts.SourceFile): readonly ts.Identifier[] {
  const uses: ts.Identifier[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isIdentifier(node) && node.text === name.text && node !== name) uses.push(node);
    else ts.forEachChild(node, visit);
  };
  visit(source);
  return uses;
}

/** The calls that are the statements of a loop's body; none if it has other statements. */
function callsIn(body: ts.Node): readonly ts.Node[] {
  if (ts.isCallExpression(body)) return [body];
  const statements = ts.isBlock(body) ? body.statements : [body];
  const calls: ts.Node[] = [];
  for (const statement of statements) {
    const isCall = ts.isExpressionStatement(statement) && ts.isCallExpression(statement.expression);
    if (!isCall) return [];
    calls.push(statement.expression);
  }
  return calls;
}

interface Around {
  readonly instrumented: Instrumented;
  readonly source: ts.SourceFile;
  /** The number of the first row, if it is an instrumented literal. */
  readonly first: number | undefined;
}

function textWithRow(
  { elements }: ts.ArrayLiteralExpression,
  index: number,
  { instrumented: { js }, source, first }: Around,
): string {
  const startOf = (row: ts.Node) => js.startOf(row.getStart(source));
  const before = js.text.slice(0, startOf(elements[0]!));
  const row = js.text.slice(startOf(elements[index]!), js.endOf(elements[index]!.end));
  const after = js.text.slice(js.endOf(elements.at(-1)!.end));
  // The hook of a whole list numbers its rows from the first.
  const hook = `__literals(${first},[`;
  const at = before.lastIndexOf(hook);
  const renumbered =
    at < 0
      ? before
      : `${before.slice(0, at)}__literals(${Number(first) + index},[${before.slice(at + hook.length)}`;
  return renumbered + row + after;
}
