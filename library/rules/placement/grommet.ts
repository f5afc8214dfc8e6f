import { channelSections } from "../../analysis/placement/channel-sections.ts";
import { abrasion } from "../../standards/conductor-ways.ts";
import { defineRule, type Found } from "../rule.ts";
import { counted } from "../wording/format-number.ts";
import { atRecord, relatedLead } from "../wording/placement-in-words.ts";
import { sourceInWords } from "../wording/source-in-words.ts";

export const grommetMissing = defineRule<Values>({
  id: "placement/grommet",
  title: "Hole without a grommet",
  severity: "warning",
  why: "The edge of a hole saws through insulation with every movement, and a bare conductor at metal is a short circuit.",
  sources: [abrasion],
  fixable: false,
  acceptable: true,
  // Needs the conductors in each channel. Information if the plan states neither that there is a grommet nor that there is none.
  check({ placement }): Found<Values>[] {
    if (!placement) return [];
    const { channels, leads } = placement.layout;
    return channelSections(placement).flatMap((sections, index): Found<Values>[] => {
      const channel = channels[index]!;
      const inside = [...new Set(sections.flatMap((section) => section.leads))];
      if (channel.way !== "hole" || channel.grommet || inside.length === 0) return [];
      const stated = channel.grommet === false;
      return [
        {
          subject: channel.name,
          at: atRecord(channel, ...(stated ? ["grommet"] : [])),
          ...(!stated && { severity: "info" }),
          values: { stated, conductors: inside.length, source: sourceInWords(abrasion) },
          related: inside.slice(0, mostRelated).map((lead) => relatedLead(leads[lead]!)),
        },
      ];
    });
  },
  message({ stated, conductors, source }) {
    const through = `${counted(conductors, "conductor")} through this hole`;
    return stated
      ? `${through} ${conductors === 1 ? "has" : "have"} no grommet: protect ${conductors === 1 ? "it" : "them"} from its edge (${source}).`
      : `${through}, and the plan states no grommet: fit one (${source}), then state grommet: true.`;
  },
});

interface Values {
  /** The plan states that there is none. */
  readonly stated: boolean;
  readonly conductors: number;
  readonly source: string;
}

const mostRelated = 4;
