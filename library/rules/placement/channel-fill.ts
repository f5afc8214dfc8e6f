import { channelFills } from "../../analysis/placement/channel-fill.ts";
import type { LengthUnit } from "../../model/length-unit.ts";
import type { Citation } from "../../standards/citation.ts";
import { defineRule, type Found } from "../rule.ts";
import { exceeds, formatDistinctWithUnit, withUnit } from "../wording/format-number.ts";
import { lengthInUnit } from "../wording/lengths.ts";
import { atRecord, relatedLead } from "../wording/placement-in-words.ts";

const statedFill: Citation = {
  document: "The permitted fill, as the plan states it",
  section: "",
  authority: "stated in the plan",
  confirmed: "read",
  note: "No public figure fits every kind of channel. Without a stated one, only more than the whole inside is a finding.",
};

export const channelFill = defineRule<Values>({
  id: "placement/channel-fill",
  title: "Channel too full",
  severity: "warning",
  why: "Conductors that are forced into a full channel chafe when pulled in, and keep each other's heat.",
  sources: [statedFill],
  fixable: false,
  acceptable: true,
  // Needs the fill of the channels. Silent without the inside of a channel, or if conductors of known diameter fill too little.
  check({ placement, model }): Found<Values>[] {
    if (!placement) return [];
    const { channels, leads } = placement.layout;
    return channelFills(placement).flatMap((fill): Found<Values>[] => {
      if (!exceeds(fill.filledPercent, fill.limitPercent)) return [];
      const channel = channels[fill.channel]!;
      const inOrder = fill.leads
        .map((lead) => leads[lead]!)
        .sort((one, other) => (other.outsideMm ?? 0) - (one.outsideMm ?? 0));
      return [
        {
          subject: channel.name,
          at: atRecord(channel, fill.limitStated ? "fillPercent" : "inside"),
          values: { ...fill, conductors: fill.leads.length, unit: model.lengthUnit },
          related: inOrder.slice(0, mostRelated).map(relatedLead),
        },
      ];
    });
  },
  message({ conductors, filledPercent, limitPercent, limitStated, isLeast, unit, ...fill }) {
    const [filled, limit] = formatDistinctWithUnit(filledPercent, limitPercent, "%");
    const least = isLeast ? "at least " : "";
    const place = `${lengthInUnit(fill.fromMm / 1_000, unit)} to ${lengthInUnit(fill.untilMm / 1_000, unit)} from its beginning`;
    const other =
      fill.sectionsAbove > 1 ? `, and ${fill.sectionsAbove - 1} more of its sections are too full` : "";
    const permitted = limitStated ? `${limit} as stated` : "all of it";
    return `${conductors} conductors fill ${least}${filled} of it (${withUnit(fill.filledMm2, "mm²")} of ${withUnit(fill.insideMm2, "mm²")}) ${place}; permitted is ${permitted}${other}. Use a larger channel, or lead some through another.`;
  },
});

interface Values {
  readonly conductors: number;
  readonly filledMm2: number;
  readonly insideMm2: number;
  readonly filledPercent: number;
  readonly limitPercent: number;
  readonly limitStated: boolean;
  /** Some outside diameters are not known. */
  readonly isLeast: boolean;
  readonly fromMm: number;
  readonly untilMm: number;
  readonly sectionsAbove: number;
  readonly unit: LengthUnit;
}

const mostRelated = 4;
