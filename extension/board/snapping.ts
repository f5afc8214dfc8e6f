/** A rectangle on a surface, mm from its top left corner. */
export interface Outline {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

interface Around {
  /** The surface that it is on. */
  readonly surface: { readonly width: number; readonly height: number };
  /** The outlines of the other parts there. */
  readonly others: readonly Outline[];
  /** The step of a place, mm. */
  readonly step: number;
}

/**
 * The place of an outline that is dragged: its edges and its middle at those of a neighbour or of the surface if one is within reach,
 * else at a whole number of steps; never left of the surface or above it.
 *
 * @param reach mm
 */
export function snapped(
  { left, top, width, height }: Outline,
  { surface, others, step }: Around,
  reach: number,
): Outline {
  const across = others.map((other) => [other.left, other.width] as const);
  const down = others.map((other) => [other.top, other.height] as const);
  return {
    left: alongAxis(left, width, [[0, surface.width], ...across], step, reach),
    top: alongAxis(top, height, [[0, surface.height], ...down], step, reach),
    ...{ width, height },
  };
}

function alongAxis(
  start: number,
  length: number,
  spans: readonly (readonly [start: number, length: number])[],
  step: number,
  reach: number,
): number {
  let best = Math.round(start / step) * step;
  let nearest = reach;
  for (const [at, long] of spans) {
    for (const edge of [at, at + long]) for (const own of [edge, edge - length]) consider(own);
    consider(at + long / 2 - length / 2);
  }
  return Math.max(0, best);

  function consider(own: number): void {
    const away = Math.abs(own - start);
    if (own < 0 || away >= nearest) return;
    [best, nearest] = [own, away];
  }
}

/** The first place, row by row, at which an outline is on the surface and overlaps no other; the top left corner if there is none. */
export function firstFree(
  { width, height }: Pick<Outline, "width" | "height">,
  { surface, others, step }: Around,
): Outline {
  for (let top = 0; top + height <= surface.height; top += step) {
    for (let left = 0; left + width <= surface.width; left += step) {
      const there = { left, top, width, height };
      const [hit] = others.filter((other) => overlap(there, other));
      if (!hit) return there;
      left = Math.max(left, Math.ceil((hit.left + hit.width) / step - 1) * step);
    }
  }
  return { left: 0, top: 0, width, height };
}

function overlap(one: Outline, other: Outline): boolean {
  return (
    one.left < other.left + other.width &&
    other.left < one.left + one.width &&
    one.top < other.top + other.height &&
    other.top < one.top + one.height
  );
}

const mmPerInch = 25.4;

/** The step of a place: 5 mm, or a quarter of an inch, in mm. */
export function stepOf(unit: "mm" | "in"): number {
  return unit === "mm" ? 5 : mmPerInch / 4;
}

/** As the text states it: to a tenth of a millimetre, or a thousandth of an inch. */
export function inUnit(lengthMm: number, unit: "mm" | "in"): number {
  return unit === "mm" ? Math.round(lengthMm * 10) / 10 : Math.round((lengthMm / mmPerInch) * 1_000) / 1_000;
}
