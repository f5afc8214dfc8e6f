import type { Channel, Layout, Point, Side } from "../../model/placement/layout.ts";
import { beyondEdge } from "./on-surface.ts";

/** A channel whose course leaves its surface. */
export interface ChannelOutside {
  /** Index in {@link Layout.channels}. */
  readonly channel: number;
  /** Index in {@link Layout.surfaces}. */
  readonly surface: number;
  readonly property: "path" | "from" | "to";
  /** Where it is farthest beyond. */
  readonly side: Side;
  readonly byMm: number;
}

/** By the points of each path, and the places of the ends of channels between surfaces. */
export function channelsOutside({ surfaces, channels }: Layout): readonly ChannelOutside[] {
  return channels.flatMap((channel, index) =>
    statedPoints(channel).flatMap(({ property, surface, points }): readonly ChannelOutside[] => {
      const beyond = points.flatMap((point) => beyondEdge(asRectangle(point), surfaces[surface]!) ?? []);
      const [farthest] = beyond.toSorted((one, other) => other.byMm - one.byMm);
      return farthest ? [{ channel: index, surface, property, ...farthest }] : [];
    }),
  );
}

function statedPoints({ course }: Channel) {
  if (course.kind === "along")
    return [{ property: "path" as const, surface: course.surface, points: course.path }];
  return (["from", "to"] as const).flatMap((property) => {
    const end = course[property];
    return end ? [{ property, surface: end.surface, points: [end] }] : [];
  });
}

function asRectangle({ x, y }: Point) {
  return { x, y, width: 0, height: 0 };
}
