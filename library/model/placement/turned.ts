import type { Leaving, MountingPosition } from "../../plan/place.ts";
import type { Body, Point, QuarterTurn, Side, Surface } from "./layout.ts";

/* Parts turned clockwise by quarters, as one looks at their surface. */

/** Turned clockwise by a quarter, its left side is up. A battery is upright on a floor, and is seen from above; other parts lie there. */
export function positionOf(
  { orientation }: Pick<Surface, "orientation">,
  turnedDeg: QuarterTurn,
  word: string,
): MountingPosition {
  if (orientation === "floor") return word === "battery" ? "upright" : "on its back";
  if (orientation === "ceiling") return "face down";
  return { 0: "upright", 90: "left side up", 180: "upside down", 270: "right side up" }[
    turnedDeg
  ] as MountingPosition;
}

const clockwise = ["top", "right", "bottom", "left"] as const satisfies readonly Side[];

export function turnedAir(air: Body["air"], turnedDeg: QuarterTurn): Body["air"] {
  return Object.fromEntries(
    Object.entries(air).map(([side, distance]) => [
      clockwise[(clockwise.indexOf(side as Side) + turnedDeg / 90) % 4],
      distance,
    ]),
  );
}

/** A point of an upright part, once the part is turned clockwise; from the top left corner of both outlines. */
export function turnedPoint(
  { x, y }: Point,
  { width, height }: { readonly width: number; readonly height: number },
  turnedDeg: QuarterTurn,
): Point {
  switch (turnedDeg) {
    case 0:
      return { x, y };
    case 90:
      return { x: height - y, y: x };
    case 180:
      return { x: width - x, y: height - y };
    case 270:
      return { x: y, y: width - x };
  }
}

const leavingClockwise = ["up", "right", "down", "left"] as const;

export function turnedLeaving(leaves: Leaving, turnedDeg: QuarterTurn): Leaving {
  if (leaves === "front") return leaves;
  return leavingClockwise[(leavingClockwise.indexOf(leaves) + turnedDeg / 90) % 4]!;
}
