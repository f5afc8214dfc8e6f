import type { Body, Layout } from "../../model/placement/layout.ts";
import { workedOutOnce } from "../../model/worked-out-once.ts";
import type { Placement } from "./placement.ts";

/** A conductor between two placed parts that has no way. */
export interface MissingWay {
  /** Index in the leads of the layout. */
  readonly lead: number;
  /** The surfaces that channels connect with the one of each end; one list if both ends are on connected surfaces. */
  readonly surfaces: readonly [readonly number[], readonly number[]] | undefined;
}

/** The conductors without a way, each with the surfaces that nothing connects. */
export const missingWays = workedOutOnce(({ layout, ways }: Placement): readonly MissingWay[] => {
  const groups = connectedSurfaces(layout);
  return ways.flatMap((way, lead): readonly MissingWay[] => {
    if (way.state !== "no way") return [];
    const { from, to } = layout.leads[lead]!;
    const [start, end] = [from, to].map(({ body }) => groups[surfaceOf(layout.bodies[body]!, layout) ?? -1]);
    const surfaces = start && end && start !== end ? ([start, end] as const) : undefined;
    return [{ lead, surfaces }];
  });
});

/** The surface that a body is on, or that the channel leaves at whose end it is. */
function surfaceOf({ place }: Body, { channels }: Layout): number | undefined {
  if (place?.kind !== "at end") return place?.surface;
  const { course } = channels[place.channel]!;
  return course.kind === "along" ? course.surface : course.from.surface;
}

/** By surface index: the surfaces that channels connect with it, itself among them. Connected ones share one list. */
function connectedSurfaces({ surfaces, channels }: Layout): readonly (readonly number[])[] {
  const groups: number[][] = surfaces.map((_, index) => [index]);
  for (const { course } of channels) {
    if (course.kind !== "between" || !course.to) continue;
    const [one, other] = [groups[course.from.surface]!, groups[course.to.surface]!];
    if (one === other) continue;
    one.push(...other);
    for (const surface of other) groups[surface] = one;
  }
  return groups;
}
