import type { Box } from "../diagram/drawing.ts";
import type { Point } from "../diagram/graph.ts";

/* Boxes and lines of a picture, px. */

export function overlaps(one: Box, other: Box, gap = 0): boolean {
  return (
    one.x < other.x + other.width + gap &&
    other.x < one.x + one.width + gap &&
    one.y < other.y + other.height + gap &&
    other.y < one.y + one.height + gap
  );
}

export function contains(outer: Box, inner: Box): boolean {
  return (
    inner.x >= outer.x &&
    inner.y >= outer.y &&
    inner.x + inner.width <= outer.x + outer.width &&
    inner.y + inner.height <= outer.y + outer.height
  );
}

export function grown({ x, y, width, height }: Box, by: number): Box {
  return { x: x - by, y: y - by, width: width + 2 * by, height: height + 2 * by };
}

/** Of both, or undefined. */
export function commonBox(one: Box, other: Box): Box | undefined {
  const x = Math.max(one.x, other.x);
  const y = Math.max(one.y, other.y);
  const width = Math.min(one.x + one.width, other.x + other.width) - x;
  const height = Math.min(one.y + one.height, other.y + other.height) - y;
  return width > 0 && height > 0 ? { x, y, width, height } : undefined;
}

export function aroundPoints(points: readonly Point[]): Box {
  const xs = points.map(({ x }) => x);
  const ys = points.map(({ y }) => y);
  const [x, y] = [Math.min(...xs), Math.min(...ys)];
  return { x, y, width: Math.max(...xs) - x, height: Math.max(...ys) - y };
}

/** The point of a box that is nearest to another point. */
export function nearestIn({ x, y, width, height }: Box, to: Point): Point {
  return {
    x: Math.min(Math.max(to.x, x), x + width),
    y: Math.min(Math.max(to.y, y), y + height),
  };
}

/** The four edges of a box. */
export function sidesOf({ x, y, width, height }: Box): readonly Box[] {
  return [
    { x, y, width, height: 0 },
    { x, y: y + height, width, height: 0 },
    { x, y, width: 0, height },
    { x: x + width, y, width: 0, height },
  ];
}

/** A box without others: the boxes that are left of it. */
export function without(box: Box, others: readonly Box[]): readonly Box[] {
  return others.reduce<readonly Box[]>((left, other) => left.flatMap((one) => withoutOne(one, other)), [box]);
}

function withoutOne(box: Box, other: Box): readonly Box[] {
  const common = commonBox(box, other);
  if (!common) return [box];
  const { x, y, width, height } = box;
  const pieces = [
    { x, y, width, height: common.y - y },
    { x, y: common.y, width: common.x - x, height: common.height },
    {
      ...{ x: common.x + common.width, y: common.y },
      width: x + width - common.x - common.width,
      height: common.height,
    },
    { x, y: common.y + common.height, width, height: y + height - common.y - common.height },
  ];
  return pieces.filter((piece) => piece.width > 0 && piece.height > 0);
}

/** Whether a straight line touches a box (Liang and Barsky's clipping). */
export function crosses(from: Point, to: Point, { x, y, width, height }: Box): boolean {
  let [first, last] = [0, 1];
  const steps: readonly (readonly [step: number, room: number])[] = [
    [from.x - to.x, from.x - x],
    [to.x - from.x, x + width - from.x],
    [from.y - to.y, from.y - y],
    [to.y - from.y, y + height - from.y],
  ];
  for (const [step, room] of steps) {
    if (step === 0) {
      if (room < 0) return false;
      continue;
    }
    const at = room / step;
    if (step < 0) first = Math.max(first, at);
    else last = Math.min(last, at);
  }
  return first <= last;
}
