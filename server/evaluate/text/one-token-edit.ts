import ts from "typescript";

/**
 * True if an edit changes the characters of one token and not its kind: a figure, a text in quotes, a name that is no keyword.
 * The parser decides by the kinds of tokens alone, so it takes the same steps as for the text before.
 */
export function changesOneToken(before: ts.SourceFile, text: string, change: ts.TextChangeRange): boolean {
  if (before.languageVariant === ts.LanguageVariant.JSX) return false;
  const { start, length } = change.span;
  const token = innermostAround(before, start, start + length);
  const at = token.getStart(before);
  if (!kinds.has(token.kind) || start < at) return false;
  const added = change.newLength - length;
  return isToken(before.text, at, token.kind, token.end) && isToken(text, at, token.kind, token.end + added);
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
