import type { ChannelInside, Layout } from "../../model/placement/layout.ts";
import { workedOutOnce } from "../../model/worked-out-once.ts";
import { channelSections } from "./channel-sections.ts";
import type { Placement } from "./placement.ts";

/** The fullest section of a channel. */
export interface ChannelFill {
  /** Index in the channels of the layout. */
  readonly channel: number;
  /** From the beginning of the channel, mm. */
  readonly fromMm: number;
  readonly untilMm: number;
  /** Indices of the conductors in it. */
  readonly leads: readonly number[];
  /** Sum of the cross-sections over their insulation, mm². */
  readonly filledMm2: number;
  readonly insideMm2: number;
  /** As stated, else all of it. */
  readonly limitPercent: number;
  readonly limitStated: boolean;
  readonly filledPercent: number;
  /** The outside diameter of some of them is not known. */
  readonly isLeast: boolean;
  /** Sections of it above the limit. */
  readonly sectionsAbove: number;
}

/**
 * The fill of each channel with a stated inside, at its fullest section.
 *
 *     fill = Σ π/4 · D² / A      D outside diameter of each wire or sheath, A cross-section of the inside
 *
 * Both conductors of a circuit in one sheath count once.
 */
export const channelFills = workedOutOnce((placement: Placement): readonly ChannelFill[] => {
  const { layout } = placement;
  return channelSections(placement).flatMap((sections, channel) => {
    const { inside, fillPercent } = layout.channels[channel]!;
    if (!inside || sections.length === 0) return [];
    const insideMm2 = areaOf(inside);
    const filled = sections.map(({ leads }) => filledBy(leads, layout));
    const filledMm2 = Math.max(...filled);
    const { leads, fromMm, untilMm } = sections[filled.indexOf(filledMm2)]!;
    const limitPercent = fillPercent ?? 100;
    const percentOf = (mm2: number) => (100 * mm2) / insideMm2;
    return [
      {
        ...{ channel, fromMm, untilMm, leads, filledMm2, insideMm2, limitPercent },
        limitStated: fillPercent !== undefined,
        filledPercent: percentOf(filledMm2),
        isLeast: leads.some((lead) => layout.leads[lead]!.outsideMm === undefined),
        sectionsAbove: filled.filter((mm2) => percentOf(mm2) > limitPercent).length,
      },
    ];
  });
});

function areaOf(inside: ChannelInside): number {
  return inside.shape === "round" ? circleMm2(inside.diameter) : inside.width * inside.height;
}

function circleMm2(diameterMm: number): number {
  return (Math.PI / 4) * diameterMm ** 2;
}

function filledBy(leads: readonly number[], { leads: all }: Layout): number {
  const sheaths = new Set<number>();
  let mm2 = 0;
  for (const lead of leads) {
    const { outsideMm, wires, paired, record } = all[lead]!;
    if (outsideMm === undefined || (paired && sheaths.has(record))) continue;
    if (paired) sheaths.add(record);
    mm2 += wires * circleMm2(outsideMm);
  }
  return mm2;
}
