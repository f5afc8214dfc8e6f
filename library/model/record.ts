/**
 * What a plan leaves behind when it has run: plain data, one record for each call of a word of the DSL.
 * A record knows nothing of files or text; its index in the list is the handle by which the room that read the text
 * finds the place again.
 */
export interface PlanRecord {
  readonly word: "circuit" | "build";
  /** What was given to the word, copied out of the sandbox. Not checked yet; may hold {@link Strange} values. */
  readonly input: unknown;
  /** The variable's name, or the place in the file ("camper.ts line 12"), for a circuit that names itself nowhere. */
  readonly fallbackName: string;
}

/**
 * A value that plain data cannot carry (NaN, a function, a class instance …), as it arrives from the sandbox.
 * `described` is made for people: "NaN", "a function", "an object of class Date".
 */
export interface Strange {
  readonly $strange: string;
}

/** Way from a word's argument to a value in it: `["gauge"]`, `["protect", "ratingA"]`, `["accept", "conductor/ampacity"]`; `[]` is the argument itself. */
export type PropertyPath = readonly string[];

/** Something that stopped the plan, or a part of it, from being evaluated. Found while running it. */
export type PlanProblem =
  | { readonly rule: "plan/cannot-run"; readonly reason: CannotRunReason; readonly detail: string }
  | {
      readonly rule: "plan/too-slow";
      readonly limit: "time" | "memory" | "records";
      readonly allowed: number;
    };

/** `detail` holds, in turn: the error's message, the import's text, the import's text, the import's text, … */
export type CannotRunReason =
  | "error-thrown"
  | "import-not-found"
  | "import-outside"
  | "import-not-allowed"
  | "import-name-missing"
  | "syntax-not-run"
  | "evaluator-failed";
