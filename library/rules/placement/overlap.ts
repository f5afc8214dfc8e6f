import { bodyInWords, type OfFault, onSurface, perBodyFault } from "../board.ts";
import { moveFixes } from "../fixes/moved-body.ts";
import { ownRequirement } from "../own-requirement.ts";
import { defineRule } from "../rule.ts";

export const placementOverlap = defineRule<Values>({
  id: "placement/overlap",
  title: "Two parts in the same place",
  severity: "error",
  why: "The second part does not fit once the first one is screwed on, and holes are then drilled twice.",
  sources: [ownRequirement("Two parts cannot be in the same place of a surface.")],
  fixable: true,
  acceptable: true,
  // Needs size and place of both. A fuse or breaker covers the part that it is mounted on, and is left out.
  check: (plan) =>
    perBodyFault(plan, "overlap", ({ fault, body }) => ({
      other: fault.other,
      values: {
        other: bodyInWords(plan, fault.other),
        across: onSurface(body, fault.acrossMm),
        down: onSurface(body, fault.downMm),
      },
    })),
  whenAsked: moveFixes,
  message: ({ other, across, down }) =>
    `Overlaps ${other} by ${across} across and ${down} down: move one of them.`,
});

interface Values extends OfFault {
  readonly other: string;
  readonly across: string;
  readonly down: string;
}
