import type { Box } from "../drawing.ts";
import type { SvgWriter } from "../svg-writer.ts";
import type { PartSymbol } from "./part-symbol.ts";

/** IEC 60617: a box cut by a diagonal, its input above, its output below. */
export const dcDcCharger = converter("DC-DC charger", "direct", "direct");
export const solarController = converter("solar controller", "direct", "direct");
export const inverter = converter("inverter", "direct", "alternating");
export const shoreCharger = converter("shore charger", "alternating", "direct");

type CurrentKind = "direct" | "alternating";

function converter(legend: string, taken: CurrentKind, given: CurrentKind): PartSymbol {
  return {
    legend,
    widthPx: 92,
    heightPx: 52,
    leads: "each",
    draw(pen, box) {
      const inner = { ...box, x: box.x + box.width / 2 - 24, width: 48 };
      const { x, y, width, height } = inner;
      const half = { width: 16, height: 10 };
      return [
        pen.rect(box),
        pen.line([
          { x, y: y + height - 6 },
          { x: x + width, y: y + 6 },
        ]),
        waves[taken](pen, { x: x + 3, y: y + height / 2 - 16, ...half }),
        waves[given](pen, { x: x + width - 19, y: y + height / 2 + 7, ...half }),
      ].join("");
    },
  };
}

const waves: Readonly<Record<CurrentKind, (pen: SvgWriter, box: Box) => string>> = {
  direct: (pen, { x, y, width, height }) =>
    pen.line([
      { x, y: y + height / 2 - 2 },
      { x: x + width, y: y + height / 2 - 2 },
    ]) +
    [0, 6, 12]
      .map((offset) =>
        pen.line([
          { x: x + offset, y: y + height / 2 + 2 },
          { x: x + offset + 4, y: y + height / 2 + 2 },
        ]),
      )
      .join(""),
  alternating: (pen, { x, y, width, height }) =>
    pen.line(
      Array.from({ length: 13 }, (_, index) => ({
        x: x + (width * index) / 12,
        y: y + height / 2 - Math.sin((2 * Math.PI * index) / 12) * 4,
      })),
    ),
};
