import type { Point } from "../diagram/graph.ts";
import { overlaps } from "./boxes.ts";
import type { Label, LabelPlacer, PlacedLabel } from "./labels.ts";

/**
 * A label beside a line and no other, at the first of some places on the line; along an upright line it may be turned. Undefined if there
 * is no room.
 *
 * @param awayPx From the line to the edges of the channel around it.
 */
export function labelBeside(
  placer: LabelPlacer,
  label: Label,
  places: readonly { readonly at: Point; readonly along: Point }[],
  awayPx = 0,
): PlacedLabel | undefined {
  for (const turned of [false, true])
    for (const { at, along } of places)
      for (const side of [1, -1]) {
        const isUpright = Math.abs(along.y) > Math.abs(along.x);
        if (turned && !isUpright) continue;
        const [width, height] = turned ? [label.height, label.width] : [label.width, label.height];
        const middle = {
          x: at.x - along.y * side * (awayPx + width / 2 + 3),
          y: at.y + along.x * side * (awayPx + height / 2 + 2),
        };
        const box = { x: middle.x - width / 2, y: middle.y - height / 2, width, height };
        // Between two upright lines, words must be nearer to their own.
        const apart =
          isUpright && !turned ? { ...box, x: box.x - (along.y * side > 0 ? 5 : 0), width: width + 5 } : box;
        if (placer.taken.some((other) => overlaps(other, apart, 1))) continue;
        placer.take(box);
        return { label, box, turned };
      }
  return undefined;
}
