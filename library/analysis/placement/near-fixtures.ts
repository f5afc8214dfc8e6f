import type { Fixture, Point, Rectangle } from "../../model/placement/layout.ts";
import { workedOutOnce } from "../../model/worked-out-once.ts";
import { distanceFromFuel, distanceFromHeat } from "../../standards/conductor-ways.ts";
import type { Placement } from "./placement.ts";

/** Conductors near a fixture of their surface. */
export interface NearFixture {
  /** Index in the surfaces of the layout. */
  readonly surface: number;
  readonly fixture: Fixture;
  /** Index of the channel in which they lie; absent in the open. */
  readonly channel?: number;
  /** Indices of the conductors, the nearest first. */
  readonly leads: readonly number[];
  /** From the outside of the nearest one, or from its middle if its diameter is not known, mm. */
  readonly distanceMm: number;
  /** Least distance, and whether it is the published one or that of the plan, mm. */
  readonly leastMm: number;
  readonly leastStated: boolean;
  /** The distance to aim at, where it is published, mm. */
  readonly aimMm?: number;
}

/**
 * The conductors that keep less than the least distance, or the distance to aim at, from a source of heat, a fuel or gas line or a
 * compass. In a conduit they need none from fuel and gas. One result for each fixture and channel, or run in the open.
 */
export const nearFixtures = workedOutOnce(({ layout, ways }: Placement): readonly NearFixture[] => {
  const near = new Map<string, NearFixture>();
  layout.surfaces.forEach(({ fixtures }, surface) => {
    for (const fixture of fixtures) {
      const limit = limitOf(fixture);
      if (!limit) continue;
      ways.forEach((way, lead) => {
        if (way.state !== "found") return;
        const { record, outsideMm = 0 } = layout.leads[lead]!;
        for (const { channel, surface: on, path } of way.stretches) {
          if (on !== surface || !path) continue;
          const inConduit = channel !== undefined && layout.channels[channel]!.way === "conduit";
          if (inConduit && limit.notInConduit) continue;
          const distanceMm = Math.max(0, distanceOfPath(path, fixture) - outsideMm / 2);
          if (distanceMm >= (limit.aimMm ?? limit.leastMm) - sameMm) continue;
          const key = `${surface} ${fixture.index} ${channel ?? `run ${record}`}`;
          const known = near.get(key);
          const isNearer = distanceMm < (known?.distanceMm ?? Number.POSITIVE_INFINITY);
          const others = (known?.leads ?? []).filter((one) => one !== lead);
          near.set(key, {
            ...{ surface, fixture, ...(channel !== undefined && { channel }) },
            leads: isNearer ? [lead, ...others] : [...others, lead],
            distanceMm: isNearer ? distanceMm : known!.distanceMm,
            ...{ leastMm: limit.leastMm, leastStated: fixture.distanceMm !== undefined },
            ...(limit.aimMm !== undefined && { aimMm: limit.aimMm }),
          });
        }
      });
    }
  });
  return [...near.values()];
});

/** Lengths in inches are rounded in their last binary digits. */
const sameMm = 1e-6;

interface Limit {
  readonly leastMm: number;
  readonly aimMm?: number;
  readonly notInConduit?: true;
}

function limitOf({ fixture, distanceMm }: Fixture): Limit | undefined {
  switch (fixture) {
    case "source of heat":
      return distanceMm === undefined
        ? { leastMm: distanceFromHeat.leastMm, aimMm: distanceFromHeat.aimMm }
        : { leastMm: distanceMm };
    case "fuel line":
    case "gas line":
      return { leastMm: distanceMm ?? distanceFromFuel.leastMm, notInConduit: true };
    case "compass":
      return distanceMm === undefined ? undefined : { leastMm: distanceMm };
    default:
      return undefined;
  }
}

function distanceOfPath(path: readonly Point[], area: Rectangle): number {
  if (path.length === 1) return distanceOfStretch(path[0]!, path[0]!, area);
  return Math.min(...path.slice(1).map((point, at) => distanceOfStretch(path[at]!, point, area)));
}

/** Least distance between a straight stretch and a rectangle; 0 if it crosses or touches it. */
function distanceOfStretch(from: Point, to: Point, area: Rectangle): number {
  if (crosses(from, to, area)) return 0;
  const { x, y, width, height } = area;
  const corners = [x, x + width].flatMap((across) => [y, y + height].map((down) => ({ x: across, y: down })));
  return Math.min(
    ...[from, to].map((end) => distanceOfPoint(end, area)),
    ...corners.map((corner) => distanceToStretch(corner, from, to)),
  );
}

/** Clipping to each side in turn (Liang and Barsky). */
function crosses(from: Point, to: Point, { x, y, width, height }: Rectangle): boolean {
  let [start, end] = [0, 1];
  const [across, down] = [to.x - from.x, to.y - from.y];
  const sides = [
    [-across, from.x - x],
    [across, x + width - from.x],
    [-down, from.y - y],
    [down, y + height - from.y],
  ] as const;
  for (const [slope, room] of sides) {
    if (slope === 0) {
      if (room < 0) return false;
    } else if (slope < 0) start = Math.max(start, room / slope);
    else end = Math.min(end, room / slope);
  }
  return start <= end;
}

function distanceOfPoint(point: Point, { x, y, width, height }: Rectangle): number {
  return Math.hypot(
    Math.max(x - point.x, 0, point.x - x - width),
    Math.max(y - point.y, 0, point.y - y - height),
  );
}

function distanceToStretch(point: Point, from: Point, to: Point): number {
  const [across, down] = [to.x - from.x, to.y - from.y];
  const squared = across ** 2 + down ** 2;
  const share =
    squared === 0
      ? 0
      : Math.min(1, Math.max(0, ((point.x - from.x) * across + (point.y - from.y) * down) / squared));
  return Math.hypot(point.x - from.x - share * across, point.y - from.y - share * down);
}
