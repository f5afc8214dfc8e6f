import ts from "typescript";
import type { CannotRunReason } from "../../../library/model/record.ts";
import { withUnit } from "../../../library/rules/wording/format-number.ts";

/**
 * The reason why a text is not read at all, and the place of the cause. Further typing does not repair it, so it is a finding.
 */
export interface Refusal {
  readonly reason: CannotRunReason;
  /** In a builder's words. */
  readonly detail: string;
  readonly start: number;
  readonly end: number;
}

/**
 * The first character that the engine reads differently from the parser. The engine's UTF-8 input ends at the first NUL. Half a
 * surrogate pair has no UTF-8: the engine loses the next character with it, and that may be the end of a comment.
 */
export function refusedCharacter(text: string): Refusal | undefined {
  if (text.isWellFormed() && !text.includes("\0")) return undefined;
  const at = text.search(/[\0\p{Surrogate}]/u);
  const named = text[at] === "\0" ? "A NUL character" : "Half of a character";
  return { reason: "character-refused", detail: `${named} (${codeAt(text, at)})`, start: at, end: at + 1 };
}

/**
 * The first character in the code that is a space for the parser but not in JavaScript. In comments and strings it is harmless.
 */
export function refusedSpace(source: ts.SourceFile): Refusal | undefined {
  const { text } = source;
  if (!oddSpaces.some((space) => text.includes(space))) return undefined;
  for (const { index } of text.matchAll(new RegExp(`[${oddSpaces.join("")}]`, "g"))) {
    if (!isBetweenTokens(source, index)) continue;
    const detail = `An invisible character (${codeAt(text, index)})`;
    return { reason: "character-refused", detail, start: index, end: index + 1 };
  }
  return undefined;
}

const oddSpaces = ["\u0085", "\u180E", "\u200B"];

export function refusedForDepth(text: string): Refusal {
  return { reason: "nested-too-deeply", detail: "", ...deepestNest(text) };
}

export function refusedForTime(text: string, limitMs: number): Refusal {
  return { reason: "reading-too-slow", detail: withUnit(limitMs / 1_000, "s"), ...deepestNest(text) };
}

function codeAt(text: string, at: number): string {
  return `U+${text.charCodeAt(at).toString(16).toUpperCase().padStart(4, "0")}`;
}

function isBetweenTokens(source: ts.SourceFile, at: number): boolean {
  let node: ts.Node = source;
  let from = 0;
  for (let inner: ts.Node | undefined = node; inner; ) {
    node = inner;
    from = node.pos;
    inner = undefined;
    for (const child of childrenOf(node)) {
      if (child.end <= at) from = Math.max(from, child.end);
      else if (child.pos <= at) inner = child;
    }
  }
  if (childrenOf(node).length === 0 && at >= node.getStart(source)) return false;
  // Only trivia, keywords and punctuation remain here, and the scanner distinguishes these by itself.
  const scanner = ts.createScanner(ts.ScriptTarget.ESNext, false, source.languageVariant, source.text);
  scanner.resetTokenState(from);
  while (scanner.scan() !== ts.SyntaxKind.EndOfFileToken && scanner.getTokenEnd() <= at);
  const isComment =
    comments.has(scanner.getToken()) && /[/#]/.test(source.text.charAt(scanner.getTokenStart()));
  return !isComment;
}

const comments: ReadonlySet<ts.SyntaxKind> = new Set([
  ts.SyntaxKind.SingleLineCommentTrivia,
  ts.SyntaxKind.MultiLineCommentTrivia,
  ts.SyntaxKind.ShebangTrivia,
]);

function childrenOf(node: ts.Node): readonly ts.Node[] {
  const children: ts.Node[] = [];
  ts.forEachChild(node, (child) => {
    children.push(child);
  });
  return children;
}

/**
 * The first bracket of the deepest nest of brackets. Those in strings and comments count too: it only has to help people look.
 */
function deepestNest(text: string): { readonly start: number; readonly end: number } {
  let depth = 0;
  let deepest = 0;
  let outermost = 0;
  let start = 0;
  for (const { 0: bracket, index } of text.matchAll(/[()[\]{}]/g)) {
    if (")]}".includes(bracket)) {
      depth = Math.max(0, depth - 1);
      continue;
    }
    if (depth === 0) outermost = index;
    depth++;
    if (depth <= deepest) continue;
    deepest = depth;
    start = outermost;
  }
  return { start, end: Math.min(start + 1, text.length) };
}
