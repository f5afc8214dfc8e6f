import { sourceInWords, unconfirmed } from "../../rules/wording/source-in-words.ts";
import type { Citation } from "../../standards/citation.ts";

/** The documents that a report rests on, numbered in the order of their first citation. */
export interface SourceList {
  /** "33 CFR 183.425(b), Table 5 [S1]"; a source without a document has no number: "stated in the plan". */
  cite(source: Citation): string;
  /** "[S1]" alone, for places with many side by side; in words if there is no number. */
  short(source: Citation): string;
  /** All that were cited so far. */
  all(): readonly NumberedSource[];
}

export interface NumberedSource {
  readonly number: string;
  readonly source: Citation;
}

export function createSourceList(): SourceList {
  const numbers = new Map<string, NumberedSource>();
  const numberOf = (source: Citation): string => {
    const key = JSON.stringify([source.document, source.section, source.edition, source.note]);
    const known = numbers.get(key);
    if (known) return known.number;
    const number = `S${numbers.size + 1}`;
    numbers.set(key, { number, source });
    return number;
  };
  return {
    cite: (source) =>
      hasDocument(source) ? `${named(source)} [${numberOf(source)}]` : sourceInWords(source),
    short: (source) => (hasDocument(source) ? `[${numberOf(source)}]` : sourceInWords(source)),
    all: () => [...numbers.values()],
  };
}

/** How far a figure can be trusted, in the words of a report. */
export function standingInWords({ authority, confirmed }: Citation): string {
  if (authority === "stated in the plan") return "stated in the plan";
  if (authority === "common practice")
    return confirmed === "read" ? "common practice, read" : "common practice, no source";
  return confirmed === "memory" ? `from memory, ${unconfirmed}` : confirmed;
}

/** Written common practice is named by its document. */
function named(source: Citation): string {
  const { authority, document } = source;
  if (authority !== "common practice" || document.startsWith("Common practice")) return sourceInWords(source);
  return document.split(", ")[0] ?? document;
}

/** Common practice has one too if it is written down, or if it has a note. */
function hasDocument({ authority, document, note }: Citation): boolean {
  if (authority === "stated in the plan") return false;
  return authority !== "common practice" || note !== undefined || !document.startsWith("Common practice");
}
