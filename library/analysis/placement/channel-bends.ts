import type { Channel, Lead, Point } from "../../model/placement/layout.ts";
import { workedOutOnce } from "../../model/worked-out-once.ts";
import { bendRadius } from "../../standards/conductor-ways.ts";
import { channelSections } from "./channel-sections.ts";
import type { Placement } from "./placement.ts";
import { lengthOfPath } from "./rectangles.ts";

/** A bend of a channel that is too tight for a conductor in it: the thickest one. */
export interface TightBend {
  /** Index in the channels of the layout. */
  readonly channel: number;
  /** Index of the conductor. */
  readonly lead: number;
  readonly outsideMm: number;
  /** Least radius for it, in outside diameters and mm. */
  readonly times: number;
  readonly leastRadiusMm: number;
  /** The stated radius, or two corners that leave no room for such bends. */
  readonly by:
    | { readonly kind: "radius"; readonly radiusMm: number }
    | { readonly kind: "corners"; readonly apartMm: number; readonly neededMm: number };
}

/** The bends of channels that are too tight, and the channels whose bends cannot be judged. */
export interface ChannelBends {
  readonly tight: readonly TightBend[];
  /** Indices of channels with bends in the way of a conductor, without their radius or an outside diameter. */
  readonly notJudged: readonly number[];
}

/**
 * The bends of each channel against the least radius of the conductors in it: `bendRadiusMm`, and corners of its path that are too near
 * to each other. A corner of an angle θ takes r · tan(θ/2) of the straight run on both sides of it, so two right angles need 2 r between
 * them.
 */
export const channelBends = workedOutOnce((placement: Placement): ChannelBends => {
  const { layout } = placement;
  const tight: TightBend[] = [];
  const notJudged: number[] = [];
  channelSections(placement).forEach((sections, index) => {
    const channel = layout.channels[index]!;
    const corners = cornersOf(channel);
    const leadsBetween = (fromMm: number, untilMm: number) =>
      sections.filter((one) => one.untilMm > fromMm && one.fromMm < untilMm).flatMap(({ leads }) => leads);
    const inBends =
      channel.course.kind === "along"
        ? corners.flatMap(({ alongMm }) => leadsBetween(alongMm, alongMm))
        : leadsBetween(0, channel.course.lengthMm);
    const { bendRadiusMm } = channel;
    const hasBends = corners.length > 0 || bendRadiusMm !== undefined;
    if (!hasBends || inBends.length === 0) return;
    const isUnknown = inBends.some((lead) => layout.leads[lead]!.outsideMm === undefined);
    if (isUnknown || bendRadiusMm === undefined) notJudged.push(index);
    const thickest = thickestOf(inBends, layout.leads);
    if (thickest && bendRadiusMm !== undefined) {
      const least = leastRadius(channel, thickest.outsideMm);
      if (bendRadiusMm < least.leastRadiusMm)
        tight.push({ channel: index, ...thickest, ...least, by: { kind: "radius", radiusMm: bendRadiusMm } });
    }
    const nearest = corners.slice(1).flatMap((corner, at) => {
      const before = corners[at]!;
      const between = thickestOf(
        leadsBetween(before.alongMm, before.alongMm).filter((lead) =>
          leadsBetween(corner.alongMm, corner.alongMm).includes(lead),
        ),
        layout.leads,
      );
      if (!between) return [];
      const least = leastRadius(channel, between.outsideMm);
      const apartMm = corner.alongMm - before.alongMm;
      const neededMm = least.leastRadiusMm * (before.tangent + corner.tangent);
      if (apartMm >= neededMm - sameMm) return [];
      return [{ channel: index, ...between, ...least, by: { kind: "corners", apartMm, neededMm } } as const];
    });
    // The worst of them is enough: all are mended in the one path.
    const [worst] = nearest.sort(
      (one, other) => one.by.apartMm / one.by.neededMm - other.by.apartMm / other.by.neededMm,
    );
    if (worst) tight.push(worst);
  });
  return { tight, notJudged };
});

/** Lengths in inches are rounded in their last binary digits. */
const sameMm = 1e-6;

function thickestOf(leads: readonly number[], all: readonly Lead[]) {
  let thickest: { readonly lead: number; readonly outsideMm: number } | undefined;
  for (const lead of leads) {
    const { outsideMm } = all[lead]!;
    if (outsideMm !== undefined && outsideMm > (thickest?.outsideMm ?? 0)) thickest = { lead, outsideMm };
  }
  return thickest;
}

function leastRadius({ way }: Channel, outsideMm: number) {
  const { upTo25mm, above25mm } = way === "conduit" ? bendRadius.pulled : bendRadius.laid;
  const times = outsideMm > 25 ? above25mm : upTo25mm;
  return { times, leastRadiusMm: times * outsideMm };
}

interface Corner {
  readonly alongMm: number;
  /** tan(θ/2) of the angle by which it turns; a path that turns back on itself has no bend, and counts as one of 170°. */
  readonly tangent: number;
}

function cornersOf({ course }: Channel): readonly Corner[] {
  if (course.kind !== "along") return [];
  const path = course.path.filter((point, at) => at === 0 || !isSame(point, course.path[at - 1]!));
  let alongMm = 0;
  return path.slice(1, -1).flatMap((point, at) => {
    const [before, after] = [path[at]!, path[at + 2]!];
    alongMm += lengthOfPath([before, point]);
    const turn = angleBetween(before, point, after);
    return turn > leastTurn ? [{ alongMm, tangent: Math.tan(Math.min(turn, greatestTurn) / 2) }] : [];
  });
}

const leastTurn = 1e-6;
const greatestTurn = (170 / 180) * Math.PI;

function isSame(one: Point, other: Point): boolean {
  return one.x === other.x && one.y === other.y;
}

/** The angle by which a path turns at a point, from 0 (straight on) to π. */
function angleBetween(before: Point, at: Point, after: Point): number {
  const [ax, ay] = [at.x - before.x, at.y - before.y];
  const [bx, by] = [after.x - at.x, after.y - at.y];
  return Math.abs(Math.atan2(ax * by - ay * bx, ax * bx + ay * by));
}
