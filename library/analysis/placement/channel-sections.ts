import { workedOutOnce } from "../../model/worked-out-once.ts";
import type { Placement } from "./placement.ts";

/** A section of a channel in which the same conductors lie, from one place where one joins or leaves to the next. */
export interface ChannelSection {
  /** From the beginning of the channel, mm. */
  readonly fromMm: number;
  readonly untilMm: number;
  /** Indices in the leads of the layout, ascending. */
  readonly leads: readonly number[];
}

/** By channel index: its sections with conductors, from its beginning on. A conductor without a way lies in none. */
export const channelSections = workedOutOnce(
  ({ layout, ways }: Placement): readonly (readonly ChannelSection[])[] => {
    const inChannel: Occupied[][] = layout.channels.map(() => []);
    ways.forEach((way, lead) => {
      if (way.state !== "found") return;
      for (const { channel, alongMm } of way.stretches)
        if (channel !== undefined && alongMm)
          inChannel[channel]!.push({ lead, fromMm: Math.min(...alongMm), untilMm: Math.max(...alongMm) });
    });
    return inChannel.map(sectionsOf);
  },
);

interface Occupied {
  readonly lead: number;
  readonly fromMm: number;
  readonly untilMm: number;
}

function sectionsOf(occupied: readonly Occupied[]): readonly ChannelSection[] {
  const borders = [...new Set(occupied.flatMap(({ fromMm, untilMm }) => [fromMm, untilMm]))].sort(
    (one, other) => one - other,
  );
  return borders.slice(1).flatMap((untilMm, at) => {
    const fromMm = borders[at]!;
    const within = occupied.filter((one) => one.fromMm <= fromMm && one.untilMm >= untilMm);
    const leads = [...new Set(within.map(({ lead }) => lead))].sort((one, other) => one - other);
    return leads.length > 0 ? [{ fromMm, untilMm, leads }] : [];
  });
}
