import type { Point } from "../diagram/graph.ts";

/** From conductor to conductor in a channel, if it has the room. */
export const lanePx = 3.2;

/** A straight piece of a conductor, drawn this far to the right of where it is. */
export interface LanePiece {
  readonly from: Point;
  readonly to: Point;
  readonly beside: number;
}

/** The pieces of a path. */
export function piecesOf(path: readonly Point[], beside: number): readonly LanePiece[] {
  return path.slice(1).flatMap((to, index) => {
    const from = path[index]!;
    return from.x === to.x && from.y === to.y ? [] : [{ from, to, beside }];
  });
}

/** One line through all pieces, each in its lane; neighbours meet where their lanes cross. */
export function lineInLanes(pieces: readonly LanePiece[]): readonly Point[] {
  const lanes = pieces.map(shifted);
  return lanes.flatMap((lane, index) => {
    const next = lanes[index + 1];
    const start = index === 0 ? [lane.from] : [];
    if (!next) return [...start, lane.to];
    const joint = crossing(lane, next);
    return [...start, ...(joint ? [joint] : [lane.to, next.from])];
  });
}

interface Line {
  readonly from: Point;
  readonly to: Point;
}

function shifted({ from, to, beside }: LanePiece): Line {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const x = (-(to.y - from.y) / length) * beside;
  const y = ((to.x - from.x) / length) * beside;
  return { from: { x: from.x + x, y: from.y + y }, to: { x: to.x + x, y: to.y + y } };
}

/** The point where two straight lines cross; undefined if they are parallel. */
function crossing(one: Line, other: Line): Point | undefined {
  const [ax, ay] = [one.to.x - one.from.x, one.to.y - one.from.y];
  const [bx, by] = [other.to.x - other.from.x, other.to.y - other.from.y];
  const turn = ax * by - ay * bx;
  if (Math.abs(turn) < 1e-6 * Math.hypot(ax, ay) * Math.hypot(bx, by)) return undefined;
  const along = ((other.from.x - one.from.x) * by - (other.from.y - one.from.y) * bx) / turn;
  return { x: one.from.x + along * ax, y: one.from.y + along * ay };
}

/** A conductor in a channel, from where to where along it. */
export interface LaneUse {
  readonly index: number;
  readonly from: number;
  readonly to: number;
}

/**
 * The lane of each conductor in a channel, by its index, from 0 on: those that are beside each other anywhere, or less than a clearance
 * apart, have different ones, and no more lanes are used than that needs.
 */
export function lanesOf(uses: readonly LaneUse[], clearance: number): ReadonlyMap<number, number> {
  const lanes = new Map<number, number>();
  const ends: number[] = [];
  for (const { index, from, to } of uses.toSorted((one, other) => one.from - other.from)) {
    const free = ends.findIndex((end) => end + clearance < from);
    const lane = free < 0 ? ends.length : free;
    ends[lane] = to;
    lanes.set(index, lane);
  }
  return lanes;
}

export function laneCount(lanes: ReadonlyMap<number, number>): number {
  return lanes.size === 0 ? 0 : Math.max(...lanes.values()) + 1;
}

/** How far along a path a point on it is. */
export function placeOnPath(path: readonly Point[], { x, y }: Point): number {
  let [before, nearest, place] = [0, Number.POSITIVE_INFINITY, 0];
  path.slice(1).forEach((to, index) => {
    const from = path[index]!;
    const [dx, dy] = [to.x - from.x, to.y - from.y];
    const length = Math.hypot(dx, dy);
    const share =
      length === 0 ? 0 : Math.min(1, Math.max(0, ((x - from.x) * dx + (y - from.y) * dy) / length ** 2));
    const away = Math.hypot(x - from.x - share * dx, y - from.y - share * dy);
    if (away < nearest - 1e-9) [nearest, place] = [away, before + share * length];
    before += length;
  });
  return place;
}
