import ts from "typescript";
import type { EditedToken } from "./one-token-edit.ts";

/**
 * True if a token is a literal whose value affects nothing but itself. The name of a module, or of an export, decides about more
 * than that.
 */
export function isLoneLiteral({ node, change }: EditedToken): boolean {
  if (!ts.isNumericLiteral(node) && !ts.isStringLiteral(node)) return false;
  if (change.before[0] !== change.after[0] && ts.isStringLiteral(node)) return false;
  if (/[\n\r\u2028\u2029]/.test(change.before + change.after)) return false;
  return !ts.findAncestor(node, (outer) => ts.isImportDeclaration(outer) || ts.isExportDeclaration(outer));
}

/**
 * Changes a literal in a syntax tree in place: its value, and the positions of all that follows. The parser would make the same
 * tree; but it makes every row of a list anew when one of them changes.
 */
export function changeLiteral(source: ts.SourceFile, { node, change }: EditedToken, text: string): void {
  const { end } = node;
  const by = change.after.length - change.before.length;
  const whole = source as ts.SourceFile & { lineMap?: unknown };
  whole.text = text;
  whole.lineMap = undefined;
  if (by !== 0) move(source, end, by);
  const made = literalOf(change.after);
  for (const [key, value] of Object.entries(made)) if (!ofItsPlace.has(key)) Reflect.set(node, key, value);
}

/** Properties of a node that its place in the tree determines. */
const ofItsPlace: ReadonlySet<string> = new Set(["pos", "end", "parent", "flags", "id"]);

function literalOf(text: string): ts.Expression {
  const statement = ts.createSourceFile("literal.ts", `(${text})`, ts.ScriptTarget.ESNext).statements[0];
  return ((statement as ts.ExpressionStatement).expression as ts.ParenthesizedExpression).expression;
}

/** Moves all that begins at an offset or later, and the ends of all that contains it. */
function move(node: ts.Node, from: number, by: number): void {
  const moveRange = (range: ts.TextRange): boolean => {
    if (range.end < from) return false;
    const moved = range as { pos: number; end: number };
    if (moved.pos >= from) moved.pos += by;
    moved.end += by;
    return true;
  };
  const moveNode = (inner: ts.Node): void => {
    if (moveRange(inner)) ts.forEachChild(inner, moveNode, moveList);
  };
  const moveList = (list: ts.NodeArray<ts.Node>): void => {
    if (moveRange(list)) for (const inner of list) moveNode(inner);
  };
  moveNode(node);
}
