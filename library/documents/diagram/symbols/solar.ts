import type { PartSymbol } from "./part-symbol.ts";

/** IEC 60617, photovoltaic cell: a cell, and two arrows of light that strike it. */
export const solarArray: PartSymbol = {
  legend: "solar array",
  widthPx: 60,
  heightPx: 48,
  leads: "each",
  draw(pen, box) {
    const x = box.x + box.width / 2 + 4;
    const y = box.y + box.height / 2 + 6;
    const ray = (offset: number) => {
      const tip = { x: x - 10 + offset, y: y - 8 };
      return (
        pen.line([{ x: tip.x - 11, y: tip.y - 11 }, tip]) +
        pen.solid([tip, { x: tip.x - 6, y: tip.y - 2.5 }, { x: tip.x - 2.5, y: tip.y - 6 }])
      );
    };
    return [
      pen.rect(box),
      pen.line([
        { x: x - 12, y: y - 3 },
        { x: x + 12, y: y - 3 },
      ]),
      pen.line(
        [
          { x: x - 6, y: y + 3 },
          { x: x + 6, y: y + 3 },
        ],
        "thick",
      ),
      pen.line([
        { x, y: y - 3 },
        { x, y: y - 10 },
      ]),
      pen.line([
        { x, y: y + 3 },
        { x, y: y + 10 },
      ]),
      ray(0),
      ray(-9),
    ].join("");
  },
};
