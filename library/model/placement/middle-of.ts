import type { Point, Rectangle } from "./layout.ts";

export function middleOf({ x, y, width, height }: Rectangle): Point {
  return { x: x + width / 2, y: y + height / 2 };
}
