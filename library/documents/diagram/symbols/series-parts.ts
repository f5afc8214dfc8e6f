import type { Box } from "../drawing.ts";
import type { SvgWriter } from "../svg-writer.ts";
import { edgeX, type Lead, middleOf, type PartSymbol } from "./part-symbol.ts";
import { deviceHalfPx, drawDevice } from "./protection.ts";

/** IEC 60617, disconnector: a blade, open, and the bar of its fixed contact. */
export const disconnect: PartSymbol = {
  legend: "disconnect",
  landing: "series",
  widthPx: 56,
  heightPx: 24,
  leads: "gathered",
  draw(pen, box, leads) {
    const { x, y: middle } = middleOf(box);
    const y = leads[0]?.y ?? middle;
    return [
      ...toMiddle(pen, box, leads, 14, y),
      pen.line([
        { x: x - 14, y },
        { x: x + 11, y: y - 13 },
      ]),
      pen.line([
        { x: x + 14, y: y - 5 },
        { x: x + 14, y: y + 5 },
      ]),
      pen.circle({ x: x - 14, y }, 2, "filled"),
    ].join("");
  },
};

/** IEC 60617: a resistor, with its two leads for measuring. */
export const shunt: PartSymbol = {
  legend: "shunt",
  landing: "series",
  widthPx: 60,
  heightPx: 24,
  leads: "gathered",
  draw(pen, box, leads) {
    const { x, y: middle } = middleOf(box);
    const y = leads[0]?.y ?? middle;
    const tap = (at: number) =>
      pen.line([
        { x: x + at, y: y - 6 },
        { x: x + at, y: y - 12 },
      ]) + pen.circle({ x: x + at, y: y - 13.5 }, 1.5);
    return [
      ...toMiddle(pen, box, leads, 18, y),
      pen.rect({ x: x - 18, y: y - 6, width: 36, height: 12 }),
      tap(-10),
      tap(10),
    ].join("");
  },
};

/** A fuse, or the contact of a breaker, alone in its line: the same figure as in a conductor. */
function deviceInLine(legend: string, device: Parameters<typeof drawDevice>[1]): PartSymbol {
  return {
    legend,
    landing: "series",
    widthPx: 56,
    heightPx: 24,
    leads: "gathered",
    draw(pen, box, leads) {
      const { x, y: middle } = middleOf(box);
      const y = leads[0]?.y ?? middle;
      return [...toMiddle(pen, box, leads, deviceHalfPx, y), drawDevice(pen, device, { x, y })].join("");
    },
  };
}

export const fuseHolder = deviceInLine("fuse holder", {});
export const breaker = deviceInLine("circuit breaker", { family: "circuit breaker" });

/** Leads up to the figure in the middle, which reaches `half` to each side. */
function toMiddle(pen: SvgWriter, box: Box, leads: readonly Lead[], half: number, y: number): string[] {
  const { x } = middleOf(box);
  return leads.map(({ side, y: at }) => {
    const touching = { x: side === "west" ? x - half : x + half, y };
    const start = { x: edgeX(box, side), y: at };
    return pen.line(at === y ? [start, touching] : [start, { x: touching.x, y: at }, touching]);
  });
}
