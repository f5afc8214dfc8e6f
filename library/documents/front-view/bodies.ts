import type { Body, TerminalSpot } from "../../model/placement/layout.ts";
import type { Box } from "../diagram/drawing.ts";
import { markPx } from "../diagram/finding-mark.ts";
import type { Point } from "../diagram/graph.ts";
import type { FoundHere } from "../diagram/schematic.ts";
import type { SvgWriter } from "../diagram/svg-writer.ts";
import { middleOf } from "../diagram/symbols/part-symbol.ts";
import { aroundPoints, commonBox, grown, sidesOf } from "./boxes.ts";
import type { FrontDrawing } from "./front-drawing.ts";
import { drawLabel, labelOf, labelsWithin, lineOwner, type PlacedLabel } from "./labels.ts";
import { lengthOnTape, sizeOnTape } from "./lengths-on-tape.ts";
import type { BodyHere } from "./surface-content.ts";

/** A part on the surface. */
export interface BodyShape {
  readonly here: BodyHere;
  /** Its outline, or the room of the cross of a part without a size. */
  readonly box: Box;
  readonly isPoint: boolean;
  readonly air: Box | undefined;
  readonly found: readonly FoundHere[];
  readonly terminals: readonly { readonly name: string; readonly spot: TerminalSpot; readonly at: Point }[];
}

export function bodyShape(drawing: FrontDrawing, here: BodyHere): BodyShape {
  const { placer, scale } = drawing;
  const { body, place } = here;
  const outline = scale.box(place.outline);
  const isPoint = outline.width === 0 || outline.height === 0;
  const box = isPoint ? grown(outline, pointPx) : outline;
  placer.take(box, body.index);
  const terminals = Object.entries(body.terminals).flatMap(([name, spots]) =>
    spots.map((spot) => ({ name, spot, at: scale.point(spot) })),
  );
  for (const { at, spot } of terminals) placer.take(grown(aroundPoints(lugOf(at, spot)), terminalPx + 1));
  const found = drawing.found.ofRecord(body.record);
  drawing.mark(found, markPlaces(box), [box]);
  const air = isPoint ? undefined : airOf(drawing, body, outline);
  if (air) for (const side of sidesOf(air)) placer.take(grown(side, 1), lineOwner);
  return { here, box, isPoint, air, found, terminals };
}

/** The label within the part, if there is room. */
export function bodyLabel(drawing: FrontDrawing, { here, box, isPoint }: BodyShape): PlacedLabel | undefined {
  const room = grown(box, -4);
  if (isPoint || room.width < 12 || room.height < 8) return undefined;
  const words = wordsOf(drawing, here);
  const { name, index } = here.body;
  const variants = (roomPx: number) => [
    ...labelsWithin(name, words, roomPx),
    ...(words.length > 1 ? labelsWithin(name, [words.join(" · ")], roomPx) : []),
  ];
  const upright = drawing.placer.within(room, variants(room.width), index);
  if (upright || room.height < 1.3 * room.width) return upright;
  return drawing.placer.within(room, variants(room.height), index, true);
}

/** @param within Its label, if that is within it. */
export function drawBody(drawing: FrontDrawing, shape: BodyShape, within: PlacedLabel | undefined): string {
  const { here, box, isPoint, air, terminals } = shape;
  const { name, record } = here.body;
  const { pen } = drawing;
  const label = within ?? drawing.placer.beside(box, labelOf(name, wordsOf(drawing, here), 10));
  return drawing.draw(
    { ...shape, kind: "body", name, record, sentence: sentenceOf(drawing, here), box },
    isPoint ? cross(pen, middleOf(box)) : pen.rect(box),
    air ? pen.rect(air, "hidden") : "",
    ...terminals.map((terminal) => drawTerminal(pen, terminal)),
    drawLabel(pen, label),
  );
}

const pointPx = 4;
const terminalPx = 2.6;
const lugPx = 9;

