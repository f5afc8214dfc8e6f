/**
 * The contract between the room that reads text and the worker that runs it. Only plain data crosses.
 *
 * The text handed over is JavaScript with marks put in by `marks.ts`:
 *  - every call `f(x)` in a plan is `__leave(__enter(17), f(x))`: 17 is a call site, and the sites open at any moment are the call stack;
 *  - every object literal that may reach a word of the DSL is `__literal(23, { … })`: 23 names the literal, so that the object,
 *    when it reaches `circuit`, tells which literal it was made by.
 */
export interface RunRequest {
  readonly root: string;
  /** Module name (a URI) to its JavaScript, and what each of its import texts leads to (a URI, or "loomwright"). */
  readonly modules: readonly RunModule[];
  readonly limits: Limits;
}

export interface RunModule {
  readonly uri: string;
  readonly js: string;
  readonly imports: Readonly<Record<string, string>>;
}

export interface Limits {
  readonly timeMs: number;
  readonly memoryBytes: number;
  readonly records: number;
}

/** 1 s and 64 MiB unless the user sets others; more circuits than this is a mistake in a loop, not a build. */
export const defaultLimits: Limits = { timeMs: 1_000, memoryBytes: 64 * 1024 * 1024, records: 20_000 };

export interface RunOutcome {
  readonly records: readonly RawRecord[];
  /** What stopped it, if anything; the records made before that are still there. */
  readonly stopped?: Stopped;
}

export interface RawRecord {
  readonly word: "circuit" | "build";
  /** Plain data; what plain data cannot carry is `{ $strange: "NaN" }`. Long texts are cut at 1,000 characters. */
  readonly input: unknown;
  /** Call sites open when the word was called, outermost first; the last one is the call of the word itself. */
  readonly callSites: readonly number[];
  /** The literal that made the argument, and those that made the objects nested in it, by property path joined with ".". */
  readonly literals: Readonly<Record<string, number>>;
}

export type Stopped =
  | { readonly why: "time" | "memory" | "records" }
  | {
      readonly why: "error";
      /** "TypeError: x is not a function", one line, at most 300 characters. */
      readonly message: string;
      /** Where, in the marked JavaScript; 1-based line, 1-based column in UTF-16 units. Absent when unknown. */
      readonly at?: { readonly uri: string; readonly line: number; readonly column: number };
      readonly callSites: readonly number[];
    }
  | { readonly why: "failed"; readonly message: string };

/** Runs plans, one after another, in a worker that may be killed; a new one is kept ready. */
export interface Sandbox {
  run(request: RunRequest): Promise<RunOutcome>;
  dispose(): Promise<void>;
}
