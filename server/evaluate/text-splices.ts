/** Insertions and blanked ranges to be made in one text, all at once, and the way back from the result to that text. */
export class TextSplices {
  readonly #inserts: Insertion[] = [];
  readonly #blanks: { readonly start: number; readonly end: number }[] = [];
  #ends: Float64Array | undefined;

  /**
   * Positions must not go down from one call to the next; insertions at one position stay in order. The text may be changed
   * until they are made.
   */
  insert(at: number, text: string): Insertion {
    const insertion = { at, text };
    this.#inserts.push(insertion);
    return insertion;
  }

  /** Puts spaces in place of everything but line feeds; nothing may be inserted inside. */
  blank(start: number, end: number): void {
    this.#blanks.push({ start, end });
  }

  apply(text: string): string {
    const blanked = this.#blanked(text);
    const parts: string[] = [];
    let from = 0;
    for (const { at, text: inserted } of this.#inserts) {
      if (at > from) parts.push(blanked.slice(from, at));
      parts.push(inserted);
      from = at;
    }
    parts.push(blanked.slice(from));
    return parts.join("");
  }

  #blanked(text: string): string {
    if (this.#blanks.length === 0) return text;
    const parts: string[] = [];
    let from = 0;
    for (const { start: first, end } of this.#blanks.sort((a, b) => a.start - b.start)) {
      const start = Math.max(first, from);
      if (end <= start) continue;
      parts.push(text.slice(from, start));
      for (from = start; from < end; ) {
        const lineBreak = text.indexOf("\n", from);
        const lineEnd = lineBreak < 0 || lineBreak > end ? end : lineBreak;
        parts.push(spaces(lineEnd - from));
        if (lineEnd < end) parts.push("\n");
        from = lineEnd + 1;
      }
      from = end;
    }
    parts.push(text.slice(from));
    return parts.join("");
  }

  /** Offset in the text before, of an offset in the result; inside an insertion: where it was made. */
  offsetBefore(offset: number): number {
    // Ends of the insertions in the result; made on the first question, for errors only.
    if (!this.#ends) {
      this.#ends = new Float64Array(this.#inserts.length);
      let added = 0;
      for (const [index, { at, text }] of this.#inserts.entries()) {
        added += text.length;
        this.#ends[index] = at + added;
      }
    }
    let low = 0;
    let high = this.#inserts.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((this.#ends[middle] as number) <= offset) low = middle + 1;
      else high = middle;
    }
    const before = this.#inserts[low - 1];
    const base = before ? offset - (this.#ends[low - 1] as number) + before.at : offset;
    const next = this.#inserts[low];
    return next ? Math.min(base, next.at) : base;
  }
}

export interface Insertion {
  readonly at: number;
  text: string;
}

function spaces(count: number): string {
  return count <= manySpaces.length ? manySpaces.slice(0, count) : " ".repeat(count);
}

const manySpaces = " ".repeat(1_000);
