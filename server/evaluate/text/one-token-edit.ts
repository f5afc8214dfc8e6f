import ts from "typescript";
import type { TokenChange } from "../instrument/text-splices.ts";

/**
 * The token that an edit changes, if it changes its characters alone and not its kind: a figure, a text in quotes, a name that
 * is no keyword. The parser decides by the kinds of tokens alone, so it takes the same steps as for the text before.
 */
export function editedToken(
  before: ts.SourceFile,
  text: string,
  { span, newLength }: ts.TextChangeRange,
): EditedToken | undefined {
  if (before.languageVariant === ts.LanguageVariant.JSX) return undefined;
  const node = innermostAround(before, span.start, span.start + span.length);
  const start = node.getStart(before);
  if (!kinds.has(node.kind) || span.start < start) return undefined;
  const end = node.end + newLength - span.length;
  const isSame = isToken(before.text, start, node.kind, node.end) && isToken(text, start, node.kind, end);
  return isSame
    ? { node, change: { start, before: before.text.slice(start, node.end), after: text.slice(start, end) } }
    : undefined;
}

export interface EditedToken {
  readonly node: ts.Node;
  readonly change: TokenChange;
}

/** Within a name or a literal, the parser looks at nothing but its kind. */
const kinds: ReadonlySet<ts.SyntaxKind> = new Set([
  ts.SyntaxKind.Identifier,
  ts.SyntaxKind.NumericLiteral,
  ts.SyntaxKind.StringLiteral,
]);

function innermostAround(source: ts.SourceFile, start: number, end: number): ts.Node {
  const around = (child: ts.Node) => (child.pos <= start && end <= child.end ? child : undefined);
  let node: ts.Node = source;
  for (let inner = ts.forEachChild(node, around); inner; inner = ts.forEachChild(node, around)) node = inner;
  return node;
}

/** A keyword used as a name is an identifier in the tree, but not for the scanner. */
function isToken(text: string, start: number, kind: ts.SyntaxKind, end: number): boolean {
  let sound = true;
  const scanner = ts.createScanner(ts.ScriptTarget.ESNext, false, ts.LanguageVariant.Standard);
  scanner.setOnError(() => {
    sound = false;
  });
  scanner.setText(text, start);
  return scanner.scan() === kind && scanner.getTokenEnd() === end && sound;
}
