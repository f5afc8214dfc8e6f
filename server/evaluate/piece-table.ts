import type { TextEdit } from "./literal-edits.ts";

/** A text under repeated editing that remembers which parts of it are the original's, so that all edits become one list. */
export class PieceTable {
  readonly #original: string;
  #pieces: readonly Piece[];

  constructor(original: string) {
    this.#original = original;
    this.#pieces = [{ text: original, from: 0 }];
  }

  get text(): string {
    return this.#pieces.map(({ text }) => text).join("");
  }

  /** Positions are in the present text; edits must not overlap. */
  apply(edits: readonly TextEdit[]): void {
    for (const { start, end, newText } of [...edits].sort((a, b) => b.start - a.start || b.end - a.end)) {
      this.#pieces = [
        ...this.#cut(0, start),
        { text: newText, from: undefined },
        ...this.#cut(end, Infinity),
      ];
    }
  }

  /** What leads from the original to the present text, in order. */
  edits(): readonly TextEdit[] {
    const edits: TextEdit[] = [];
    let at = 0;
    let added = "";
    for (const { text, from } of [...this.#pieces, { text: "", from: this.#original.length }]) {
      if (from === undefined) {
        added += text;
        continue;
      }
      if (from > at || added !== "") edits.push({ start: at, end: from, newText: added });
      at = from + text.length;
      added = "";
    }
    return edits.filter(({ start, end, newText }) => this.#original.slice(start, end) !== newText);
  }

  #cut(start: number, end: number): Piece[] {
    const cut: Piece[] = [];
    let at = 0;
    for (const { text, from } of this.#pieces) {
      const begin = Math.max(start - at, 0);
      const stop = Math.min(end - at, text.length);
      if (stop > begin) {
        cut.push({ text: text.slice(begin, stop), from: from === undefined ? undefined : from + begin });
      }
      at += text.length;
    }
    return cut;
  }
}

interface Piece {
  readonly text: string;
  /** Where it stands in the original; undefined for what was put in. */
  readonly from: number | undefined;
}
