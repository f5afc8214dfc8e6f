import { channelBends, type TightBend } from "../../analysis/placement/channel-bends.ts";
import type { BoardUnit } from "../../model/length-unit.ts";
import { boardUnitOf } from "../../model/unit-of-plan.ts";
import { bendRadius } from "../../standards/conductor-ways.ts";
import { defineRule, type Found } from "../rule.ts";
import { withUnit } from "../wording/format-number.ts";
import { distinctShortLengths } from "../wording/lengths.ts";
import { conductorInWords } from "../wording/part-in-words.ts";
import { atRecord, relatedLead } from "../wording/placement-in-words.ts";
import { sourceInWords } from "../wording/source-in-words.ts";

export const bendTooTight = defineRule<Values>({
  id: "placement/bend-radius",
  title: "Bend too tight for a conductor",
  severity: "warning",
  why: "In a bend that is too tight the insulation thins out on its outside, and strands break.",
  sources: [bendRadius.source],
  fixable: false,
  acceptable: true,
  // Needs the bends of the channels. Silent about conductors without outsideMm.
  check({ placement }): Found<Values>[] {
    if (!placement) return [];
    const { channels, leads } = placement.layout;
    return channelBends(placement).tight.map((bend) => {
      const channel = channels[bend.channel]!;
      const lead = leads[bend.lead]!;
      return {
        subject: channel.name,
        at: atRecord(channel, bend.by.kind === "radius" ? "bendRadiusMm" : "path"),
        values: {
          ...bend,
          unit: boardUnitOf(placement.layout),
          conductor: conductorInWords(lead),
          isPulled: channel.way === "conduit",
          source: sourceInWords(bendRadius.source),
        },
        related: [relatedLead(lead)],
      };
    });
  },
  message({ conductor, outsideMm, times, leastRadiusMm, isPulled, by, unit, source }) {
    const reason = `${times} times its ${withUnit(outsideMm, "mm")}${isPulled ? ", as it is pulled through" : ""} (${source}; its data sheet comes first)`;
    if (by.kind === "radius") {
      const [radius, least] = distinctShortLengths(by.radiusMm, leastRadiusMm, "mm");
      return `Bends of ${radius} are too tight for ${conductor}: it needs ${least}, ${reason}.`;
    }
    const [apart, needed] = distinctShortLengths(by.apartMm, by.neededMm, unit);
    return `Two corners ${apart} apart leave no room to bend ${conductor}: it needs ${needed} between them for a radius of ${withUnit(leastRadiusMm, "mm")}, ${reason}.`;
  },
});

interface Values extends Pick<TightBend, "outsideMm" | "times" | "leastRadiusMm" | "by"> {
  readonly conductor: string;
  readonly isPulled: boolean;
  /** Of the path; a plan states radii and diameters in mm. */
  readonly unit: BoardUnit;
  readonly source: string;
}
