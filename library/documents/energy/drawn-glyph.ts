import type { Verdict } from "../../analysis/energy/energy-result.ts";
import type { Point } from "../diagram/graph.ts";
import type { SvgWriter } from "../diagram/svg-writer.ts";

export const glyphRadiusPx = 5.5;

/** The sign of a verdict, drawn: full, half, empty, or empty and crossed out. */
export function drawGlyph(pen: SvgWriter, verdict: Verdict, centre: Point): string {
  const { x, y } = centre;
  const ring = pen.circle(centre, glyphRadiusPx);
  switch (verdict) {
    case "keeps up":
      return pen.circle(centre, glyphRadiusPx, "filled");
    case "barely":
      return ring + pen.solid(leftHalf(centre));
    case "runs short":
      return ring;
    case "not on average":
      return ring + line(pen, centre, 1) + line(pen, centre, -1);
    case "not judged":
      return pen.line([
        { x: x - 4, y },
        { x: x + 4, y },
      ]);
  }
}

function leftHalf({ x, y }: Point): readonly Point[] {
  return Array.from({ length: 13 }, (_, step) => {
    const angle = Math.PI / 2 + (step * Math.PI) / 12;
    return { x: x + glyphRadiusPx * Math.cos(angle), y: y + glyphRadiusPx * Math.sin(angle) };
  });
}

function line(pen: SvgWriter, { x, y }: Point, slope: 1 | -1): string {
  const reach = glyphRadiusPx * Math.SQRT1_2;
  return pen.line([
    { x: x - reach, y: y - slope * reach },
    { x: x + reach, y: y + slope * reach },
  ]);
}
