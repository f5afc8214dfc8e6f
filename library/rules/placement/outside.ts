import { channelsOutside } from "../../analysis/placement/channels-outside.ts";
import type { Side } from "../../model/placement/layout.ts";
import { type OfFault, onSurface, perBodyFault } from "../board.ts";
import { moveFixes } from "../fixes/moved-body.ts";
import { ownRequirement } from "../own-requirement.ts";
import { defineRule, type Found, type JudgedPlan } from "../rule.ts";
import { shortLengthInUnit } from "../wording/lengths.ts";
import { atRecord } from "../wording/placement-in-words.ts";

export const placementOutside = defineRule<Values>({
  id: "placement/outside",
  title: "Beyond the edge of the surface",
  formerTitles: ["Part beyond the edge of its surface"],
  severity: "warning",
  why: "Screws at its edge find no hold, the part is in the way of anything beside the board, and a way beyond it has a wrong length.",
  sources: [ownRequirement("Parts and channels lie within the surface that they are on.")],
  fixable: true,
  acceptable: true,
  // Needs the place of the part; without its size, its top left corner alone is judged. Of channels, the points that the plan states.
  check: (plan) => [
    ...perBodyFault<"outside", OfPart>(plan, "outside", ({ fault, body, surface }) => ({
      values: { surface: surface.name, side: fault.side, by: onSurface(body, fault.byMm) },
    })),
    ...channels(plan),
  ],
  whenAsked: (values) => ("of" in values ? moveFixes(values) : { fixes: [] }),
  message: (values) =>
    "of" in values
      ? `Reaches ${values.by} beyond the ${values.side} edge of ${values.surface}: move it, or choose a larger surface.`
      : `Leads ${values.by} beyond the ${values.side} edge of ${values.surface}: keep it on the surface, or choose a larger one.`,
});

function channels({ placement }: JudgedPlan): readonly Found<Values>[] {
  if (!placement) return [];
  const { layout } = placement;
  return channelsOutside(layout).map(({ channel: index, surface: on, property, side, byMm }) => {
    const [channel, surface] = [layout.channels[index]!, layout.surfaces[on]!];
    return {
      subject: channel.name,
      at: atRecord(channel, property),
      values: { surface: surface.name, side, by: shortLengthInUnit(byMm, surface.writtenIn) },
    };
  });
}

interface Beyond {
  readonly surface: string;
  readonly side: Side;
  readonly by: string;
}

interface OfPart extends Beyond, OfFault {}

type Values = OfPart | Beyond;
