import type { Box } from "../drawing.ts";
import { verticalExtent } from "../graph.ts";
import type { SvgWriter } from "../svg-writer.ts";
import { edgeX, type Lead, middleOf, type PartSymbol } from "./part-symbol.ts";

/** IEC 60617: a conductor on which others land, drawn thick; a dot where each joins. */
export const busBar: PartSymbol = {
  legend: "bus bar",
  landing: "bar",
  spreads: true,
  widthPx: 24,
  heightPx: 36,
  leads: "each",
  draw: (pen, box, leads) => bar(pen, box, leads, middleOf(box).x),
};

/** IEC 60617: the frame or chassis, and the conductors bolted to it. */
export const chassis: PartSymbol = {
  legend: "chassis (metal that carries return current)",
  landing: "bar",
  widthPx: 40,
  heightPx: 48,
  leads: "each",
  draw(pen, box, leads) {
    const { x } = middleOf(box);
    const foot = box.y + box.height - 8;
    const line = (half: number) =>
      pen.line([
        { x: x - half, y: foot },
        { x: x + half, y: foot },
      ]);
    const hatches = [-12, -2, 8].map((offset) =>
      pen.line([
        { x: x + offset + 4, y: foot },
        { x: x + offset - 3, y: foot + 8 },
      ]),
    );
    return [bar(pen, { ...box, height: box.height - 8 }, leads, x), line(14), ...hatches].join("");
  },
};

/**
 * A panel of fuses: its feed joins every branch; its own negative bar joins the returns, and is interrupted where the lead of a branch
 * passes.
 */
export const fusePanel: PartSymbol = { ...panel("fuse panel", "thin"), spreads: true };
/** The start of circuits if the plan does not state one. */
export const supply = panel("supply, not stated in the plan", "fine");

function panel(legend: string, frame: "thin" | "fine"): PartSymbol {
  return {
    legend,
    landing: "two bars",
    widthPx: 64,
    heightPx: 40,
    leads: "each",
    draw(pen, box, leads) {
      const negative = leads.filter(({ terminal }) => terminal === "negative");
      const positive = leads.filter(({ terminal }) => terminal !== "negative");
      return [
        pen.rect(box, frame),
        innerBar(pen, box, positive, box.x + 20),
        innerBar(
          pen,
          box,
          negative,
          box.x + 42,
          positive.filter(({ side }) => side === "east"),
        ),
      ].join("");
    },
  };
}

function bar(pen: SvgWriter, box: Box, leads: readonly Lead[], x: number): string {
  return (
    pen.line(
      [
        { x, y: box.y },
        { x, y: box.y + box.height },
      ],
      "heavy",
    ) + joined(pen, box, leads, x, 4)
  );
}

/** Spans the leads that it joins, with a gap for each lead that passes it. */
function innerBar(
  pen: SvgWriter,
  box: Box,
  leads: readonly Lead[],
  x: number,
  passing: readonly Lead[] = [],
): string {
  if (leads.length === 0) return "";
  const { top, bottom } = verticalExtent(leads);
  const gaps = passing
    .map(({ y }) => ({ top: y - gapPx, bottom: y + gapPx }))
    .sort((one, other) => one.top - other.top);
  const pieces: string[] = [];
  let from = top - barEndPx;
  for (const gap of [...gaps, { top: Number.POSITIVE_INFINITY, bottom: Number.POSITIVE_INFINITY }]) {
    const to = Math.min(gap.top, bottom + barEndPx);
    if (to > from)
      pieces.push(
        pen.line(
          [
            { x, y: from },
            { x, y: to },
          ],
          "thick",
        ),
      );
    from = Math.max(from, gap.bottom);
  }
  return pieces.join("") + joined(pen, box, leads, x, 2.4);
}

/** A bar reaches beyond its outer leads. */
const barEndPx = 6;
/** Half the gap that a bar leaves for a lead of the other polarity. */
const gapPx = 7;

/** Each lead from the edge of the box to the bar, with a dot where they join. */
function joined(pen: SvgWriter, box: Box, leads: readonly Lead[], x: number, dotPx: number): string {
  return leads
    .map(
      ({ side, y }) =>
        pen.line([
          { x: edgeX(box, side), y },
          { x, y },
        ]) + pen.circle({ x, y }, dotPx, "filled"),
    )
    .join("");
}
