import type { Box } from "../diagram/drawing.ts";
import type { Point } from "../diagram/graph.ts";
import type { SvgWriter } from "../diagram/svg-writer.ts";
import { textWidth } from "../diagram/text-measure.ts";
import { without } from "./boxes.ts";

/** A place on an edge of the surface, and the thing that is there. */
export interface Marked {
  /** From the left edge (or the top edge) of the surface, px. */
  readonly at: number;
  /** How far the thing is from the edge that carries the dimension, px. */
  readonly far: number;
  /** Its distance in words. */
  readonly words: string;
}

export interface Dimensions {
  readonly svg: string;
  /** How far they reach beyond the edge, px. */
  readonly reach: number;
}

/**
 * Running dimensions along the top or left edge, all from the same corner, so no error adds up as they are marked with a tape; and the
 * whole length of that edge beyond them. Fine lines lead to the things, around everything else.
 */
export function dimensions(
  pen: SvgWriter,
  edge: "top" | "left",
  lengthPx: number,
  whole: string,
  marked: readonly Marked[],
  taken: readonly Box[],
): Dimensions {
  const places = byPlace(marked);
  const spots = spreadApart(
    places.map(({ at }) => at),
    rowPx,
  );
  // Written for the top edge; the left edge is its mirror image.
  const point = (along: number, out: number): Point =>
    edge === "top" ? { x: along, y: -out } : { x: -out, y: along };
  const textAt = (along: number, out: number, text: string) =>
    edge === "top"
      ? pen.text({ x: along + 3.5, y: -out }, text, { sizePx, turned: true })
      : pen.text({ x: -out, y: along + 3.5 }, text, { sizePx, anchor: "end" });
  const widest = places.reduce((most, { words }) => Math.max(most, textWidth(words, sizePx)), 0);
  const wholeAt = wordsPx + widest + 12;
  const drawn = places.map(({ at, far, words }, index) => {
    const spot = spots[index]!;
    return (
      pen.line([point(at, linePx - 3), point(at, linePx + 3), point(spot, wordsPx - 3)], "fine") +
      textAt(spot, wordsPx, words) +
      leading(pen, edge, at, far, taken)
    );
  });
  const last = Math.max(lengthPx, ...places.map(({ at }) => at));
  const ends = [0, lengthPx].map((at) => {
    const isWritten = spots.some((spot) => Math.abs(spot - at) < rowPx / 2);
    const pieces = isWritten
      ? [[3, wordsPx - 3] as const, [wordsPx + widest + 3, wholeAt + 4] as const]
      : [[3, wholeAt + 4] as const];
    return pieces.map(([from, to]) => pen.line([point(at, from), point(at, to)], "fine")).join("");
  });
  const middle = point(lengthPx / 2, wholeAt + 4);
  return {
    svg: [
      ...(places.length > 0
        ? [
            pen.line([point(0, linePx), point(last, linePx)], "fine"),
            pen.circle(point(0, linePx), 2.5, "empty", "fine"),
            ...drawn,
          ]
        : []),
      ...ends,
      arrowed(pen, point(0, wholeAt), point(lengthPx, wholeAt)),
      pen.text(middle, whole, { sizePx, anchor: "middle", ...(edge === "left" && { turned: true }) }),
    ].join(""),
    reach: wholeAt + 18,
  };
}

const sizePx = 10;
const rowPx = 12;
const linePx = 8;
/** From the edge to the foot of the words. */
const wordsPx = 24;

/** Things at the same place share a mark; its line leads to the farthest. */
function byPlace(marked: readonly Marked[]): readonly Marked[] {
  const places = new Map<string, Marked>();
  for (const one of marked) {
    const known = places.get(one.words);
    places.set(one.words, known ? { ...known, far: Math.max(known.far, one.far) } : one);
  }
  return [...places.values()].sort((one, other) => one.at - other.at);
}

/** The places, moved by as little as possible until neighbours are at least a gap apart, in their order. */
function spreadApart(wanted: readonly number[], gap: number): readonly number[] {
  // Neighbours that touch move together, around the mean of the places that they want.
  const groups: { readonly count: number; readonly sum: number }[] = [];
  const startOf = ({ count, sum }: { readonly count: number; readonly sum: number }) =>
    sum / count - ((count - 1) * gap) / 2;
  for (const place of wanted) {
    let group = { count: 1, sum: place };
    for (let before = groups.at(-1); before; before = groups.at(-1)) {
      if (startOf(before) + before.count * gap <= startOf(group)) break;
      groups.pop();
      group = { count: before.count + group.count, sum: before.sum + group.sum };
    }
    groups.push(group);
  }
  return groups.flatMap((group) =>
    Array.from({ length: group.count }, (_, index) => startOf(group) + index * gap),
  );
}

/** A fine line from the edge to a thing, left out where something else is. */
function leading(
  pen: SvgWriter,
  edge: "top" | "left",
  at: number,
  far: number,
  taken: readonly Box[],
): string {
  const half = 0.05;
  const strip: Box =
    edge === "top"
      ? { x: at - half, y: 0, width: 2 * half, height: far }
      : { x: 0, y: at - half, width: far, height: 2 * half };
  return without(strip, taken)
    .map(({ x, y, width, height }) =>
      edge === "top"
        ? pen.line(
            [
              { x: at, y },
              { x: at, y: y + height },
            ],
            "extension",
          )
        : pen.line(
            [
              { x, y: at },
              { x: x + width, y: at },
            ],
            "extension",
          ),
    )
    .join("");
}

/** A dimension line with an arrow at both ends. */
function arrowed(pen: SvgWriter, from: Point, to: Point): string {
  const length = Math.hypot(to.x - from.x, to.y - from.y) || 1;
  const [x, y] = [(to.x - from.x) / length, (to.y - from.y) / length];
  const arrow = (tip: Point, forward: number) =>
    pen.solid([
      tip,
      { x: tip.x + forward * 7 * x - 2 * y, y: tip.y + forward * 7 * y + 2 * x },
      { x: tip.x + forward * 7 * x + 2 * y, y: tip.y + forward * 7 * y - 2 * x },
    ]);
  return pen.line([from, to], "fine") + arrow(from, 1) + arrow(to, -1);
}
