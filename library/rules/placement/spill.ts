import { bodyInWords, type OfFault, perBodyFault } from "../board.ts";
import { moveFixes } from "../fixes/moved-body.ts";
import { ownRequirement } from "../own-requirement.ts";
import { defineRule } from "../rule.ts";

const noEquipmentBelow = ownRequirement("No equipment is below a battery that can spill acid.");

export const placementSpill = defineRule<Values>({
  id: "placement/spill",
  title: "Battery that can spill above equipment",
  severity: "warning",
  why: "Acid that runs over eats terminals and circuit boards, and a wet board leaks current.",
  sources: [noEquipmentBelow],
  fixable: true,
  acceptable: true,
  // Needs a battery of flooded lead-acid on a vertical surface, and parts below it on the same surface.
  check: (plan) =>
    perBodyFault(plan, "spill", ({ fault }) => ({
      other: fault.other,
      values: { other: bodyInWords(plan, fault.other) },
    })),
  whenAsked: moveFixes,
  message: ({ other }) =>
    `Is above ${other}, and its acid can spill (common practice, no source): put the battery lowest, or aside.`,
});

interface Values extends OfFault {
  readonly other: string;
}
