import type { Box } from "../drawing.ts";
import type { SvgWriter } from "../svg-writer.ts";
import type { PartSymbol } from "./part-symbol.ts";

/** Any device: a rectangle (IEC 60617). Its kind is written beside it. */
export const generalPart: PartSymbol = {
  legend: "part of its own kind",
  widthPx: 60,
  heightPx: 36,
  leads: "each",
  draw: (pen, box) => pen.rect(box),
};

/** A consumer, which turns current into something else: a rectangle with an arrow for its output. */
export const load: PartSymbol = {
  legend: "load",
  landing: "end of line",
  widthPx: 22,
  heightPx: 24,
  leads: "each",
  draw(pen, box) {
    const { x, y, width, height } = box;
    const middle = y + height / 2;
    return pen.rect(box) + arrow(pen, { x: x + 5, y: middle, width: width - 10, height: 0 });
  },
};

function arrow(pen: SvgWriter, { x, y, width }: Box): string {
  return (
    pen.line([
      { x, y },
      { x: x + width, y },
    ]) +
    pen.solid([
      { x: x + width, y },
      { x: x + width - 5, y: y - 3 },
      { x: x + width - 5, y: y + 3 },
    ])
  );
}
