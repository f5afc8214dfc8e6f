import { counted } from "../../rules/wording/format-number.ts";
import type { Box } from "../diagram/drawing.ts";
import { markPx } from "../diagram/finding-mark.ts";
import type { Point } from "../diagram/graph.ts";
import type { FoundHere } from "../diagram/schematic.ts";
import { aroundPoints, contains, grown, overlaps } from "./boxes.ts";
import type { FrontDrawing } from "./front-drawing.ts";
import { drawLabel, labelOf, type PlacedLabel } from "./labels.ts";
import { type LaneUse, laneCount, lanePx, lanesOf } from "./lanes.ts";
import {
  directionOf,
  lengthOf,
  longestFirst,
  type Piece,
  piecesOfLine,
  placesBeside,
  pointAt,
  stepsAlong,
} from "./lines.ts";
import type { ChannelHere, SurfaceContent } from "./surface-content.ts";

/** A channel along the surface. */
export interface ChannelShape {
  readonly here: ChannelHere;
  readonly points: readonly Point[];
  readonly widthPx: number;
  readonly found: readonly FoundHere[];
  /** Around each straight piece. */
  readonly boxes: readonly Box[];
  /** Of its conductors, by their index; none if they are not drawn. */
  readonly lanes: ReadonlyMap<number, number>;
}

export function channelShape(drawing: FrontDrawing, here: ChannelHere): ChannelShape {
  const { scale, placer, options, content } = drawing;
  const { channel, path } = here;
  const points = path.map((point) => scale.point(point));
  const inside = channel.inside;
  const stated = inside && (inside.shape === "round" ? inside.diameter : inside.width);
  const uses = options.conductors ? usesOf(content, here) : [];
  const lanes = lanesOf(uses, apartPx / scale.px(1));
  const widthPx =
    stated === undefined
      ? Math.max(unknownChannelPx, laneCount(lanes) * lanePx + 3)
      : Math.max(scale.px(stated), 3);
  const boxes = piecesOfLine(points).map((piece) => grown(aroundPoints(piece), widthPx / 2));
  for (const box of boxes) placer.take(box, -1 - here.index);
  const found = drawing.found.ofRecord(channel.record);
  const along = stepsAlong(points, 12, Number.POSITIVE_INFINITY).map(({ at }) => at);
  drawing.mark(found, [...along, ...placesBeside([points], (widthPx + markPx) / 2 + 2)], boxes);
  return { here, points, widthPx, found, boxes, lanes };
}

/** Between the ends of two conductors in one lane, px: they would look like one. */
const apartPx = 12;

/** The conductors in a channel. */
function usesOf({ leads }: SurfaceContent, { index: channel }: ChannelHere): readonly LaneUse[] {
  return leads.flatMap(({ lead, way }) => {
    const ends = way.stretches.flatMap((stretch) =>
      stretch.channel === channel ? (stretch.alongMm ?? []) : [],
    );
    return ends.length === 0 ? [] : [{ index: lead.index, from: Math.min(...ends), to: Math.max(...ends) }];
  });
}

/** Along the channel: within it if it is wide enough, smaller where there is little room; else beside it. */
export function channelLabel(
  { placer, board, options }: FrontDrawing,
  { here, points, widthPx, boxes }: ChannelShape,
): PlacedLabel {
  const { name } = here.channel;
  const count = counted(here.conductors, "conductor");
  const unbroken = Number.POSITIVE_INFINITY;
  const labels = [10, 9, 8].flatMap((sizePx) => [
    labelOf(`${name} · ${count}`, [], sizePx, unbroken),
    labelOf(name, [count], sizePx, unbroken),
  ]);
  const pieces = longestFirst(piecesOfLine(points));
  const others = placer.taken.filter((box) => !boxes.includes(box));
  for (const label of labels)
    for (const piece of pieces) {
      if (label.width > lengthOf(piece) - 8) continue;
      const isInside = widthPx >= label.height + 1 && !options.conductors;
      const beside = (widthPx + label.height) / 2 + 2;
      const aside = Math.max(0, (widthPx - label.height) / 2 - 1);
      const crossed = isInside ? others : placer.taken;
      for (const away of isInside ? [0, aside, -aside] : [-beside, beside])
        for (const share of [0.5, 0.3, 0.7, 0.15, 0.85, 0.05, 0.95]) {
          const placed = labelAt(label, piece, share, away);
          if (
            !contains(grown(board, -edgePx), placed.box) ||
            crossed.some((other) => overlaps(other, placed.box, 1))
          )
            continue;
          placer.take(placed.box);
          return placed;
        }
    }
  const middle = pointAt(pieces[0]!, 0.5);
  return placer.beside(
    grown({ ...middle, width: 0, height: 0 }, widthPx / 2),
    labelOf(`${name} · ${count}`, [], 10),
  );
}

export function drawChannel(drawing: FrontDrawing, shape: ChannelShape, label: PlacedLabel): string {
  const { here, points, widthPx } = shape;
  const { pen } = drawing;
  const { name, record, way } = here.channel;
  const sentence = `${name}: ${way} with ${counted(here.conductors, "conductor")}.`;
  return drawing.draw(
    { ...shape, kind: "channel", name, record, sentence, box: aroundPoints(points) },
    pen.band(points, widthPx, "inside"),
    drawLabel(pen, label),
  );
}

/** Both edges of a channel, and its ends. The inside of others is drawn over them, where channels meet. */
export function channelEdges({ pen }: FrontDrawing, { points, widthPx }: ChannelShape): string {
  const end = (at: Point, from: Point) => {
    const { x, y } = directionOf([from, at]);
    const half = widthPx / 2;
    return pen.line([
      { x: at.x - y * half, y: at.y + x * half },
      { x: at.x + y * half, y: at.y - x * half },
    ]);
  };
  return (
    pen.band(points, widthPx, "edges") + end(points[0]!, points[1]!) + end(points.at(-1)!, points.at(-2)!)
  );
}

const unknownChannelPx = 6;
/** Between words and the line of the edge of the surface. */
const edgePx = 3;

/** With its middle at a share of a piece, and at a distance from it. */
function labelAt(label: PlacedLabel["label"], piece: Piece, share: number, away: number): PlacedLabel {
  const [from, to] = piece;
  const turned = Math.abs(to.y - from.y) > Math.abs(to.x - from.x);
  const [width, height] = turned ? [label.height, label.width] : [label.width, label.height];
  const middle = pointAt(piece, share);
  const x = middle.x - width / 2 + (turned ? away : 0);
  const y = middle.y - height / 2 + (turned ? 0 : away);
  return { label, box: { x, y, width, height }, turned };
}
