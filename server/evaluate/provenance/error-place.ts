import ts from "typescript";
import type { SourceRange } from "../checked-plan.ts";
import type { InstrumentedPosition } from "../sandbox/contract.ts";
import type { PlanFile } from "../text/parse.ts";

/**
 * The place in a file where an error was thrown. The engine reports the nearest call, a little before or behind the mistake
 * itself; the statement and the error's message together determine the rest.
 */
export function errorPlace(
  position: InstrumentedPosition,
  message: string,
  file: PlanFile,
): SourceRange | undefined {
  const offset = sourceOffset(position, file);
  if (offset === undefined) return undefined;
  const { source } = file.tree;
  const statement = innermostStatement(source, offset);
  const blamed = statement && (blamedIn(statement, message, offset) ?? thrownBy(statement));
  if (blamed) {
    const start = blamed.getStart(source);
    const line = /^[^\r\n]*/.exec(file.text.slice(start, blamed.end))?.[0] ?? "";
    return { uri: file.uri, start, end: start + line.length };
  }
  const start = wordAt(file.text, offset) ? offset : ((statement && beginning(statement, source)) ?? offset);
  const word =
    wordAt(file.text, start) ?? /^[^\r\n]*/.exec(file.text.slice(start, start + 200))?.[0].trimEnd() ?? "";
  return { uri: file.uri, start, end: start + word.length };
}

/**
 * The place of text that the engine cannot read although TypeScript's parser can. The engine counts columns in the instrumented
 * text, from an arbitrary start, so only its line is used.
 */
export function unreadablePlace({ line }: InstrumentedPosition, file: PlanFile): SourceRange | undefined {
  const offset = sourceOffset({ line, column: 1 }, file);
  if (offset === undefined) return undefined;
  const text = /^[^\r\n]*/.exec(file.text.slice(offset))?.[0] ?? "";
  return { uri: file.uri, start: offset + text.search(/\S|$/), end: offset + text.trimEnd().length };
}

function wordAt(text: string, offset: number): string | undefined {
  return /^[\w$\u0080-\uffff]+/.exec(text.slice(offset, offset + 200))?.[0];
}

/** The start of the statement, or of a loop around it in the same function: a plan that a limit stopped was in a loop. */
function beginning(statement: ts.Statement, source: ts.SourceFile): number {
  let at: ts.Node = statement;
  while (!ts.isIterationStatement(at, false) && !ts.isSourceFile(at) && !ts.isFunctionLike(at))
    at = at.parent;
  return (ts.isIterationStatement(at, false) ? at : statement).getStart(source);
}

function sourceOffset(
  { line, column }: Pick<InstrumentedPosition, "line" | "column">,
  file: PlanFile,
): number | undefined {
  if (!file.instrumented) return undefined;
  const { js } = file.instrumented;
  let lineStart = 0;
  for (let passed = 1; passed < line; passed++) {
    const lineBreak = js.text.indexOf("\n", lineStart);
    if (lineBreak < 0) return undefined;
    lineStart = lineBreak + 1;
  }
  return Math.min(js.offsetBefore(lineStart + column - 1), file.text.length);
}

function innermostStatement(source: ts.SourceFile, offset: number): ts.Statement | undefined {
  let found: ts.Statement | undefined;
  const visit = (node: ts.Node): void => {
    if (offset < node.pos || offset > node.end) return;
    if (ts.isStatement(node) && !ts.isBlock(node) && offset >= node.getStart(source)) found = node;
    ts.forEachChild(node, visit);
  };
  ts.forEachChild(source, visit);
  return found;
}

/** The name that the error mentions, if the statement contains it; if several times, the first at or after the position. */
function blamedIn(statement: ts.Statement, message: string, offset: number): ts.Node | undefined {
  const property = /property '([^']+)' of (?:undefined|null)/.exec(message)?.[1];
  const variable = /ReferenceError: (\S+) is not (?:defined|initialized)/.exec(message)?.[1];
  if (property === undefined && variable === undefined) return undefined;
  const fitting: ts.Node[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isIdentifier(node) && node.text === (property ?? variable)) {
      const isProperty =
        (ts.isPropertyAccessExpression(node.parent) && node.parent.name === node) ||
        ts.isBindingElement(node.parent);
      if (isProperty === (property !== undefined)) fitting.push(node);
    }
    ts.forEachChild(node, visit);
  };
  visit(statement);
  return fitting.find(({ pos }) => pos >= offset) ?? fitting[0];
}

function thrownBy(statement: ts.Statement): ts.Node | undefined {
  if (!ts.isThrowStatement(statement)) return undefined;
  const { expression } = statement;
  return ts.isNewExpression(expression) ? expression.expression : expression;
}
