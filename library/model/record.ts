import { type PartWord, partWords } from "./parts/index.ts";

/**
 * The result of running a plan: plain data, one record for each call of a DSL function.
 * A record contains no files or text positions; its index in the list is the handle for finding its place in the text.
 */
export interface PlanRecord {
  readonly word: Word;
  /** The input of the DSL function, copied out of the sandbox. Not checked yet; may hold values that plain data cannot carry. */
  readonly input: unknown;
  /** The variable's name, or the place in the file ("camper.ts line 12"), for a circuit without a name. */
  readonly fallbackName: string;
}

/** DSL functions that leave a record. Those of parts are also the kinds of parts, except `motor`, which makes a load. */
export const words: readonly Word[] = [
  ...(["circuit", "build", "cable", "scenario", "period"] as const),
  ...(["surface", "channel", "compartment"] as const),
  ...partWords,
];

export type Word = "circuit" | "build" | "cable" | "scenario" | "period" | PlacementWord | PartWord;

/** DSL functions for the surroundings of parts and conductors. */
export type PlacementWord = "surface" | "channel" | "compartment";

export function isPlacementWord(word: Word): word is PlacementWord {
  return word === "surface" || word === "channel" || word === "compartment";
}

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
