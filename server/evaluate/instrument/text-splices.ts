/**
 * Insertions in one text and ranges to leave out of it, applied at once, with the mapping from the result back to that text.
 *
 * Not magic-string: this runs at every key press, insertions arrive in order, and positions are mapped back directly, without a
 * source map to encode and decode.
 */
export class TextSplices {
  readonly #inserts: Insertion[] = [];
  readonly #leftOut: Range[] = [];
  #made: readonly Splice[] = [];
  #ends: Float64Array | undefined;

  /**
   * Positions must not decrease from one call to the next; insertions at one position stay in order. The returned text may be
   * changed until the splices are applied.
   */
  insert(at: number, text: string): Insertion {
    const insertion = { at, text };
    this.#inserts.push(insertion);
    return insertion;
  }

  /**
   * Leaves out everything except line feeds; nothing may be inserted inside. So all line numbers stay, and the content of the
   * range does not affect the result.
   */
  leaveOut(start: number, end: number): void {
    this.#leftOut.push({ start, end });
  }

  apply(text: string): string {
    this.#made = this.#splicesIn(text);
    this.#ends = undefined;
    const parts: string[] = [];
    let from = 0;
    for (const { at, end, text: instead } of this.#made) {
      if (at > from) parts.push(text.slice(from, at));
      parts.push(instead);
      from = end;
    }
    parts.push(text.slice(from));
    return parts.join("");
  }

  /** In text order. An insertion at the start of a range precedes it, and one at its end follows it. */
  #splicesIn(text: string): readonly Splice[] {
    const splices: Splice[] = [];
    let next = 0;
    let from = 0;
    const insertUpTo = (position: number) => {
      for (; next < this.#inserts.length && this.#inserts[next]!.at <= position; next++) {
        const { at, text } = this.#inserts[next]!;
        splices.push({ at, end: at, text });
      }
    };
    for (const { start: first, end } of this.#leftOut.sort((a, b) => a.start - b.start)) {
      const start = Math.max(first, from);
      if (end <= start) continue;
      insertUpTo(start);
      splices.push({ at: start, end, text: "\n".repeat(lineFeedsIn(text, start, end)) });
      from = end;
    }
    insertUpTo(Number.POSITIVE_INFINITY);
    return splices;
  }

  /** Maps an offset in the result to one in the original text; inside an insertion, to its position. */
  offsetBefore(offset: number): number {
    // Ends of the splices in the result; computed on first use, for errors only.
    if (!this.#ends) {
      this.#ends = new Float64Array(this.#made.length);
      let added = 0;
      for (const [index, { at, end, text }] of this.#made.entries()) {
        added += text.length - (end - at);
        this.#ends[index] = end + added;
      }
    }
    let low = 0;
    let high = this.#made.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((this.#ends[middle] as number) <= offset) low = middle + 1;
      else high = middle;
    }
    const before = this.#made[low - 1];
    const base = before ? offset - (this.#ends[low - 1] as number) + before.end : offset;
    const next = this.#made[low];
    return next ? Math.min(base, next.at) : base;
  }
}

export interface Insertion {
  readonly at: number;
  text: string;
}

interface Range {
  readonly start: number;
  readonly end: number;
}

/** The replacement of a range; an insertion has an empty range. */
interface Splice {
  readonly at: number;
  readonly end: number;
  readonly text: string;
}

function lineFeedsIn(text: string, start: number, end: number): number {
  let count = 0;
  for (let at = text.indexOf("\n", start); at >= 0 && at < end; at = text.indexOf("\n", at + 1)) count++;
  return count;
}
