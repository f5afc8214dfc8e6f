import { type PartWord, partWords } from "./parts/index.ts";

/**
 * The result of running a plan: plain data, one record for each call of a DSL function.
 * A record contains no files or text positions; its index in the list is the handle for finding its place in the text.
 */
export interface PlanRecord {
  readonly word: Word;
  /** The input of the DSL function, copied out of the sandbox. Not checked yet; may hold {@link NonPlainValue} values. */
  readonly input: unknown;
  /** The variable's name, or the place in the file ("camper.ts line 12"), for a circuit without a name. */
  readonly fallbackName: string;
}

/** DSL functions that leave a record. Those of parts are also the kinds of parts, except `motor`, which makes a load. */
export const words: readonly Word[] = ["circuit", "build", "cable", "scenario", ...partWords];

export type Word = "circuit" | "build" | "cable" | "scenario" | PartWord;

/**
 * How a record refers to a terminal of a part: `from: house.positive`. `part` counts all DSL calls of the plan from 0, and is
 * therefore the index of the part's record.
 */
export interface WrittenTerminal {
  readonly kind: "terminal";
  readonly part: number;
  readonly of: Word;
  readonly terminal: string;
}

/** How a record refers to a whole part or circuit: `off: [fridge]`. It has more properties than these. */
export interface WrittenReference {
  readonly kind: Word;
  readonly id: number;
}

/**
 * A value that plain data cannot carry (NaN, a function, a class instance …), as it arrives from the sandbox.
 * `$strange` describes it for people: "NaN", "a function", "an object of class Date".
 */
export interface NonPlainValue {
  readonly $strange: string;
}

/**
 * Path from a DSL function's argument to a value in it: `["gauge"]`, `["protect", "ratingA"]`,
 * `["accept", "conductor/ampacity"]`; `[]` is the argument itself.
 */
export type PropertyPath = readonly string[];

/** An obstacle to evaluating the plan or a part of it, found while running it. */
export type PlanProblem =
  | { readonly rule: "plan/cannot-run"; readonly reason: CannotRunReason; readonly detail: string }
  | {
      readonly rule: "plan/too-slow";
      readonly limit: "time" | "memory" | "records";
      readonly allowed: number;
    };

/**
 * `detail` is the text that the message quotes: the error's message, the import, the import and the clause that gives the reason
 * ("cannot be read: permission is missing"), the syntax, the character, the DSL function.
 */
export type CannotRunReason =
  | "error-thrown"
  | "import-not-found"
  | "import-unread"
  | "import-outside"
  | "import-not-allowed"
  | "import-name-missing"
  | "syntax-not-run"
  | "text-not-run"
  | "character-refused"
  | "nested-too-deeply"
  | "reading-too-slow"
  | "call-not-reached"
  | "evaluator-failed";
