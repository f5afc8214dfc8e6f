import { counted } from "../../rules/wording/format-number.ts";
import type { Point } from "../diagram/graph.ts";
import type { SvgWriter } from "../diagram/svg-writer.ts";
import { contains } from "./boxes.ts";
import type { ChannelShape } from "./channels.ts";
import type { FrontDrawing } from "./front-drawing.ts";
import { drawLabel, type Label, labelOf, type PlacedLabel } from "./labels.ts";
import { labelBeside } from "./labels-beside.ts";
import { directionOf, lengthOf, type Piece, pointAt } from "./lines.ts";

/** Conductors nearer to each other than 0.8 mm on paper cannot be told apart: they share a line. An SVG has 96 px an inch. */
export const nearestPx = (0.8 * 96) / 25.4;

/** The lines of a conductor, and its wires side by side. */
export interface DrawnConductor {
  readonly lines: readonly (readonly Point[])[];
  readonly wires: number;
}

/** A straight stretch on which several conductors lie on each other. */
export interface SharedLine {
  readonly piece: Piece;
  readonly wires: number;
}

/** Those that are long enough to be seen, in the order of their places. */
export function sharedLines(conductors: readonly DrawnConductor[]): readonly SharedLine[] {
  return bundlesOf(conductors).flatMap((bundle) => sharedIn(bundle, conductors));
}

/** A piece of a conductor on a line through the picture, which the distance from the origin and the direction give. */
interface OnLine {
  readonly conductor: number;
  readonly along: Point;
  readonly offset: number;
  readonly from: number;
  readonly to: number;
}

/** The pieces of all conductors that lie on the same lines. */
function bundlesOf(conductors: readonly DrawnConductor[]): readonly (readonly OnLine[])[] {
  const pieces = conductors.flatMap(({ lines }, conductor) =>
    lines.flatMap((line) =>
      line.slice(1).flatMap((to, at): OnLine[] => {
        const piece = [line[at]!, to] as const;
        return lengthOf(piece) < 0.1 ? [] : [onLine(piece, conductor)];
      }),
    ),
  );
  const angle = ({ along }: OnLine) => Math.round(Math.atan2(along.y, along.x) * 1_000);
  const inOrder = pieces.toSorted((one, other) => angle(one) - angle(other) || one.offset - other.offset);
  const bundles: OnLine[][] = [];
  for (const piece of inOrder) {
    const last = bundles.at(-1)?.at(-1);
    const isNear = last && angle(last) === angle(piece) && piece.offset - last.offset < nearestPx;
    if (isNear) bundles.at(-1)!.push(piece);
    else bundles.push([piece]);
  }
  return bundles;
}

/** Read to the right, or downwards. */
function onLine(piece: Piece, conductor: number): OnLine {
  const direction = directionOf(piece);
  const isBack = direction.x < -1e-6 || (Math.abs(direction.x) <= 1e-6 && direction.y < 0);
  const [from, to] = isBack ? [piece[1], piece[0]] : piece;
  const along = isBack ? { x: -direction.x, y: -direction.y } : direction;
  const place = ({ x, y }: Point) => x * along.x + y * along.y;
  return { conductor, along, offset: from.y * along.x - from.x * along.y, from: place(from), to: place(to) };
}

/** From end to end of pieces, the stretches with several conductors; neighbours with as many are one. */
function sharedIn(bundle: readonly OnLine[], conductors: readonly DrawnConductor[]): readonly SharedLine[] {
  const ends = bundle
    .flatMap((piece) => [
      { at: piece.from, piece, opens: 1 },
      { at: piece.to, piece, opens: -1 },
    ])
    .toSorted((one, other) => one.at - other.at);
  const open = new Map<number, { pieces: number; offset: number }>();
  const stretches: { readonly from: number; to: number; readonly offset: number; readonly wires: number }[] =
    [];
  for (const [index, { at, piece, opens }] of ends.entries()) {
    const { conductor, offset } = piece;
    const pieces = (open.get(conductor)?.pieces ?? 0) + opens;
    if (pieces > 0) open.set(conductor, { pieces, offset });
    else open.delete(conductor);
    const to = ends[index + 1]?.at ?? at;
    if (open.size < 2 || to - at < roundingPx) continue;
    const offsets = [...open.values()].map((one) => one.offset);
    const middle = (Math.min(...offsets) + Math.max(...offsets)) / 2;
    const wires = [...open.keys()].reduce((sum, one) => sum + conductors[one]!.wires, 0);
    const last = stretches.at(-1);
    const goesOn =
      last &&
      at - last.to < roundingPx &&
      last.wires === wires &&
      Math.abs(last.offset - middle) < roundingPx;
    if (goesOn) last.to = to;
    else stretches.push({ from: at, to, offset: middle, wires });
  }
  const { along } = bundle[0]!;
  const pointOn = (place: number, offset: number): Point => ({
    x: place * along.x - offset * along.y,
    y: place * along.y + offset * along.x,
  });
  return stretches.flatMap(({ from, to, offset, wires }): SharedLine[] =>
    to - from < shortestPx ? [] : [{ piece: [pointOn(from, offset), pointOn(to, offset)], wires }],
  );
}

const roundingPx = 0.01;
/** No stroke has room on a shorter one. */
const shortestPx = 12;

/** Draws the shared lines as bands, each with a stroke across (IEC 60617, from memory) and the number of its conductors. */
export function drawSharedLines(
  drawing: FrontDrawing,
  lines: readonly SharedLine[],
  channels: readonly ChannelShape[],
): string {
  const { pen } = drawing;
  return lines
    .map(({ piece, wires }) => {
      const middle = pointAt(piece, 0.5);
      const around = channels.find(({ boxes }) =>
        boxes.some((box) => contains(box, { ...middle, width: 0, height: 0 })),
      );
      const label = countBeside(drawing, { piece, wires }, (around?.widthPx ?? 0) / 2);
      return (
        pen.band(piece, bandPx, "edges") + strokeAcross(pen, piece) + (label ? drawLabel(pen, label) : "")
      );
    })
    .join("");
}

const bandPx = 2;

/** In words if there is room, else as "30×"; the stroke alone if there is none. */
function countBeside(
  { placer }: FrontDrawing,
  { piece, wires }: SharedLine,
  awayPx: number,
): PlacedLabel | undefined {
  const words = labelOf("", [counted(wires, "conductor")], countSizePx);
  const isRoomy = words.width <= lengthOf(piece) - 4;
  const along = directionOf(piece);
  const places = [0.5, 0.35, 0.65, 0.2, 0.8].map((share) => ({ at: pointAt(piece, share), along }));
  const beside = (label: Label) => labelBeside(placer, label, places, awayPx);
  return (isRoomy ? beside(words) : undefined) ?? beside(labelOf("", [`${wires}×`], countSizePx));
}

const countSizePx = 9;

/** An oblique stroke across the middle of a line. */
export function strokeAcross(pen: SvgWriter, piece: Piece): string {
  const { x, y } = pointAt(piece, 0.5);
  return pen.line([
    { x: x - 3, y: y + 5 },
    { x: x + 3, y: y - 5 },
  ]);
}
