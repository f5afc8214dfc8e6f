/** Converts offsets of a text into lines and columns as people count them, from 1. Columns are UTF-16 units, as in editors. */
export interface LineIndex {
  positionAt(offset: number): { readonly line: number; readonly column: number };
  /** The text of a line without its line break; undefined past the end. */
  lineText(line: number): string | undefined;
}

export function createLineIndex(text: string): LineIndex {
  const starts = [0];
  for (const { index, 0: lineBreak } of text.matchAll(/\r\n|\n|\r/g)) starts.push(index + lineBreak.length);
  return {
    positionAt(offset) {
      let low = 0;
      let high = starts.length - 1;
      while (low < high) {
        const middle = (low + high + 1) >> 1;
        if (starts[middle]! <= offset) low = middle;
        else high = middle - 1;
      }
      return { line: low + 1, column: offset - starts[low]! + 1 };
    },
    lineText(line) {
      const start = starts[line - 1];
      return start === undefined ? undefined : text.slice(start, starts[line]).replace(/[\r\n]+$/, "");
    },
  };
}
