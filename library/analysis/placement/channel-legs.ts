import type { Channel, Rectangle } from "../../model/placement/layout.ts";

/**
 * The straight stretches of a channel on a surface, as wide as its inside; as 1 mm if that is not stated. Of a stretch that is neither level
 * nor upright, the rectangle around it.
 */
export function channelLegs({ course, inside }: Channel, surface: number): readonly Rectangle[] {
  if (course.kind !== "along" || course.surface !== surface) return [];
  const across = inside?.shape === "round" ? inside.diameter : (inside?.width ?? 1);
  return course.path.slice(1).map((to, at) => {
    const from = course.path[at]!;
    const [level, upright] = [Math.abs(to.x - from.x), Math.abs(to.y - from.y)];
    // No wider than the channel at its ends, where parts may touch it.
    const [besideX, besideY] = [level === 0 || upright > 0 ? across / 2 : 0, level > 0 ? across / 2 : 0];
    const [x, y] = [Math.min(from.x, to.x) - besideX, Math.min(from.y, to.y) - besideY];
    return { x, y, width: level + 2 * besideX, height: upright + 2 * besideY };
  });
}

/** The stretches of trunking whose place is known: no part fits over it. A conduit may be behind the board, and a bundle beneath a part. */
export function trunkingLegs(channel: Channel, surface: number): readonly Rectangle[] {
  const { way, inside, course } = channel;
  if (way !== "trunking" || !inside || course.kind !== "along") return [];
  return channelLegs(channel, surface).filter((_, at) => {
    const [from, to] = [course.path[at]!, course.path[at + 1]!];
    return from.x === to.x || from.y === to.y;
  });
}
