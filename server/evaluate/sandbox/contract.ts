import type { Word } from "../../../library/model/record.ts";

/**
 * The contract between the code that reads text and the worker that runs it. Only plain data crosses.
 *
 * The text handed over is JavaScript instrumented by `instrument.ts`. The hooks are ten globals of the sandbox:
 *
 *  - `__enter(site, ...seen)` opens a call and returns the call that was open before (a token, opaque to the plan);
 *    `__leave(token, value)` reopens that call and returns `value`. Every call `f(x)` in a plan is
 *    `__leave(__enter(17, r), f(x))`.
 *  - `__open()` returns the token of the open call without opening one. `await x` is `__leave(__open(), await __awaited(x))`, and
 *    `try {…} catch {…}` is `{const __t=__open();try{…}catch{__leave(__t);…}}`, to close the calls that an exception cut short.
 *  - `__awaited(value)` and `__watched(value)` return `value`. If it is a promise, its outcome is read when the plan has ended: an
 *    error that nothing waits for stops the plan, as it stops Node. `__leave` watches its value too; `__watched` is for a call with
 *    an `await` inside, which no other hook can enclose.
 *  - `__literal(literal, object, ...seen)` returns `object` and remembers its allocation, by identity: its literal, the call
 *    open at that moment, and the objects observed there. Every object literal is instrumented, except those that need not be.
 *  - `__literals(first, list)` returns a list of object literals, and does the same for each of them; their numbers are successive.
 *  - `__unused(site, seen, word, argument)` replaces the call of a DSL function whose result is not used, in a loop over a table
 *    for example, and makes its record; `seen` is the only observed object, or 0.
 *  - `__written(site, word, ...named)` is true, and has made a record, if `word` is a DSL function. For a statement
 *    `circuit({ load: 4 })`, with an argument determined by the text alone, it replaces the call, or precedes it if the name
 *    could mean something else: `__written(17, circuit)||__leave(__enter(17), circuit({ load: 4 }))`. `named` are the only
 *    other values of such an argument, its terminals and parts: `cable({ from: house.positive, … })`.
 *  - `__self` is a symbol: `object[__self]` is the object itself (a getter, not enumerable, on Object.prototype, which returns
 *    `this` in strict mode). A pattern `{ load }` is `{[__self]:__p,load}`, which gives the destructured object a name.
 *
 * `seen` are objects with an allocation that the text alone does not determine: the element of a loop, the argument of a
 * callback. They are kept as allocations, never as values.
 *
 * The result of a DSL function has the allocation of its argument. The hooks are constants of the global scope and tokens have
 * private fields only, so a plan can neither replace nor forge them. A plan that calls them itself only gets its own findings
 * at wrong places.
 *
 * Open calls are a chain (each knows the one it was opened in), so remembering the whole stack costs one pointer.
 */
export interface RunRequest {
  readonly root: string;
  /** Each module: its name (a URI), its JavaScript, and the target of each of its import texts (a URI, or "loomwright"). */
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

/** 1 s and 64 MiB unless the user sets others; more circuits than this mean a mistake in a loop, not a build. */
export const defaultLimits: Limits = { timeMs: 1_000, memoryBytes: 64 * 1024 * 1024, records: 20_000 };

export interface RunOutcome {
  readonly records: readonly RawRecord[];
  /** Every call that a record or allocation below refers to, directly or as a caller. */
  readonly calls: readonly OpenCall[];
  /** Every allocation that a record or a call refers to, directly or not. */
  readonly allocations: readonly Allocation[];
  readonly end: End;
}

/** Shows whether the plan ran to its end. If it was stopped, its earlier records are still there. */
export type End = "whole" | Stopped;

export interface RawRecord {
  readonly word: Word;
  /** Plain data; other values are `{ $strange: "NaN" }`. Long texts are cut at 1,000 characters. */
  readonly input: unknown;
  /**
   * If the call was `__written`: the call site with the input in its text, and the values `named` there, in source order.
   * `input` is then undefined.
   */
  readonly written?: { readonly site: number; readonly given: readonly unknown[] };
  /**
   * The call open when the DSL function was called, as an index in {@link RunOutcome.calls}; usually that of the function
   * itself. -1: none.
   */
  readonly call: number;
  /**
   * Allocations of the argument and of its nested objects, as indices in {@link RunOutcome.allocations}, by property path
   * joined with "." ("" is the argument itself). Objects of unknown allocation are left out.
   */
  readonly allocations: Readonly<Record<string, number>>;
}

/** A call that was open: `callSite` is the first argument of its `__enter`. */
export interface OpenCall {
  readonly callSite: number;
  /** The call it was opened in, as an index in {@link RunOutcome.calls}; -1 at the top of a module. */
  readonly within: number;
  /** Allocations of the further arguments of `__enter`, in order, as indices in {@link RunOutcome.allocations}; -1 if unknown. */
  readonly seen: readonly number[];
}

/** The allocation of an object: `literal` is the first argument of its `__literal`. */
export interface Allocation {
  readonly literal: number;
  /** The call open at that moment, as an index in {@link RunOutcome.calls}; -1: none. */
  readonly call: number;
  readonly seen: readonly number[];
}

export type Stopped =
  | {
      readonly why: "time" | "memory" | "records";
      /**
       * As for an error, if known. QuickJS checks interrupts at calls, not at loop iterations: `at` is the last call before the
       * stop, or the start of the function (or module) that was running.
       */
      readonly at?: InstrumentedPosition;
      readonly call?: number;
    }
  | {
      readonly why: "error";
      /** False: the engine could not read the plan, and ran none of it. */
      readonly began: boolean;
      /** "TypeError: x is not a function", one line, at most 300 characters. */
      readonly message: string;
      /** Absent when unknown. */
      readonly at?: InstrumentedPosition;
      /** The call open at that moment, as an index in {@link RunOutcome.calls}; -1: none. */
      readonly call: number;
    }
  | { readonly why: "failed"; readonly message: string };

/** A position in the instrumented JavaScript; 1-based line, 1-based column in UTF-16 units. */
export interface InstrumentedPosition {
  readonly uri: string;
  readonly line: number;
  readonly column: number;
}
