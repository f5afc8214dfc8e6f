import type { Side } from "../../model/placement/layout.ts";
import { type OfFault, onSurface, perBodyFault } from "../board.ts";
import { moveFixes } from "../fixes/moved-body.ts";
import { ownRequirement } from "../own-requirement.ts";
import { defineRule } from "../rule.ts";

export const placementOutside = defineRule<Values>({
  id: "placement/outside",
  title: "Part beyond the edge of its surface",
  severity: "warning",
  why: "Screws at its edge find no hold, and the part is in the way of anything beside the board.",
  sources: [ownRequirement("A part lies within the surface that it is fastened to.")],
  fixable: true,
  acceptable: true,
  // Needs the place of the part; without its size, its top left corner alone is judged.
  check: (plan) =>
    perBodyFault(plan, "outside", ({ fault, body, surface }) => ({
      values: { surface: surface.name, side: fault.side, by: onSurface(body, fault.byMm) },
    })),
  whenAsked: moveFixes,
  message: ({ surface, side, by }) =>
    `Reaches ${by} beyond the ${side} edge of ${surface}: move it, or choose a larger surface.`,
});

interface Values extends OfFault {
  readonly surface: string;
  readonly side: Side;
  readonly by: string;
}
