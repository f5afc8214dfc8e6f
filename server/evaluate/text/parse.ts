import { blankSourceFile } from "ts-blank-space";
import ts from "typescript";
import { type Instrumented, instrument, withLiteral } from "../instrument/instrument.ts";
import type { SourceText, Uri, Version } from "../workspace.ts";
import { changeLiteral, isLoneLiteral } from "./changed-literal.ts";
import { changedRange } from "./changed-range.ts";
import { withLineFeeds } from "./line-feeds.ts";
import { type EditedToken, editedToken } from "./one-token-edit.ts";
import { type Refusal, refusedCharacter, refusedForDepth, refusedForTime, refusedSpace } from "./refusal.ts";
import { withinTime } from "./time-limited.ts";

/**
 * One version of one file: parsed once, types stripped, instrumented for the sandbox. It is in one of three states: runnable
 * (`instrumented`), half typed (`syntaxError`), or refused (`refusal`).
 *
 * Parsing the next version reuses the nodes of this one and invalidates its tree. The parts needed to run the plan are kept
 * apart from the tree. A late query about an old version (a hover while the newest text is half typed) parses it again.
 */
export class PlanFile {
  readonly uri: Uri;
  readonly version: Version;
  readonly text: string;
  /** Distinguishes the call sites and literals of this file from those of others. */
  readonly number: number;
  /** TypeScript's first syntax error; such a file is not run. */
  readonly syntaxError: SyntaxComplaint | undefined;
  /** The reason why the text cannot be read; such a file is not run either. */
  readonly refusal: Refusal | undefined;
  /** The JavaScript for the sandbox, and the sites found by the walk over the tree. */
  readonly instrumented: Instrumented | undefined;
  #tree: Tree | undefined;

  /** Never throws, and ends within a time limit for any text. */
  constructor(source: SourceText, number: number, how: HowToRead = {}) {
    this.uri = source.uri;
    this.version = source.version;
    this.text = source.text;
    this.number = number;
    const { before, limitMs = fullLimitMs(source.text) } = how;
    const reading = how.refusal ?? refusedCharacter(source.text) ?? this.#read(before, limitMs);
    if ("reason" in reading) {
      this.refusal = reading;
      this.#tree = treeOf(parse(this.uri, ""), undefined);
      return;
    }
    this.syntaxError = firstSyntaxError(reading.source);
    this.instrumented = reading.instrumented;
    this.#tree = reading;
  }

  /** The syntax tree of exactly this version; for a refused text, an empty tree. */
  get tree(): Tree {
    if (!this.#tree) {
      const reading = this.#read(undefined, fullLimitMs(this.text));
      this.#tree = "reason" in reading ? treeOf(parse(this.uri, ""), undefined) : reading;
    }
    return this.#tree;
  }

  #read(before: PlanFile | undefined, limitMs: number): Tree | Refusal {
    const text = withoutMarkBeforeHashbang(this.text);
    const edit = before?.editTo(text);
    const read = (): Tree | Refusal => {
      const source = (edit && before?.update(text, edit)) ?? parse(this.uri, text);
      if (firstSyntaxError(source)) return treeOf(source, undefined);
      const patched = edit?.literal && before?.instrumented && withLiteral(before.instrumented, edit.literal);
      return refusedSpace(source) ?? treeOf(source, patched ?? stripAndInstrument(source, this.number));
    };
    try {
      // A clock costs as much as reading a small change. After this one, reading takes as long as it did before.
      const done = edit?.token ? { result: read() } : withinTime(limitMs, read);
      if (done) return done.result;
      putParserInOrder();
      return refusedForTime(this.text, limitMs);
    } catch (thrown) {
      // The parser, or the walk over the tree, runs out of stack for texts nested hundreds deep.
      if (!(thrown instanceof RangeError)) throw thrown;
      putParserInOrder();
      return refusedForDepth(this.text);
    }
  }

  /** The edit that makes another text of this one. */
  private editTo(text: string): Edit | undefined {
    const old = this.#tree?.source;
    if (!old || text.length === 0 || old.text.length === 0) return undefined;
    const change = changeBetween(old.text, text);
    const token = editedToken(old, text, change);
    return { change, token, literal: token && isLoneLiteral(token) ? token : undefined };
  }

  /** Hands the tree over for another text; this version then has no tree. */
  private update(text: string, { change, literal }: Edit): ts.SourceFile | undefined {
    const old = this.#tree?.source;
    if (!old) return undefined;
    this.#tree = undefined;
    if (!literal) return ts.updateSourceFile(old, text, change);
    changeLiteral(old, literal, text);
    return old;
  }
}

