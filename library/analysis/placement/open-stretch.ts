import type { Point, Rectangle } from "../../model/placement/layout.ts";
import { MinQueue } from "./min-queue.ts";
import { passesThrough } from "./rectangles.ts";

/**
 * The shortest path along a surface from one point to another, of level and upright stretches that do not pass through an obstacle; it
 * may follow its edge. Undefined if there is none within the surface.
 */
export function openStretch(
  from: Point,
  to: Point,
  obstacles: readonly Rectangle[],
  within: { readonly width: number; readonly height: number },
): readonly Point[] | undefined {
  const corners: readonly Point[] = [
    { x: to.x, y: from.y },
    { x: from.x, y: to.y },
  ];
  for (const corner of corners) {
    const path = [from, corner, to];
    if (isFree(path, obstacles)) return endsAndCorners(path);
  }
  return aroundObstacles(from, to, obstacles, within);
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
  { width, height }: { readonly width: number; readonly height: number },
): readonly Point[] | undefined {
  const xs = lines([from.x, to.x, ...obstacles.flatMap(({ x, width }) => [x, x + width])], width);
  const ys = lines([from.y, to.y, ...obstacles.flatMap(({ y, height }) => [y, y + height])], height);
  const columns = xs.length;
  const numberOf = ({ x, y }: Point) => ys.indexOf(y) * columns + xs.indexOf(x);
  const pointAt = (node: number): Point => ({ x: xs[node % columns]!, y: ys[Math.floor(node / columns)]! });
  const [start, end] = [numberOf(from), numberOf(to)];
  if (start < 0 || end < 0) return undefined;
  const distances = new Map([[start, 0]]);
  const before = new Map<number, number>();
  const done = new Set<number>();
  const queue = new MinQueue();
  queue.push(0, start);
  for (let next = queue.pop(); next; next = queue.pop()) {
    const [distance, node] = next;
    if (done.has(node)) continue;
    done.add(node);
    if (node === end) break;
    const point = pointAt(node);
    const column = node % columns;
    const neighbours = [
      ...(column > 0 ? [node - 1] : []),
      ...(column < columns - 1 ? [node + 1] : []),
      ...(node >= columns ? [node - columns] : []),
      ...(node + columns < columns * ys.length ? [node + columns] : []),
    ];
    for (const neighbour of neighbours) {
      if (done.has(neighbour)) continue;
      const there = pointAt(neighbour);
      if (!isFree([point, there], obstacles)) continue;
      const through = distance + Math.abs(there.x - point.x) + Math.abs(there.y - point.y);
      if (through < (distances.get(neighbour) ?? Number.POSITIVE_INFINITY)) {
        distances.set(neighbour, through);
        before.set(neighbour, node);
        queue.push(through, neighbour);
      }
    }
  }
  if (!done.has(end)) return undefined;
  const path = [end];
  for (let node = before.get(end); node !== undefined; node = before.get(node)) path.unshift(node);
  return endsAndCorners(path.map(pointAt));
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
