import { counted } from "../../rules/wording/format-number.ts";
import { markPx } from "../diagram/finding-mark.ts";
import type { Point } from "../diagram/graph.ts";
import type { FoundHere } from "../diagram/schematic.ts";
import type { SvgWriter } from "../diagram/svg-writer.ts";
import { grown } from "./boxes.ts";
import type { FrontDrawing } from "./front-drawing.ts";
import { drawLabel, labelOf } from "./labels.ts";
import { lengthOnTape, type TapeUnit } from "./lengths-on-tape.ts";
import type { Opening } from "./surface-content.ts";

/** The place where a channel leads away from the surface. */
export interface OpeningShape {
  readonly opening: Opening;
  readonly at: Point;
  readonly radius: number;
  readonly found: readonly FoundHere[];
}

export function openingShape(drawing: FrontDrawing, opening: Opening): OpeningShape {
  const at = drawing.scale.point(opening.at);
  const { inside, record } = opening.channel;
  const diameter = inside && (inside.shape === "round" ? inside.diameter : inside.width);
  const radius = Math.max(5, diameter === undefined ? 0 : drawing.scale.px(diameter) / 2);
  const box = grown({ ...at, width: 0, height: 0 }, radius + 1);
  drawing.placer.take(box);
  const aside = (radius + markPx / 2 + 4) * Math.SQRT1_2;
  const around = [-1, 1].flatMap((down) =>
    [1, -1].map((right) => ({ x: at.x + right * aside, y: at.y + down * aside })),
  );
  const found = drawing.found.ofRecord(record);
  drawing.mark(found, around, [box]);
  return { opening, at, radius, found };
}

export function drawOpening(drawing: FrontDrawing, shape: OpeningShape): string {
  const { opening, at, radius } = shape;
  const { conductors, to, ends, lengthMm } = opening;
  const { name, record, way } = opening.channel;
  const { pen } = drawing;
  const leads = to !== undefined ? `to ${to}` : ends.length > 0 ? `to ${ends.join(", ")}` : "to a free end";
  const words = [leads, `${longLength(lengthMm, drawing.unit)} · ${counted(conductors, "conductor")}`];
  const box = grown({ ...at, width: 0, height: 0 }, radius);
  const label = drawing.placer.beside(box, labelOf(name, words, 10));
  // The other end of the same channel may be on this surface too.
  const isAgain = drawing.elements.some((one) => one.kind === "channel" && one.record === record);
  const elementId = `channel-${record}${isAgain ? "-end" : ""}`;
  const sentence = `${name}: ${way} ${words.join(", ")}.`;
  return drawing.draw(
    { ...shape, kind: "channel", name, record, elementId, sentence, box },
    openingSign(pen, at, radius),
    drawLabel(pen, label),
  );
}

/** A circle with a cross in it. */
function openingSign(pen: SvgWriter, at: Point, radius: number): string {
  const slant = radius * Math.SQRT1_2;
  const stroke = (down: 1 | -1) =>
    pen.line(
      [
        { x: at.x - slant, y: at.y - down * slant },
        { x: at.x + slant, y: at.y + down * slant },
      ],
      "fine",
    );
  return pen.circle(at, radius) + stroke(1) + stroke(-1);
}

function longLength(mm: number, unit: TapeUnit): string {
  if (unit === "in") return mm < 304.8 ? `${lengthOnTape(mm, "in")} in` : `${lengthOnTape(mm / 12, "in")} ft`;
  return mm < 1_000 ? `${lengthOnTape(mm, "mm")} mm` : `${lengthOnTape(mm / 1_000, "mm")} m`;
}
