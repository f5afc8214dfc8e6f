import { blankSourceFile } from "ts-blank-space";
import ts from "typescript";
import { type Marked, mark } from "./marks.ts";
import type { SourceText, Uri, Version } from "./workspace.ts";

/**
 * One version of one file: parsed once, types stripped, marked for the sandbox.
 *
 * Parsing the next version re-uses the nodes of this one and spoils its tree. What is needed to run the plan is kept apart
 * from the tree; a late question about an old version (a hover while the newest text is half typed) parses it again.
 */
export class PlanFile {
  readonly uri: Uri;
  readonly version: Version;
  readonly text: string;
  /** Sets the call sites and literals of this file apart from those of others. */
  readonly number: number;
  /** TypeScript's first complaint about the syntax; such a file is not run. */
  readonly syntaxError: SyntaxComplaint | undefined;
  /** The JavaScript for the sandbox, and what the walk over the tree saw. Undefined when there is a syntax error. */
  readonly marked: Marked | undefined;
  #tree: Tree | undefined;

  /** `before` is another version of the same file, if one is at hand: only what changed is parsed again. Never throws. */
  constructor(source: SourceText, number: number, before?: PlanFile) {
    this.uri = source.uri;
    this.version = source.version;
    this.text = source.text;
    this.number = number;
    try {
      const parsed = before?.update(source.text) ?? parse(source.uri, source.text);
      this.syntaxError = firstSyntaxError(parsed);
      if (this.syntaxError) {
        this.#tree = { source: parsed, marked: undefined, scopes: new Map() };
      } else {
        this.marked = stripAndMark(parsed, number);
        this.#tree = { source: parsed, marked: this.marked, scopes: new Map() };
      }
    } catch (thrown) {
      // The parser itself runs out of stack, for texts nested thousands deep.
      if (!(thrown instanceof RangeError)) throw thrown;
      this.syntaxError = {
        start: 0,
        end: Math.min(1, this.text.length),
        text: "This file is nested too deeply to be read.",
      };
    }
  }

  /** The syntax tree of exactly this version. */
  get tree(): Tree {
    if (!this.#tree) {
      const source = parse(this.uri, this.text);
      this.#tree = { source, marked: stripAndMark(source, this.number), scopes: new Map() };
    }
    return this.#tree;
  }

  /** Hands the tree over to the parser for another text; this version is without one from here on. */
  private update(text: string): ts.SourceFile | undefined {
    const old = this.#tree?.source;
    if (!old || text.length === 0 || old.text.length === 0) return undefined;
    this.#tree = undefined;
    return ts.updateSourceFile(old, text, changeBetween(this.text, text));
  }
}

export interface SyntaxComplaint {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

export interface Tree {
  readonly source: ts.SourceFile;
  /** Its call sites and literals are nodes of this very tree. */
  readonly marked: Marked | undefined;
  /** Names declared directly in a scope, filled in by the file that looks names up. */
  readonly scopes: Map<ts.Node, ReadonlyMap<string, ts.Node>>;
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

/** One range that holds every difference: what is left between the common beginning and the common end. */
function changeBetween(before: string, after: string): ts.TextChangeRange {
  const shorter = Math.min(before.length, after.length);
  let start = 0;
  let same = 0;
  // In strides first: comparing two slices is far quicker than comparing their characters one by one.
  const alike = (inBefore: number, inAfter: number, length: number) =>
    before.slice(inBefore, inBefore + length) === after.slice(inAfter, inAfter + length);
  for (const stride of [1_024, 1]) {
    while (start + stride <= shorter && alike(start, start, stride)) start += stride;
  }
  for (const stride of [1_024, 1]) {
    for (let more = same + stride; more <= shorter - start; more += stride) {
      if (!alike(before.length - more, after.length - more, stride)) break;
      same = more;
    }
  }
  return { span: { start, length: before.length - same - start }, newLength: after.length - same - start };
}

function firstSyntaxError(source: ts.SourceFile): SyntaxComplaint | undefined {
  // Not in the public type, but the only place where the parser leaves its complaints without a whole program.
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

function stripAndMark(source: ts.SourceFile, number: number): Marked {
  const leftOver: ts.Node[] = [];
  const js = blankSourceFile(source, (node) => leftOver.push(node));
  return mark(source, js, number, leftOver);
}
