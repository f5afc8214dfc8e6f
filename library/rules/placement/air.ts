import type { Side } from "../../model/placement/layout.ts";
import { statedInPlan } from "../../model/stated-in-plan.ts";
import { bodyInWords, distinctOnSurface, type OfFault, perBodyFault } from "../board.ts";
import { moveFixes } from "../fixes/moved-body.ts";
import { defineRule } from "../rule.ts";

export const placementAir = defineRule<Values>({
  id: "placement/air",
  title: "Too little air beside a part",
  severity: "warning",
  why: "Without the air that its maker asks for, a converter or charger runs hot, gives less, and fails early.",
  sources: [statedInPlan(undefined)],
  fixable: true,
  acceptable: true,
  // Needs the air that either part states on the sides that face one another, and the sizes and places of both.
  check: (plan) =>
    perBodyFault(plan, "air", ({ fault, body }) => {
      const [is, needs] = distinctOnSurface(body, fault.isMm, fault.needsMm);
      return {
        other: fault.other,
        values: { other: bodyInWords(plan, fault.other), side: fault.side, is, needs },
      };
    }),
  whenAsked: moveFixes,
  message: ({ other, side, is, needs }) =>
    `${is} of air ${sideInWords[side]}, up to ${other}, below the ${needs} that it needs (stated in the plan): move one of them.`,
});

const sideInWords: Readonly<Record<Side, string>> = {
  left: "on its left",
  right: "on its right",
  top: "above it",
  bottom: "below it",
};

interface Values extends OfFault {
  readonly other: string;
  readonly side: Side;
  readonly is: string;
  readonly needs: string;
}
