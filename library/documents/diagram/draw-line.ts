import { bodyBox, foundClass } from "./draw-part.ts";
import type { Box } from "./drawing.ts";
import { drawMark, markPx, worstOf } from "./finding-mark.ts";
import { type PlacedNode, type Point, verticalExtent } from "./graph.ts";
import { drawnColours } from "./insulation-colours.ts";
import type { NodeGeometry } from "./node-geometry.ts";
import type { Device, SchematicLine } from "./schematic.ts";
import { type Row, ratingPx, ratingText } from "./stub.ts";
import type { SvgWriter } from "./svg-writer.ts";
import { deviceHalfPx, drawDevice } from "./symbols/protection.ts";
import { textWidth } from "./text-measure.ts";

/** One end of a line, at its part. */
export interface LineFoot {
  readonly anatomy: NodeGeometry;
  readonly placed: PlacedNode;
  readonly row: number;
}

export interface DrawnLine {
  readonly svg: string;
  readonly box: Box;
  readonly devices: readonly { readonly device: Device; readonly svg: string; readonly box: Box }[];
}

/** A line from symbol to symbol, with its devices, signs and labels. `way` is its path between the ports, as laid out. */
export function drawLine(
  pen: SvgWriter,
  line: SchematicLine,
  feet: readonly [LineFoot, LineFoot],
  way: readonly Point[],
): DrawnLine {
  const stubs = feet.map(stubOf) as [Stub, Stub];
  const [start, end] = stubs.map(({ y, atBody }): Point => ({ x: atBody, y })) as [Point, Point];
  const points = [start, ...way, end];
  const devices = stubs.flatMap((stub) =>
    stub.row.end.device ? [drawnDevice(pen, stub, stub.row.end.device)] : [],
  );
  const kind = worstOf(line.found);
  return {
    box: boxOf(points),
    devices,
    svg: pen.group(
      line.isMounting
        ? { classes: ["loomwright-mounting", `loomwright-polarity-${line.polarity}`] }
        : {
            classes: ["loomwright-conductor", `loomwright-polarity-${line.polarity}`, ...foundClass(kind)],
            id: line.id,
            title: line.name,
            description: line.description,
          },
      ...interrupted(points, stubs).map((piece) => conductor(pen, piece, line)),
      ...stubs.map((stub) => sign(pen, line, stub)),
      ...stubs.map((stub) => label(pen, line, stub)),
    ),
  };
}

/** A piece of a conductor, in its colour if it has one. */
export function conductor(
  pen: SvgWriter,
  points: readonly Point[],
  { polarity, colour }: Pick<SchematicLine, "polarity" | "colour">,
): string {
  const colours = drawnColours(colour);
  return colours.length === 0 ? pen.line(points, polarity) : pen.insulated(points, polarity, colours);
}

/** Where the columns of a stub lie on the sheet. */
interface Stub {
  readonly row: Row;
  readonly y: number;
  /** Where the line meets the body. */
  readonly atBody: number;
  /** 1 to the right, -1 to the left. */
  readonly outwards: 1 | -1;
  /** Middle of the column of devices. */
  readonly deviceX: number;
  /** Left end of the column of labels. */
  readonly labelX: number;
}

function stubOf({ anatomy, placed, row: index }: LineFoot): Stub {
  const row = anatomy.rows[index]!;
  const box = bodyBox(anatomy, placed);
  const { sign: signs, device, label: labels } = anatomy[row.side];
  const outwards = row.side === "east" ? 1 : -1;
  const atBody = row.side === "east" ? box.x + box.width : box.x;
  return {
    ...{ row, outwards, atBody },
    y: placed.rowY[index]!,
    deviceX: atBody + outwards * (signs + device / 2),
    labelX: row.side === "east" ? atBody + signs + device : atBody - signs - device - labels + 10,
  };
}

/** A device takes the place of a piece of its line. */
function interrupted(
  points: readonly Point[],
  [start, end]: readonly [Stub, Stub],
): readonly (readonly Point[])[] {
  const first = start.row.end.device
    ? [[points[0]!, { x: start.deviceX - start.outwards * deviceHalfPx, y: start.y }]]
    : [];
  const last = end.row.end.device
    ? [[{ x: end.deviceX - end.outwards * deviceHalfPx, y: end.y }, points.at(-1)!]]
    : [];
  const middle = [
    start.row.end.device ? { x: start.deviceX + start.outwards * deviceHalfPx, y: start.y } : points[0]!,
    ...points.slice(1, -1),
    end.row.end.device ? { x: end.deviceX + end.outwards * deviceHalfPx, y: end.y } : points.at(-1)!,
  ];
  return [...first, withoutStraights(middle), ...last];
}

/** Drops the points that lie straight between their neighbours. */
function withoutStraights(points: readonly Point[]): readonly Point[] {
  return points.filter((point, index) => {
    const [before, after] = [points[index - 1], points[index + 1]];
    if (!before || !after) return true;
    return !((before.x === point.x && point.x === after.x) || (before.y === point.y && point.y === after.y));
  });
}

function sign(pen: SvgWriter, { polarity }: SchematicLine, { atBody, outwards, y }: Stub): string {
  const x = atBody + outwards * 8;
  if (polarity === "unknown" || polarity === "link") return "";
  if (polarity === "pair") return pairStrokes(pen, { x, y });
  return pen.text({ x, y: y - 3 }, polarity === "positive" ? "+" : "−", { sizePx: 10, anchor: "middle" });
}

/** Two strokes through a line: it represents two conductors. */
export function pairStrokes(pen: SvgWriter, { x, y }: Point): string {
  return [-2.5, 2.5]
    .map((offset) =>
      pen.line([
        { x: x + offset - 2, y: y + 5 },
        { x: x + offset + 2, y: y - 5 },
      ]),
    )
    .join("");
}

function label(pen: SvgWriter, line: SchematicLine, { row, y, labelX }: Stub): string {
  if (!row.label) return "";
  const kind = worstOf(line.found);
  const x = labelX + (kind ? markPx + 4 : 0);
  return [
    kind ? drawMark(pen, kind, { x: labelX + markPx / 2, y: y - 10 }) : "",
    pen.text({ x, y: y - 5 }, row.label.above),
    row.label.below === "" ? "" : pen.text({ x, y: y + 13 }, row.label.below, { faint: true }),
  ].join("");
}

function drawnDevice(pen: SvgWriter, { deviceX, y }: Stub, device: Device): DrawnLine["devices"][number] {
  const rating = ratingText(device);
  const kind = worstOf(device.found);
  const marked = kind ? markPx + 3 : 0;
  const width = Math.max(textWidth(rating, ratingPx) + marked, 2 * deviceHalfPx);
  const left = deviceX - (textWidth(rating, ratingPx) + marked) / 2;
  return {
    device,
    box: { x: deviceX - width / 2, y: y - 17, width, height: 22 },
    svg: pen.group(
      {
        classes: ["loomwright-protection", ...foundClass(kind)],
        id: device.id,
        title: device.name,
        description: device.description,
      },
      drawDevice(pen, device.protection, { x: deviceX, y }),
      pen.text({ x: left + marked, y: y - 7 }, rating, { sizePx: ratingPx }),
      kind ? drawMark(pen, kind, { x: left + markPx / 2, y: y - 12 }) : "",
    ),
  };
}

function boxOf(points: readonly Point[]): Box {
  let [left, right] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const { x } of points) [left, right] = [Math.min(left, x), Math.max(right, x)];
  const { top, bottom } = verticalExtent(points);
  return { x: left, y: top, width: right - left, height: bottom - top };
}
