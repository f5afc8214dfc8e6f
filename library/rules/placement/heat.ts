import { besideHeat } from "../../standards/placement-distances.ts";
import { bodyInWords, type OfFault, onSurface, perBodyFault } from "../board.ts";
import { moveFixes } from "../fixes/moved-body.ts";
import { defineRule } from "../rule.ts";

export const placementHeat = defineRule<Values>({
  id: "placement/heat",
  title: "Warm part below or close beside another",
  severity: "warning",
  why: "Warm air rises into the part above: batteries age, breakers trip early, electronics fail.",
  sources: [besideHeat.source],
  fixable: true,
  acceptable: true,
  // Needs a part that must stay cool, and one that states its heat or converts with a loss, on the same surface.
  check: (plan) =>
    perBodyFault(plan, "heat", ({ fault, body }) => ({
      other: fault.other,
      values: {
        other: bodyInWords(plan, fault.other),
        how: fault.how,
        is: onSurface(body, fault.isMm),
        least: onSurface(body, besideHeat.leastMm),
      },
    })),
  whenAsked: moveFixes,
  message: ({ other, how, is, least }) =>
    how === "below"
      ? `Must stay cool, and ${other} below it gives off heat (common practice, no source): put the warm part above it, or aside.`
      : `Must stay cool, and ${other} gives off heat ${is} beside it, nearer than ${least} (common practice, no source): move one of them.`,
});

interface Values extends OfFault {
  readonly other: string;
  readonly how: "below" | "beside";
  readonly is: string;
  readonly least: string;
}
