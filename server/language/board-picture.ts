import type { Placement } from "../../library/analysis/placement/placement.ts";
import type { BoardPicture } from "./messages.ts";

/** A surface with the places kept free, the channels, the parts and the ways of the conductors on it, as plain outlines. */
export function boardPicture({ layout, ways }: Placement, index: number, conductors: boolean): BoardPicture {
  const { width, height, keepFree } = layout.surfaces[index]!;
  const shapes = [
    rectangle({ x: 0, y: 0, width, height }, "board"),
    ...keepFree.map((area) => rectangle(area, "keep-free")),
    ...layout.channels.flatMap(({ course }) =>
      course.kind === "along" && course.surface === index ? [line(course.path, "channel")] : [],
    ),
    ...ways.flatMap((way) =>
      conductors && way.state === "found"
        ? way.stretches.flatMap(({ surface, path }) =>
            surface === index && path ? [line(path, "conductor")] : [],
          )
        : [],
    ),
    ...layout.bodies.flatMap(({ place }) =>
      place?.kind === "on surface" && place.surface === index ? [rectangle(place.outline, "part")] : [],
    ),
  ];
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}">${shapes.join("")}</svg>`;
  return { svg, width, height, x: 0, y: 0, perMm: 1 };
}

interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

function rectangle({ x, y, width, height }: Box, kind: string): string {
  return `<rect class="${kind}" x="${x}" y="${y}" width="${width}" height="${height}" fill="none" stroke="currentcolor" vector-effect="non-scaling-stroke"/>`;
}

function line(path: readonly { readonly x: number; readonly y: number }[], kind: string): string {
  const points = path.map(({ x, y }) => `${x},${y}`).join(" ");
  return `<polyline class="${kind}" points="${points}" fill="none" stroke="currentcolor" vector-effect="non-scaling-stroke"/>`;
}
