/**
 * Memory shared between the worker and its parent; the worker writes each record to it at once. So the records made before a
 * plan gets stuck survive when the worker is killed, and no message is needed for each of them. A page begins with the number
 * of bytes used, as a 32-bit integer; UTF-8 text follows.
 */
export interface PageWriter {
  /** Starts a new run with no data written. */
  reset(): void;
  write(text: string): void;
  /** Bytes written since the last reset. */
  readonly bytes: number;
}

const headBytes = 4;
const pageBytes = 512 * 1024;

export function newPage(textBytes = 0): SharedArrayBuffer {
  return new SharedArrayBuffer(Math.max(pageBytes, headBytes + textBytes));
}

/** Writes to the first page, and then to further pages, which it makes and hands over as needed. */
export function writePages(
  firstPage: SharedArrayBuffer,
  handOver: (page: SharedArrayBuffer) => void,
): PageWriter {
  let page = pageOf(firstPage);
  let full = 0;
  let used = 0;
  const nextPage = (shared: SharedArrayBuffer) => {
    page = pageOf(shared);
    used = 0;
    Atomics.store(page.head, 0, 0);
  };
  return {
    reset() {
      full = 0;
      nextPage(firstPage);
    },
    write(text) {
      // A UTF-16 unit takes at most three bytes.
      if (text.length * 3 > page.text.length - used) {
        const shared = newPage(text.length * 3);
        full += used;
        nextPage(shared);
        handOver(shared);
      }
      used += page.text.write(text, used, "utf8");
      Atomics.store(page.head, 0, used);
    },
    get bytes() {
      return full + used;
    },
  };
}

/** Everything written to the pages so far, in order. */
export function readPages(pages: readonly SharedArrayBuffer[]): string {
  return pages
    .map((shared) => {
      const { head, text } = pageOf(shared);
      return text.toString("utf8", 0, Atomics.load(head, 0));
    })
    .join("");
}

function pageOf(shared: SharedArrayBuffer) {
  return { head: new Int32Array(shared, 0, 1), text: Buffer.from(shared, headBytes) };
}
