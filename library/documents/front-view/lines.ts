import type { Point } from "../diagram/graph.ts";

/* Lines of straight pieces, px. */

export type Piece = readonly [from: Point, to: Point];

export function piecesOfLine(line: readonly Point[]): readonly Piece[] {
  return line.slice(1).map((to, index) => [line[index]!, to]);
}

export function lengthOf([from, to]: Piece): number {
  return Math.hypot(to.x - from.x, to.y - from.y);
}

/** The direction of a piece, of length 1; 0 for a piece without a length. */
export function directionOf([from, to]: Piece): Point {
  const length = lengthOf([from, to]) || 1;
  return { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
}

/** The point at a share of a piece. */
export function pointAt([from, to]: Piece, share: number): Point {
  return { x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share };
}

export function longestFirst(pieces: readonly Piece[]): readonly Piece[] {
  return [...pieces].sort((one, other) => lengthOf(other) - lengthOf(one));
}

/** Points along a line at steps of 4 px from a distance of its start on, with the direction of the line there. */
export function stepsAlong(
  line: readonly Point[],
  fromPx: number,
  toPx: number,
): readonly { readonly at: Point; readonly along: Point }[] {
  let before = 0;
  return piecesOfLine(line).flatMap((piece) => {
    const [from] = piece;
    const length = lengthOf(piece);
    const along = directionOf(piece);
    const steps: { readonly at: Point; readonly along: Point }[] = [];
    const first = Math.max(fromPx, fromPx + Math.ceil((before - fromPx) / 4) * 4);
    for (let place = first; place <= Math.min(before + length, toPx); place += 4)
      steps.push({
        at: { x: from.x + along.x * (place - before), y: from.y + along.y * (place - before) },
        along,
      });
    before += length;
    return steps;
  });
}

/** Places for a mark on some lines: the longest straight piece first, its middle before the rest. */
export function placesAlong(lines: readonly (readonly Point[])[]): readonly Point[] {
  return placesBeside(lines, 0);
}

/** Those at a distance from the lines, on both sides. */
export function placesBeside(lines: readonly (readonly Point[])[], away: number): readonly Point[] {
  return longestFirst(lines.flatMap(piecesOfLine)).flatMap((piece) => {
    const { x, y } = directionOf(piece);
    return [0.5, 0.35, 0.65, 0.2, 0.8].flatMap((share) => {
      const at = pointAt(piece, share);
      return (away === 0 ? [0] : [away, -away]).map((by) => ({ x: at.x - y * by, y: at.y + x * by }));
    });
  });
}
