import { statedInPlan } from "../../model/stated-in-plan.ts";
import { type OfFault, perBodyFault } from "../board.ts";
import { turnFixes } from "../fixes/moved-body.ts";
import { defineRule } from "../rule.ts";
import { listInWords } from "../wording/part-in-words.ts";

export const placementPosition = defineRule<Values>({
  id: "placement/position",
  title: "Mounting position that its maker excludes",
  severity: "warning",
  why: "Fans and fins are made for one way up: in another the heat stays inside, relays chatter, or acid leaks out.",
  sources: [statedInPlan(undefined)],
  fixable: true,
  acceptable: true,
  // Needs the positions that the plan states, the surface, and the turn of the part.
  check: (plan) =>
    perBodyFault(plan, "position", ({ body, surface }) => ({
      values: {
        position: body.place?.kind === "on surface" ? body.place.position : "",
        permitted: body.mountingPositions ?? [],
        surface: surface.name,
      },
    })),
  whenAsked: turnFixes,
  message: ({ position, permitted, surface }) =>
    `Is ${position} on ${surface}; permitted: ${listInWords(permitted, 6)} (stated in the plan). Turn it, or choose another surface.`,
});

interface Values extends OfFault {
  readonly position: string;
  readonly permitted: readonly string[];
  readonly surface: string;
}
