import ts from "typescript";
import { printName, type Quote } from "./print-value.ts";

/** A replacement in one text. */
export interface TextEdit {
  readonly start: number;
  readonly end: number;
  readonly newText: string;
}

/**
 * Puts properties at the end of an object literal in its existing layout: on lines of their own if it has several lines, with a
 * trailing comma if it has one, and never between a property and the remark behind it.
 */
export function insertProperties(
  literal: ts.ObjectLiteralExpression,
  properties: readonly { readonly name: string; readonly value: string }[],
  source: ts.SourceFile,
): readonly TextEdit[] {
  const { text } = source;
  const quote = quoteOf(source);
  const printed = properties.map(({ name, value }) => `${printName(name, quote)}: ${value}`);
  const last = literal.properties.at(-1);
  if (!last) {
    const start = literal.getStart(source) + 1;
    const between = text.slice(start, literal.end - 1);
    // A remark in an empty literal stays.
    if (between.trim() === "") return [{ start, end: literal.end - 1, newText: ` ${printed.join(", ")} ` }];
    return [{ start, end: start, newText: ` ${printed.join(", ")},` }];
  }
  const comma = literal.properties.hasTrailingComma ? text.indexOf(",", endOfRemarks(text, last.end)) : -1;
  const lastEnd = comma >= 0 ? comma + 1 : last.end;
  const firstStart = literal.properties[0]?.getStart(source) ?? last.end;
  const onLines = text.slice(literal.getStart(source), firstStart).includes("\n");
  if (!onLines) {
    const newText = comma >= 0 ? ` ${printed.join(", ")},` : `, ${printed.join(", ")}`;
    return [{ start: lastEnd, end: lastEnd, newText }];
  }
  const indent = lineBreakOf(text) + indentAt(text, firstStart);
  const behind = endOfRemarks(text, lastEnd);
  const lines = printed.map((property) => indent + property).join(",");
  if (comma >= 0) return [{ start: behind, end: behind, newText: `${lines},` }];
  if (behind === lastEnd) return [{ start: lastEnd, end: lastEnd, newText: `,${lines}` }];
  return [
    { start: lastEnd, end: lastEnd, newText: "," },
    { start: behind, end: behind, newText: lines },
  ];
}

/** Removes a property, with its comma, and with its line if nothing else is on it. */
export function removeProperty(
  literal: ts.ObjectLiteralExpression,
  property: ts.ObjectLiteralElementLike,
  source: ts.SourceFile,
): TextEdit {
  const { text } = source;
  const index = literal.properties.indexOf(property);
  const next = literal.properties[index + 1];
  const before = literal.properties[index - 1];
  const start = property.getStart(source);
  if (next) {
    const nextStart = next.getStart(source);
    // Text in between, a remark about the next property, stays with that property.
    const comma = text.indexOf(",", endOfRemarks(text, property.end)) + 1;
    const rest = text.slice(comma, nextStart);
    return { start, end: rest.trim() === "" ? nextStart : comma, newText: "" };
  }
  const comma = literal.properties.hasTrailingComma
    ? text.indexOf(",", endOfRemarks(text, property.end)) + 1
    : 0;
  if (before) {
    const end = Math.max(property.end, comma);
    // A remark behind the previous property stays, and so does that property's comma.
    const remarkEnd = endOfRemarks(text, text.indexOf(",", endOfRemarks(text, before.end)) + 1);
    const onlyComma = /^[\s,]*$/.test(text.slice(before.end, start));
    return onlyComma
      ? { start: before.end, end, newText: comma > 0 ? "," : "" }
      : { start: Math.min(remarkEnd, start), end, newText: "" };
  }
  const inside =
    text.slice(literal.getStart(source) + 1, start) +
    text.slice(Math.max(property.end, comma), literal.end - 1);
  if (inside.trim() === "") return { start: literal.getStart(source), end: literal.end, newText: "{}" };
  return { start, end: Math.max(property.end, comma), newText: "" };
}

/** Renames a property and leaves its value as it is. */
export function renameProperty(
  property: ts.ObjectLiteralElementLike,
  to: string,
  source: ts.SourceFile,
): TextEdit | undefined {
  const { name } = property;
  if (!name || ts.isComputedPropertyName(name)) return undefined;
  const newName = printName(to, quoteOf(source));
  if (ts.isShorthandPropertyAssignment(property)) {
    return { start: name.getStart(source), end: name.end, newText: `${newName}: ${property.name.text}` };
  }
  return { start: name.getStart(source), end: name.end, newText: newName };
}

/** The quotes that the file itself uses: those of its first string literal, usually in its first import. */
export function quoteOf(source: ts.SourceFile): Quote {
  const quote = quotes.get(source) ?? firstQuote(source);
  quotes.set(source, quote);
  return quote;
}

/** A file without quotes is searched to its end only once, instead of for each edit in it. */
const quotes = new WeakMap<ts.SourceFile, Quote>();

function firstQuote(source: ts.SourceFile): Quote {
  for (const statement of source.statements) {
    if (!ts.isImportDeclaration(statement)) continue;
    return source.text[statement.moduleSpecifier.getStart(source)] === "'" ? "'" : '"';
  }
  const first = /["']/.exec(source.text)?.[0];
  return first === "'" ? "'" : '"';
}

export function lineBreakOf(text: string): "\r\n" | "\n" {
  return text.includes("\r\n") ? "\r\n" : "\n";
}

export function indentAt(text: string, position: number): string {
  const lineStart = text.lastIndexOf("\n", position - 1) + 1;
  return /^[ \t]*/.exec(text.slice(lineStart, position))?.[0] ?? "";
}

/** Behind the remarks that follow on the same line. */
export function endOfRemarks(text: string, position: number): number {
  return ts.getTrailingCommentRanges(text, position)?.at(-1)?.end ?? position;
}
