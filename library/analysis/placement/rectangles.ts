import type { Point, Rectangle } from "../../model/placement/layout.ts";

/* Rectangles of one surface, in mm: x to the right, y down. Edges that only touch do not overlap. */

/** Lengths that differ by less are the same, mm: of lengths in inches, the last binary digits are rounded. */
const sameMm = 1e-6;

export function overlap(one: Rectangle, other: Rectangle): boolean {
  return (
    one.x < other.x + other.width - sameMm &&
    other.x < one.x + one.width - sameMm &&
    one.y < other.y + other.height - sameMm &&
    other.y < one.y + one.height - sameMm
  );
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
