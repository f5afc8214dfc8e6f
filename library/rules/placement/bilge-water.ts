import { partOf } from "../../analysis/placement/bodies.ts";
import { batteryAboveBilgeWater } from "../../standards/placement-distances.ts";
import { type OfFault, onSurface, perBodyFault } from "../board.ts";
import { moveFixes } from "../fixes/moved-body.ts";
import { ownRequirement } from "../own-requirement.ts";
import { defineRule } from "../rule.ts";
import { sourceInWords } from "../wording/source-in-words.ts";

const aboveWater = ownRequirement(
  "Equipment that is not made for water is above the highest expected bilge water.",
);

export const bilgeWater = defineRule<Values>({
  id: "placement/bilge-water",
  title: "Part below the expected bilge water",
  severity: "warning",
  why: "Bilge water at live terminals corrodes them in weeks, drains the bank, and can start a fire.",
  sources: [batteryAboveBilgeWater, aboveWater],
  fixable: true,
  acceptable: true,
  // Needs the height of the bilge water at a surface. Lamps, pumps and other consumers may be made for water.
  check: (plan) =>
    perBodyFault(plan, "bilge water", ({ fault, body, facts }) => ({
      values: {
        by: onSurface(body, fault.byMm),
        source: sourceInWords(partOf(facts, body)?.kind === "battery" ? batteryAboveBilgeWater : aboveWater),
      },
    })),
  whenAsked: moveFixes,
  message: ({ by, source }) =>
    `Its lower edge is ${by} below the bilge water that the plan expects (${source}): mount it higher.`,
});

interface Values extends OfFault {
  readonly by: string;
  readonly source: string;
}
