import { statedInPlan } from "../../model/stated-in-plan.ts";
import { type OfFault, perBodyFault } from "../board.ts";
import { moveFixes } from "../fixes/moved-body.ts";
import { defineRule } from "../rule.ts";

export const keptFree = defineRule<Values>({
  id: "placement/kept-free",
  title: "Part in a place kept free",
  severity: "warning",
  why: "The bed frame, hatch or wheel arch needs that place, and the part has to be moved when all is wired.",
  sources: [statedInPlan(undefined)],
  fixable: true,
  acceptable: true,
  // Needs the rectangles of the surface that must stay free; of a part without a size, its top left corner alone is judged.
  check: (plan) =>
    perBodyFault(plan, "kept free", ({ fault, surface }) => ({
      values: { area: surface.keepFree[fault.area]?.name ?? "", surface: surface.name },
      related: [
        { at: { record: surface.record, path: ["keepFree", String(fault.area)] }, text: "Kept free" },
      ],
    })),
  whenAsked: moveFixes,
  message: ({ area, surface }) =>
    area === "a place kept free"
      ? `Covers a place of ${surface} that must stay free: move it.`
      : `Covers a place of ${surface} that must stay free, ${area}: move it.`,
});

interface Values extends OfFault {
  readonly area: string;
  readonly surface: string;
}
