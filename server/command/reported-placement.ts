import type { Placement } from "../../library/analysis/placement/placement.ts";
import { lengthOfPath } from "../../library/analysis/placement/rectangles.ts";
import type { Channel } from "../../library/model/placement/layout.ts";
import type { ReportedPlan } from "./report-schema.ts";

/** Where things are, and the way of each conductor, as `check` reports them: all lengths in mm. */
export function reportPlacement({ layout, ways }: Placement): NonNullable<ReportedPlan["placement"]> {
  const { surfaces, channels, bodies, leads } = layout;
  return {
    surfaces: surfaces.map(({ name, orientation, width, height }, index) => ({
      ...{ name, orientation, widthMm: width, heightMm: height },
      parts: bodies.flatMap(({ name, size, place }) => {
        if (place?.kind !== "on surface" || place.surface !== index) return [];
        const { x, y, width, height } = place.outline;
        return [
          {
            ...{ name, leftMm: x, topMm: y, position: place.position },
            ...{ widthMm: size ? width : null, heightMm: size ? height : null },
          },
        ];
      }),
    })),
    channels: channels.map((channel, index) => ({
      ...{ name: channel.name, way: channel.way, lengthMm: lengthOf(channel) },
      conductors: leads.flatMap(({ name, index: lead }) => {
        const way = ways[lead]!;
        return way.state === "found" && way.stretches.some((one) => one.channel === index) ? [name] : [];
      }),
    })),
    ways: leads.map(({ name, role, index }) => {
      const way = ways[index]!;
      if (way.state !== "found") return { name, role, state: way.state, lengthMm: null, stretches: [] };
      return {
        ...{ name, role, state: way.state, lengthMm: way.lengthMm },
        stretches: way.stretches.map(({ lengthMm, channel, surface }) => ({
          lengthMm,
          along: channels[channel ?? -1]?.name ?? surfaces[surface ?? -1]?.name ?? null,
          isChannel: channel !== undefined,
        })),
      };
    }),
    notPlaced: bodies.flatMap(({ name, place }) => (place ? [] : [name])),
  };
}

function lengthOf({ course }: Channel): number {
  return course.kind === "along" ? lengthOfPath(course.path) : course.lengthMm;
}