interface Edit {
  readonly change: ts.TextChangeRange;
  /** The only token that it changes, if its kind stays. */
  readonly token: EditedToken | undefined;
  /** The same, if the token is a literal with no further effect on the tree. */
  readonly literal: EditedToken | undefined;
}

interface HowToRead {
  /** Another version of the same file, if available: only the changed part is parsed again. */
  readonly before?: PlanFile | undefined;
  readonly limitMs?: number;
  /** The text is known to be refused, and is not read again. */
  readonly refusal?: Refusal | undefined;
}

/** For a text to be run: far more than any honest one needs, on any machine. */
export function fullLimitMs(text: string): number {
  return 2_000 + Math.ceil(text.length / 200);
}

/** For a text that is only read for its imports, perhaps one of hundreds. */
export const glanceLimitMs = 150;

/** For the next text of a file that exceeded that time. */
export const secondGlanceLimitMs = 30;

/** Both parsers keep state between texts, and only reading one to its end clears it. */
function putParserInOrder() {
  blankSourceFile(parse("file:///empty.ts", ""), () => {});
}

/** The parser recognises a hashbang only as the first two characters. */
function withoutMarkBeforeHashbang(text: string): string {
  return text.startsWith("\uFEFF#!") ? `// ${text.slice(3)}` : text;
}

export interface SyntaxComplaint {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

export interface Tree {
  readonly source: ts.SourceFile;
  /** Its call sites and literals are nodes of exactly this tree. */
  readonly instrumented: Instrumented | undefined;
  /** Names declared directly in a scope, filled in by the code that looks names up. */
  readonly scopes: Map<ts.Node, ReadonlyMap<string, ts.Node>>;
}

function treeOf(source: ts.SourceFile, instrumented: Instrumented | undefined): Tree {
  return { source, instrumented, scopes: new Map() };
}

function parse(uri: Uri, text: string): ts.SourceFile {
  const options: ts.CreateSourceFileOptions = {
    languageVersion: ts.ScriptTarget.ESNext,
    impliedNodeFormat: ts.ModuleKind.ESNext,
    jsDocParsingMode: ts.JSDocParsingMode.ParseNone,
  };
  return ts.createSourceFile(uri, text, options, true, scriptKind(uri));
}

function scriptKind(uri: Uri): ts.ScriptKind {
  if (/\.tsx$/i.test(uri)) return ts.ScriptKind.TSX;
  if (/\.jsx$/i.test(uri)) return ts.ScriptKind.JSX;
  return /\.[mc]?js$/i.test(uri) ? ts.ScriptKind.JS : ts.ScriptKind.TS;
}

function changeBetween(before: string, after: string): ts.TextChangeRange {
  const { start, endBefore, endAfter } = changedRange(before, after);
  return { span: { start, length: endBefore - start }, newLength: endAfter - start };
}

function firstSyntaxError(source: ts.SourceFile): SyntaxComplaint | undefined {
  // Not in the public type, but the only place for the parser's syntax errors without a whole program.
  const { parseDiagnostics } = source as ts.SourceFile & { parseDiagnostics: readonly ts.Diagnostic[] };
  const first = parseDiagnostics[0];
  if (!first) return undefined;
  const start = Math.min(first.start ?? 0, source.text.length);
  return {
    start,
    end: Math.min(start + (first.length ?? 0), source.text.length),
    text: ts.flattenDiagnosticMessageText(first.messageText, "\n"),
  };
}

function stripAndInstrument(source: ts.SourceFile, number: number): Instrumented {
  const leftOver: ts.Node[] = [];
  const js = blankSourceFile(source, (node) => leftOver.push(node));
  return instrument(source, withLineFeeds(js, source), number, leftOver);
}