/** In the corners of a part, if it is large enough; else beside it. */
function markPlaces({ x, y, width, height }: Box): readonly Point[] {
  const inset = markPx / 2 + 3;
  const [left, right, top, bottom] = [x + inset, x + width - inset, y + inset, y + height - inset];
  const corners = [
    { x: right, y: top },
    { x: left, y: top },
    { x: right, y: bottom },
    { x: left, y: bottom },
  ];
  const beside = { x: x + width + markPx / 2 + 1, y: y - markPx / 2 + 2 };
  return [...(width >= 40 && height >= 30 ? corners : []), beside];
}

/** The air that a part needs, on its stated sides, as far as the surface goes. */
function airOf({ scale, board }: FrontDrawing, { air }: Body, box: Box): Box | undefined {
  const px = (mm: number | undefined) => scale.px(mm ?? 0);
  if (!Object.values(air).some((mm) => mm > 0)) return undefined;
  const [left, top] = [px(air.left), px(air.top)];
  const whole = {
    x: box.x - left,
    y: box.y - top,
    width: box.width + left + px(air.right),
    height: box.height + top + px(air.bottom),
  };
  return commonBox(whole, board);
}

/** The lines below its name. */
function wordsOf({ isTemplate, unit }: FrontDrawing, { body, place }: BodyHere): readonly string[] {
  const { size } = body;
  if (!size) return [];
  const { x, y } = place.outline;
  const turned = place.turnedDeg === 0 ? [] : [place.position];
  const extent = sizeOnTape(place.outline, unit);
  if (isTemplate) return [`left ${lengthOnTape(x, unit)}, top ${lengthOnTape(y, unit)}`, extent, ...turned];
  const depth = size.depth === undefined ? [] : [`${lengthOnTape(size.depth, unit)} deep`];
  return [extent, ...depth, ...turned];
}

function sentenceOf({ unit }: FrontDrawing, { body, place }: BodyHere): string {
  const { x, y } = place.outline;
  const size = body.size
    ? `${sizeOnTape(place.outline, unit)} ${unit}${body.size.depth === undefined ? "" : `, ${lengthOnTape(body.size.depth, unit)} ${unit} deep`}`
    : "size not stated";
  return `${body.name}: ${size}; ${lengthOnTape(x, unit)} ${unit} from the left edge and ${lengthOnTape(y, unit)} ${unit} from the top edge, ${place.position}.`;
}

const towards: Readonly<Record<string, Point>> = {
  left: { x: -1, y: 0 },
  right: { x: 1, y: 0 },
  up: { x: 0, y: -1 },
  down: { x: 0, y: 1 },
};

/** From the middle of a terminal to the end of the stroke for its lug. */
function lugOf({ x, y }: Point, { leaves }: TerminalSpot): readonly [Point, Point] {
  const way = towards[leaves ?? ""] ?? { x: 0, y: 0 };
  return [
    { x, y },
    { x: x + way.x * lugPx, y: y + way.y * lugPx },
  ];
}

function drawTerminal(pen: SvgWriter, { name, spot, at }: BodyShape["terminals"][number]): string {
  const [middle, end] = lugOf(at, spot);
  const way = towards[spot.leaves ?? ""];
  const lug = way
    ? pen.line([{ x: middle.x + way.x * terminalPx, y: middle.y + way.y * terminalPx }, end]) +
      pen.line([
        { x: end.x - way.x * 3 - way.y * 2, y: end.y - way.y * 3 - way.x * 2 },
        end,
        { x: end.x - way.x * 3 + way.y * 2, y: end.y - way.y * 3 + way.x * 2 },
      ])
    : "";
  const front = spot.leaves === "front" ? pen.circle(at, 1.1, "filled") : "";
  return pen.group(
    { classes: ["loomwright-terminal"], title: `terminal ${name}` },
    pen.circle(at, terminalPx),
    front,
    lug,
  );
}

function cross(pen: SvgWriter, { x, y }: Point): string {
  return (
    pen.line([
      { x: x - pointPx, y },
      { x: x + pointPx, y },
    ]) +
    pen.line([
      { x, y: y - pointPx },
      { x, y: y + pointPx },
    ])
  );
}
