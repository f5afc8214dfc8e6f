import type { Point, Rectangle } from "../../model/placement/layout.ts";
import { MinQueue } from "./min-queue.ts";
import { across, down, isLess, passesThrough, type Span } from "./rectangles.ts";

/**
 * The shortest path along a surface from one point to another, of level and upright stretches that do not pass through an obstacle; it
 * may follow its edge. Undefined if there is none within the surface, or none of at most `mostMm`.
 */
export function openStretch(
  from: Point,
  to: Point,
  obstacles: readonly Rectangle[],
  within: { readonly width: number; readonly height: number },
  mostMm = Number.POSITIVE_INFINITY,
): readonly Point[] | undefined {
  const corners: readonly Point[] = [
    { x: to.x, y: from.y },
    { x: from.x, y: to.y },
  ];
  for (const corner of corners) {
    const path = [from, corner, to];
    if (isFree(path, obstacles)) return endsAndCorners(path);
  }
  return aroundObstacles(from, to, obstacles, { ...within, mostMm });
}

function isFree(path: readonly Point[], obstacles: readonly Rectangle[]): boolean {
  return obstacles.every((obstacle) =>
    path.every((point, at) => at === 0 || !passesThrough(path[at - 1]!, point, obstacle)),
  );
}

/**
 * On the grid of the lines through all edges and both points: a shortest path of level and upright stretches lies on it (the Hanan
 * grid of the corners).
 */
function aroundObstacles(
  from: Point,
  to: Point,
  obstacles: readonly Rectangle[],
  { width, height, mostMm }: { readonly width: number; readonly height: number; readonly mostMm: number },
): readonly Point[] | undefined {
  const xs = lines([from.x, to.x, ...obstacles.flatMap(({ x, width }) => [x, x + width])], width);
  const ys = lines([from.y, to.y, ...obstacles.flatMap(({ y, height }) => [y, y + height])], height);
  if (![from, to].every(({ x, y }) => xs.includes(x) && ys.includes(y))) return undefined;
  const columns = xs.length;
  const numberOf = ({ x, y }: Point) => ys.indexOf(y) * columns + xs.indexOf(x);
  const [start, end] = [numberOf(from), numberOf(to)];
  const { toTheRight, downwards } = barred(xs, ys, obstacles);
  const nodes = columns * ys.length;
  const distances = new Float64Array(nodes).fill(Number.POSITIVE_INFINITY);
  const before = new Int32Array(nodes).fill(-1);
  const done = new Uint8Array(nodes);
  const queue = new MinQueue();
  distances[start] = 0;
  queue.push(0, start);
  for (let next = queue.pop(); next; next = queue.pop()) {
    const [distance, node] = next;
    if (done[node]) continue;
    done[node] = 1;
    if (node === end) break;
    const column = node % columns;
    const row = (node - column) / columns;
    const reach = (neighbour: number, lengthMm: number) => {
      const through = distance + lengthMm;
      if (done[neighbour] || through >= distances[neighbour]! || through > mostMm + roundingMm) return;
      distances[neighbour] = through;
      before[neighbour] = node;
      queue.push(through, neighbour);
    };
    if (column > 0 && !toTheRight[node - 1]) reach(node - 1, xs[column]! - xs[column - 1]!);
    if (column < columns - 1 && !toTheRight[node]) reach(node + 1, xs[column + 1]! - xs[column]!);
    if (row > 0 && !downwards[node - columns]) reach(node - columns, ys[row]! - ys[row - 1]!);
    if (row < ys.length - 1 && !downwards[node]) reach(node + columns, ys[row + 1]! - ys[row]!);
  }
  if (!done[end]) return undefined;
  const path: Point[] = [];
  for (let node = end; node >= 0; node = before[node]!)
    path.unshift({ x: xs[node % columns]!, y: ys[Math.floor(node / columns)]! });
  return endsAndCorners(path);
}

/** Of sums of lengths in inches. */
const roundingMm = 1e-6;

/** By the number of a crossing of the grid: whether an obstacle bars the way to the next one on its right, and to the one below it. */
function barred(
  xs: readonly number[],
  ys: readonly number[],
  obstacles: readonly Rectangle[],
): { readonly toTheRight: Uint8Array; readonly downwards: Uint8Array } {
  const columns = xs.length;
  const toTheRight = new Uint8Array(columns * ys.length);
  const downwards = new Uint8Array(columns * ys.length);
  for (const obstacle of obstacles) {
    const [x, y] = [crossedBy(xs, across(obstacle)), crossedBy(ys, down(obstacle))];
    for (let row = y.firstLine; row <= y.lastLine; row++)
      for (let gap = x.firstGap; gap <= x.lastGap; gap++) toTheRight[row * columns + gap] = 1;
    for (let gap = y.firstGap; gap <= y.lastGap; gap++)
      for (let column = x.firstLine; column <= x.lastLine; column++) downwards[gap * columns + column] = 1;
  }
  return { toTheRight, downwards };
}

/** Of lines in their order, those inside of a span; and the gaps, from a line to the next one, with a part of it in them. */
function crossedBy(lines: readonly number[], span: Span) {
  const above = lines.findIndex((at) => isLess(span.from, at));
  const firstLine = above < 0 ? lines.length : above;
  const lastLine = lines.findLastIndex((at) => isLess(at, span.to));
  const [firstGap, lastGap] = [Math.max(0, firstLine - 1), Math.min(lines.length - 2, lastLine)];
  return { firstLine, lastLine, firstGap, lastGap };
}

function lines(values: readonly number[], most: number): readonly number[] {
  return [...new Set(values)].filter((value) => value >= 0 && value <= most).sort((a, b) => a - b);
}

function endsAndCorners(path: readonly Point[]): readonly Point[] {
  return path.filter((point, at) => {
    const [previous, next] = [path[at - 1], path[at + 1]];
    if (!previous || !next) return true;
    if (point.x === previous.x && point.y === previous.y) return false;
    return !isOnLine(previous, point, next);
  });
}

function isOnLine(one: Point, middle: Point, other: Point): boolean {
  const isLevel = one.y === middle.y && middle.y === other.y;
  const isUpright = one.x === middle.x && middle.x === other.x;
  return isLevel || isUpright;
}
