import { edgeX, middleOf, type PartSymbol } from "./part-symbol.ts";

/** IEC 60617, IEEE 315: rotating machines are circles with a letter. */
export const motor: PartSymbol = { ...machine("motor", "M"), landing: "end of line" };
export const alternator = machine("generator (alternator)", "G");

function machine(legend: string, letter: string): PartSymbol {
  return {
    legend,
    widthPx: 40,
    heightPx: 36,
    leads: "gathered",
    draw(pen, box, leads) {
      const { x, y } = middleOf(box);
      const wires = leads.map(({ side, y: at }) => {
        const away = Math.min(Math.abs(at - y), radius - 3) * Math.sign(at - y);
        const reach = Math.sqrt(radius ** 2 - away ** 2);
        const touching = { x: side === "west" ? x - reach : x + reach, y: y + away };
        const start = { x: edgeX(box, side), y: at };
        if (at === touching.y) return pen.line([start, touching]);
        return pen.line([start, { x: touching.x, y: at }, touching]);
      });
      return [
        pen.circle({ x, y }, radius),
        pen.text({ x, y: y + 3 }, letter, { sizePx: 12, anchor: "middle" }),
        pen.line([
          { x: x - 5, y: y + 7 },
          { x: x + 5, y: y + 7 },
        ]),
        ...wires,
      ].join("");
    },
  };
}

const radius = 17;
