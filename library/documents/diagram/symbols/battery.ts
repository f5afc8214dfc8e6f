import { edgeX, middleOf, type PartSymbol } from "./part-symbol.ts";

/** IEC 60617, IEEE 315: a longer thin plate is positive, a shorter thick one negative. */
export const battery: PartSymbol = {
  legend: "battery",
  widthPx: 56,
  heightPx: 60,
  leads: "gathered",
  draw(pen, box, leads) {
    const { x, y } = middleOf(box);
    const plates = [-13, -5, 5, 13].map((offset, index) => {
      const half = index % 2 === 0 ? 14 : 7;
      const plate = [
        { x: x - half, y: y + offset },
        { x: x + half, y: y + offset },
      ];
      return pen.line(plate, index % 2 === 0 ? "thin" : "thick");
    });
    const wires = leads.map(({ terminal, side, y: at }) =>
      pen.line([
        { x: edgeX(box, side), y: at },
        { x, y: at },
        { x, y: y + (terminal === "positive" ? -13 : 13) },
      ]),
    );
    // Between the plates and the dots where several conductors are gathered at the edge.
    const signs = [
      pen.text({ x: x - 20, y: y - 9 }, "+", { sizePx: 10, anchor: "middle" }),
      pen.text({ x: x - 20, y: y + 16 }, "−", { sizePx: 10, anchor: "middle" }),
    ];
    return [...plates, ...wires, ...signs].join("");
  },
};
