import type { Fill } from "../diagram/fill-patterns.ts";
import type { Point } from "../diagram/graph.ts";
import type { SvgWriter } from "../diagram/svg-writer.ts";
import { cutToWidth, textWidth } from "../diagram/text-measure.ts";

/** The meaning of a pattern, or of a mark that the chart itself draws at a point; words alone have none. */
export interface LegendEntry {
  readonly mark: Fill | ((pen: SvgWriter, at: Point) => string) | undefined;
  readonly text: string;
}

/** A piece of a picture, and the height that it takes. */
export interface DrawnPiece {
  readonly svg: string;
  readonly heightPx: number;
}

/** Entries beside one another, as many as fit on a line; a name that is longer than a line is cut. */
export function drawEntries(
  pen: SvgWriter,
  entries: readonly LegendEntry[],
  { x, y, width }: { readonly x: number; readonly y: number; readonly width: number },
): DrawnPiece {
  const pieces: string[] = [];
  let [left, top] = [x, y];
  for (const { mark, text } of entries) {
    const markPx = mark === undefined ? 0 : swatch.width + swatch.gap;
    const words = cutToWidth(text, width - markPx, entryPx);
    const needed = markPx + textWidth(words, entryPx);
    if (left > x && left + needed > x + width) [left, top] = [x, top + linePx];
    const middle = top + linePx / 2;
    if (mark !== undefined)
      pieces.push(
        typeof mark === "string"
          ? pen.filled(boxAt(left, middle), mark)
          : mark(pen, { x: left + swatch.width / 2, y: middle }),
      );
    pieces.push(pen.text({ x: left + markPx, y: middle + 3.5 }, words, { sizePx: entryPx }));
    left += needed + 16;
  }
  return { svg: pieces.join(""), heightPx: entries.length === 0 ? 0 : top + linePx - y };
}

const swatch = { width: 18, height: 10, gap: 5 };
export const entryPx = 10;
const linePx = 16;

function boxAt(left: number, middle: number): readonly Point[] {
  const [top, bottom] = [middle - swatch.height / 2, middle + swatch.height / 2];
  return [
    { x: left, y: top },
    { x: left + swatch.width, y: top },
    { x: left + swatch.width, y: bottom },
    { x: left, y: bottom },
  ];
}
