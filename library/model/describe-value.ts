import { cutTo, harmlessText } from "./display-name.ts";
import { isNonPlain, isObject } from "./plain-values.ts";
import { type Word, words } from "./record.ts";

/** A value of a plan as a person would write it, short enough for a message: `"12"`, `-4`, `NaN`, `an object`. */
export function describeValue(value: unknown): string {
  if (typeof value === "string") return JSON.stringify(cutTo(40, harmlessText(value)));
  if (isNonPlain(value)) return cutTo(60, harmlessText(value.$strange));
  if (Array.isArray(value)) return "a list";
  if (isObject(value)) return describeObject(value);
  if (typeof value === "function") return "a function";
  return String(value);
}

/** Describes a result of a DSL function by that function, and a terminal by the function of its part. */
function describeObject({ kind, of, terminal }: Readonly<Record<string, unknown>>): string {
  if (isWord(kind)) return withArticle(kind);
  if (kind !== "terminal" || !isWord(of) || typeof terminal !== "string") return "an object";
  return `the terminal ${cutTo(40, harmlessText(terminal))} of ${withArticle(of)}`;
}

function isWord(value: unknown): value is Word {
  return (words as readonly unknown[]).includes(value);
}

/** "an alternator", "a battery" */
export function withArticle(word: string): string {
  return `${/^[aeiou]/.test(word) ? "an" : "a"} ${word}`;
}
