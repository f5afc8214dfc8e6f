/**
 * Insertions in one text and ranges to leave out of it, applied at once.
 *
 * Not magic-string: this runs at every key press, insertions arrive in order, and positions are mapped back directly, without a
 * source map to encode and decode.
 */
export class TextSplices {
  readonly #inserts: Insertion[] = [];
  readonly #leftOut: Range[] = [];

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

  apply(text: string): SplicedText {
    const splices = this.#splicesIn(text);
    const parts: string[] = [];
    let from = 0;
    for (const { at, end, text: instead } of splices) {
      if (at > from) parts.push(text.slice(from, at));
      parts.push(instead);
      from = end;
    }
    parts.push(text.slice(from));
    return new SplicedText(parts.join(""), splices);
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
}

/** The result of splices, with the mapping between its offsets and those of the original text. */
export class SplicedText {
  readonly text: string;
  readonly #splices: readonly Splice[];
  /** Ends of the splices in the result; computed on first use. */
  #ends: Float64Array | undefined;

  constructor(text: string, splices: readonly Splice[]) {
    this.text = text;
    this.#splices = splices;
  }

  /** Maps an offset in the result to one in the original text; inside an insertion, to its position. */
  offsetBefore(offset: number): number {
    const ends = this.#endsInResult();
    const index = firstAbove(ends, offset);
    const before = this.#splices[index - 1];
    const base = before ? offset - (ends[index - 1] as number) + before.end : offset;
    const next = this.#splices[index];
    return next ? Math.min(base, next.at) : base;
  }

  /** Maps an offset in the original text to one in the result, before all that is inserted there. */
  startOf(offset: number): number {
    return this.#inResult(
      this.#splices.findIndex(({ at }) => at >= offset),
      offset,
    );
  }

  /** The same, behind all that is inserted there. */
  endOf(offset: number): number {
    return this.#inResult(
      this.#splices.findIndex(({ at }) => at > offset),
      offset,
    );
  }

  /** `next`: the index of the first splice behind the offset; negative if there is none. */
  #inResult(next: number, offset: number): number {
    const last = next < 0 ? this.#splices.length - 1 : next - 1;
    const before = this.#splices[last];
    return before ? offset - before.end + (this.#endsInResult()[last] as number) : offset;
  }

  /**
   * The same splices in a text with another token in the place of one of the original text; neither has a line feed, and nothing
   * is inserted inside. Undefined if the result does not contain the token as it is.
   */
  withToken({ start, before, after }: TokenChange): SplicedText | undefined {
    const end = start + before.length;
    const by = after.length - before.length;
    const found = this.#splices.findIndex((splice) => splice.end >= end);
    const next = found < 0 ? this.#splices.length : found;
    const around = this.#splices[next];
    const isLeftOut = around !== undefined && around.at <= start;
    const text = isLeftOut ? this.text : this.#textWith(next, { start, before, after });
    if (text === undefined) return undefined;
    const moved = ({ at, end: to, text }: Splice) => ({ at: at >= end ? at + by : at, end: to + by, text });
    const splices =
      by === 0
        ? this.#splices
        : this.#splices.map((splice, index) => (index < next ? splice : moved(splice)));
    return new SplicedText(text, splices);
  }

  /** `next`: the first splice behind the token. */
  #textWith(next: number, { start, before, after }: TokenChange): string | undefined {
    const at = this.#inResult(next, start);
    const end = at + before.length;
    return this.text.slice(at, end) === before
      ? this.text.slice(0, at) + after + this.text.slice(end)
      : undefined;
  }

  #endsInResult(): Float64Array {
    if (this.#ends) return this.#ends;
    this.#ends = new Float64Array(this.#splices.length);
    let added = 0;
    for (const [index, { at, end, text }] of this.#splices.entries()) {
      added += text.length - (end - at);
      this.#ends[index] = end + added;
    }
    return this.#ends;
  }
}

/** The index of the first number above a limit, in numbers that do not decrease. */
function firstAbove(numbers: Float64Array, limit: number): number {
  let low = 0;
  let high = numbers.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((numbers[middle] as number) <= limit) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** One token in the place of another. */
export interface TokenChange {
  readonly start: number;
  readonly before: string;
  readonly after: string;
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
