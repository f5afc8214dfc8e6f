/**
 * Carries places from one text to a later one. While a file is half typed, hints and lenses still belong to the last complete
 * text. Everything before and after the one edited range has only moved, and text in that range has no place.
 */
export interface Carrying {
  /** The place of an unedited range in the newer text; undefined if it was edited. */
  whole(start: number, end: number): Stretch | undefined;
  /** The same for a range whose ends alone must be unedited. */
  spanning(start: number, end: number): Stretch | undefined;
  /** An offset of the newer text in the older one; undefined in the edited range and at its edges. */
  back(offset: number): number | undefined;
}

export interface Stretch {
  readonly start: number;
  readonly end: number;
}

export function carryBetween(older: string, newer: string): Carrying {
  if (older === newer) return unchanged;
  const shortest = Math.min(older.length, newer.length);
  let head = 0;
  while (head < shortest && older.charCodeAt(head) === newer.charCodeAt(head)) head++;
  let tail = 0;
  while (
    tail < shortest - head &&
    older.charCodeAt(older.length - 1 - tail) === newer.charCodeAt(newer.length - 1 - tail)
  ) {
    tail++;
  }
  const shift = newer.length - older.length;
  const olderTail = older.length - tail;
  const newerTail = newer.length - tail;
  const forward = (offset: number) =>
    offset <= head ? offset : offset >= olderTail ? offset + shift : undefined;
  return {
    whole(start, end) {
      if (end <= head) return { start, end };
      return start >= olderTail ? { start: start + shift, end: end + shift } : undefined;
    },
    spanning(start, end) {
      const from = forward(start);
      const to = forward(end);
      return from === undefined || to === undefined || to < from ? undefined : { start: from, end: to };
    },
    back(offset) {
      if (offset < head) return offset;
      return offset > newerTail ? offset - shift : undefined;
    },
  };
}

const unchanged: Carrying = {
  whole: (start, end) => ({ start, end }),
  spanning: (start, end) => ({ start, end }),
  back: (offset) => offset,
};
