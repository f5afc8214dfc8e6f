import type { Protection } from "../../../model/run.ts";
import type { Point } from "../graph.ts";
import type { SvgWriter } from "../svg-writer.ts";

/** Half of the length that a device takes of its line, px; the line is interrupted there. */
export const deviceHalfPx = 13;

/** IEC 60617, fuse: a rectangle with the line through it. circuit breaker: an open contact with a cross. */
export function drawDevice(pen: SvgWriter, { family }: Pick<Protection, "family">, { x, y }: Point): string {
  const lead = (from: number, to: number) =>
    pen.line([
      { x: x + from, y },
      { x: x + to, y },
    ]);
  if (family !== "circuit breaker")
    return pen.rect({ x: x - 11, y: y - 4.5, width: 22, height: 9 }) + lead(-deviceHalfPx, deviceHalfPx);
  const cross = [-3, 3].map((slope) =>
    pen.line([
      { x: x + 6, y: y - slope },
      { x: x + 12, y: y + slope },
    ]),
  );
  return [
    lead(-deviceHalfPx, -9),
    pen.line([
      { x: x - 9, y },
      { x: x + 7, y: y - 4.4 },
    ]),
    lead(9, deviceHalfPx),
    ...cross,
  ].join("");
}
