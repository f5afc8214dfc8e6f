import type { TextEdit } from "./literal-edits.ts";

/**
 * A text under repeated editing that remembers which parts of it are the original's, to merge all edits into one list.
 *
 * Not magic-string, which takes positions of the original only: here each fix has positions of the text after the fixes before it.
 */
export class PieceTable {
  readonly #original: string;
  #pieces: readonly Piece[];

  constructor(original: string) {
    this.#original = original;
    this.#pieces = [{ text: original, from: 0 }];
  }

  copy(): PieceTable {
    const table = new PieceTable(this.#original);
    table.#pieces = this.#pieces;
    return table;
  }

  get text(): string {
    return this.#pieces.map(({ text }) => text).join("");
  }

  /** Positions refer to the present text; edits must not overlap. */
  apply(edits: readonly TextEdit[]): void {
    const pieces: Piece[] = [];
    const left = new Cutter(this.#pieces);
    const inOrder = [...edits].sort((a, b) => b.start - a.start || b.end - a.end).reverse();
    for (const { start, end, newText } of inOrder) {
      for (const piece of left.upTo(start)) pieces.push(piece);
      pieces.push({ text: newText, from: undefined });
      left.upTo(end);
    }
    for (const piece of left.upTo(Infinity)) pieces.push(piece);
    this.#pieces = pieces;
  }

  /** The edits that turn the original into the present text, in order. */
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
}

/** Cuts pieces from the front of a text, once from its start to its end. */
class Cutter {
  readonly #pieces: readonly Piece[];
  /** The next piece to cut, its position in the text, and the position up to which everything is cut. */
  #index = 0;
  #begin = 0;
  #taken = 0;

  constructor(pieces: readonly Piece[]) {
    this.#pieces = pieces;
  }

  upTo(end: number): Piece[] {
    const cut: Piece[] = [];
    while (this.#index < this.#pieces.length && this.#taken < end) {
      const { text, from } = this.#pieces[this.#index]!;
      const begin = this.#taken - this.#begin;
      const stop = Math.min(end - this.#begin, text.length);
      if (stop > begin)
        cut.push({ text: text.slice(begin, stop), from: from === undefined ? undefined : from + begin });
      this.#taken = this.#begin + stop;
      if (stop < text.length) break;
      this.#begin += text.length;
      this.#index++;
    }
    return cut;
  }
}

interface Piece {
  readonly text: string;
  /** Its position in the original; undefined for inserted text. */
  readonly from: number | undefined;
}
