import { type OfFault, perBodyFault } from "../board.ts";
import { moveFixes } from "../fixes/moved-body.ts";
import { ownRequirement } from "../own-requirement.ts";
import { defineRule } from "../rule.ts";

const withinReach = ownRequirement(
  "A fuse can be changed and a breaker reset without taking the build apart.",
);

export const placementReach = defineRule<Values>({
  id: "placement/reach",
  title: "Fuse or breaker out of reach",
  severity: "warning",
  why: "A blown fuse behind a panel that is screwed shut is changed late, or bridged.",
  sources: [withinReach],
  fixable: true,
  acceptable: true,
  // Needs the places of fuse holders, breakers and fuse panels, and the rectangles that a hand does not reach.
  check: (plan) =>
    perBodyFault(plan, "reach", ({ surface }) => ({
      values: { surface: surface.name },
      related: [{ at: { record: surface.record, path: ["outOfReach"] }, text: "Out of reach" }],
    })),
  whenAsked: moveFixes,
  message: ({ surface }) =>
    `Is at a place of ${surface} that a hand does not reach: move it to where its fuse can be changed (common practice, no source).`,
});

interface Values extends OfFault {
  readonly surface: string;
}
