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

/** The free distance between two rectangles, mm; 0 if they touch or overlap. */
export function distanceBetween(one: Rectangle, other: Rectangle): number {
  return Math.hypot(gapBetween(across(one), across(other)), gapBetween(down(one), down(other)));
}

/** The stretch of a rectangle or point along one axis, mm. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

export function across({ x, width }: Rectangle): Span {
  return { from: x, to: x + width };
}

export function down({ y, height }: Rectangle): Span {
  return { from: y, to: y + height };
}

/** Whether two spans have more than an end in common. */
export function spansMeet(one: Span, other: Span): boolean {
  return isLess(one.from, other.to) && isLess(other.from, one.to);
}

/** The length that two spans have in common, mm; negative if they are apart. */
export function commonOf(one: Span, other: Span): number {
  return Math.min(one.to, other.to) - Math.max(one.from, other.from);
}

/** The free distance between two spans, mm; 0 if they touch or meet. */
function gapBetween(one: Span, other: Span): number {
  return Math.max(0, one.from - other.to, other.from - one.to);
}

/** Whether a length is less than another one by more than rounding. */
export function isLess(oneMm: number, otherMm: number): boolean {
  return oneMm < otherMm - sameMm;
}
