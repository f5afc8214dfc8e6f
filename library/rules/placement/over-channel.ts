import { type OfFault, onSurface, perBodyFault } from "../board.ts";
import { moveFixes } from "../fixes/moved-body.ts";
import { ownRequirement } from "../own-requirement.ts";
import { defineRule } from "../rule.ts";

export const overChannel = defineRule<Values>({
  id: "placement/over-channel",
  title: "Part over a trunking",
  severity: "warning",
  why: "Trunking projects from the board: the part has no hold there, and the lid beneath it does not open.",
  sources: [ownRequirement("A part lies beside the trunking, and not over it.")],
  fixable: true,
  acceptable: true,
  // Needs the size and the place of the part, and the inside of trunking on its surface.
  check: (plan) =>
    perBodyFault(plan, "over channel", ({ fault, body, facts }) => {
      const channel = facts.layout.channels[fault.channel]!;
      return {
        values: { channel: channel.name, by: onSurface(body, fault.byMm) },
        related: [{ at: { record: channel.record, path: ["path"] }, text: channel.name }],
        ofRecord: channel.record,
      };
    }),
  whenAsked: moveFixes,
  message: ({ channel, by }) => `Lies over ${channel} by ${by}: move it.`,
});

interface Values extends OfFault {
  readonly channel: string;
  readonly by: string;
}
