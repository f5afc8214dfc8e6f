import type { Point, Rectangle, Side } from "../../model/placement/layout.ts";

/* Rectangles of one surface, in mm: x to the right, y down. Edges that only touch do not overlap. */

/** Lengths that differ by less are the same, mm: of lengths in inches, the last binary digits are rounded. */
export const sameMm = 1e-6;

export function overlap(one: Rectangle, other: Rectangle): boolean {
  return (
    one.x < other.x + other.width - sameMm &&
    other.x < one.x + one.width - sameMm &&
    one.y < other.y + other.height - sameMm &&
    other.y < one.y + one.height - sameMm
  );
}

/** The rectangle that both cover; undefined if they do not overlap. */
export function intersection(one: Rectangle, other: Rectangle): Rectangle | undefined {
  if (!overlap(one, other)) return undefined;
  const x = Math.max(one.x, other.x);
  const y = Math.max(one.y, other.y);
  const right = Math.min(one.x + one.width, other.x + other.width);
  const bottom = Math.min(one.y + one.height, other.y + other.height);
  return { x, y, width: right - x, height: bottom - y };
}

export function isWithin(inner: Rectangle, outer: Rectangle): boolean {
  return (
    inner.x >= outer.x - sameMm &&
    inner.y >= outer.y - sameMm &&
    inner.x + inner.width <= outer.x + outer.width + sameMm &&
    inner.y + inner.height <= outer.y + outer.height + sameMm
  );
}

/** The rectangle with a margin on each side, mm. */
export function grown(
  { x, y, width, height }: Rectangle,
  by: number | Partial<Record<Side, number>>,
): Rectangle {
  const {
    left = 0,
    right = 0,
    top = 0,
    bottom = 0,
  } = typeof by === "number" ? { left: by, right: by, top: by, bottom: by } : by;
  return { x: x - left, y: y - top, width: width + left + right, height: height + top + bottom };
}

/** The free distance between two rectangles, mm; 0 if they touch or overlap. */
export function distanceBetween(one: Rectangle, other: Rectangle): number {
  const across = Math.max(0, one.x - (other.x + other.width), other.x - (one.x + one.width));
  const down = Math.max(0, one.y - (other.y + other.height), other.y - (one.y + one.height));
  return Math.hypot(across, down);
}

export function distanceFromPoint({ x, y }: Point, rectangle: Rectangle): number {
  return distanceBetween({ x, y, width: 0, height: 0 }, rectangle);
}

/** Whether a level or upright stretch passes through the inside of a rectangle. */
export function passesThrough(from: Point, to: Point, { x, y, width, height }: Rectangle): boolean {
  return (
    Math.max(from.x, to.x) > x + sameMm &&
    Math.min(from.x, to.x) < x + width - sameMm &&
    Math.max(from.y, to.y) > y + sameMm &&
    Math.min(from.y, to.y) < y + height - sameMm
  );
}

/** Length along a path of level and upright stretches, or of any others, mm. */
export function lengthOfPath(path: readonly Point[]): number {
  let length = 0;
  for (let at = 1; at < path.length; at++) {
    const [from, to] = [path[at - 1]!, path[at]!];
    length += Math.hypot(to.x - from.x, to.y - from.y);
  }
  return length;
}
