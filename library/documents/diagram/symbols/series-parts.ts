import type { Box } from "../drawing.ts";
import type { Point } from "../graph.ts";
import type { SvgWriter } from "../svg-writer.ts";
import { edgeX, type Lead, middleOf, type PartSymbol } from "./part-symbol.ts";
import { deviceHalfPx, drawDevice } from "./protection.ts";

/** A figure in the middle of one line, which reaches `halfPx` to each side of the point that it is given. */
function inLine(
  legend: string,
  size: Pick<PartSymbol, "widthPx" | "heightPx"> & { readonly halfPx: number },
  figure: (pen: SvgWriter, at: Point) => readonly string[],
): PartSymbol {
  const { widthPx, heightPx, halfPx } = size;
  return {
    ...{ legend, widthPx, heightPx, landing: "series", leads: "gathered" },
    draw(pen, box, leads) {
      const { x, y: middle } = middleOf(box);
      const y = leads[0]?.y ?? middle;
      return [...toMiddle(pen, box, leads, halfPx, y), ...figure(pen, { x, y })].join("");
    },
  };
}

const contact = { widthPx: 56, heightPx: 24, halfPx: 14 };

/** IEC 60617, disconnector: a blade, open, and the bar of its fixed contact. */
export const disconnect = inLine("disconnect", contact, (pen, { x, y }) => [
  pen.line([
    { x: x - 14, y },
    { x: x + 11, y: y - 13 },
  ]),
  pen.line([
    { x: x + 14, y: y - 5 },
    { x: x + 14, y: y + 5 },
  ]),
  pen.circle({ x: x - 14, y }, 2, "filled"),
]);

/** IEC 60617: a make contact, and the coil that closes it. */
export const relay = inLine("relay", { ...contact, heightPx: 44 }, (pen, { x, y }) => [
  pen.line([
    { x: x - 14, y },
    { x: x + 12, y: y - 12 },
  ]),
  // The link from the blade to the coil.
  pen.line(
    [
      { x, y: y - 5 },
      { x, y: y + 8 },
    ],
    "fine",
  ),
  pen.rect({ x: x - 9, y: y + 8, width: 18, height: 9 }),
]);

/** IEC 60617: a switch with several positions, drawn on its first. */
export const selectorSwitch: PartSymbol = {
  legend: "selector switch",
  widthPx: 90,
  heightPx: 40,
  leads: "each",
  draw(pen, box) {
    const { x, y } = middleOf(box);
    const pivot = { x: x + 9, y };
    const contacts = [-9, 0, 9].map((offset) => ({ x: x - 9, y: y + offset }));
    return [
      pen.rect(box),
      ...contacts.map((contact) => pen.circle(contact, 1.8)),
      pen.line([pivot, contacts[0]!]),
      pen.circle(pivot, 2, "filled"),
    ].join("");
  },
};

/** IEC 60617: a resistor, with its two leads for measuring. */
export const shunt = inLine("shunt", { widthPx: 60, heightPx: 24, halfPx: 18 }, (pen, { x, y }) => {
  const tap = (at: number) =>
    pen.line([
      { x: x + at, y: y - 6 },
      { x: x + at, y: y - 12 },
    ]) + pen.circle({ x: x + at, y: y - 13.5 }, 1.5);
  return [pen.rect({ x: x - 18, y: y - 6, width: 36, height: 12 }), tap(-10), tap(10)];
});

/** A fuse, or the contact of a breaker, alone in its line: the same figure as in a conductor. */
function deviceInLine(legend: string, device: Parameters<typeof drawDevice>[1]): PartSymbol {
  return inLine(legend, { ...contact, halfPx: deviceHalfPx }, (pen, at) => [drawDevice(pen, device, at)]);
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
