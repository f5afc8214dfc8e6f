/** Patterns that differ in black and white; neighbours in this order differ most. */
export const fills = ["slanted", "dotted", "level", "crossed", "solid", "upright", "leaning"] as const;

export type Fill = (typeof fills)[number];

/** The tiles of the patterns. Their names are the same in every picture, and so are the tiles. */
export function fillDefinitions(ink: string): string {
  const patterns = Object.entries(tiles).map(
    ([fill, tile]) =>
      `<pattern id="${idOf(fill)}" patternUnits="userSpaceOnUse" width="${tilePx}" height="${tilePx}">${drawn(tile, ink)}</pattern>`,
  );
  return `<defs>${patterns.join("")}</defs>\n`;
}

/** The value of a `fill` attribute. */
export function fillReference(fill: Fill, ink: string): string {
  return fill === "solid" ? ink : `url(#${idOf(fill)})`;
}

function idOf(fill: string): string {
  return `loomwright-fill-${fill}`;
}

const tilePx = 6;

/** Outlines of lines, or of dots. Slanted lines also run through two corners, where the next tiles go on. */
const tiles: Readonly<Record<Exclude<Fill, "solid">, { readonly d: string; readonly dots?: true }>> = {
  slanted: { d: "M-1 1L1 -1M0 6L6 0M5 7L7 5" },
  leaning: { d: "M-1 5L1 7M0 0L6 6M5 -1L7 1" },
  crossed: { d: "M0 0L6 6M0 6L6 0" },
  level: { d: "M0 1.5L6 1.5M0 4.5L6 4.5" },
  upright: { d: "M3 0L3 6" },
  dotted: { d: "M0.8 0.8L2.2 0.8L2.2 2.2L0.8 2.2ZM3.8 3.8L5.2 3.8L5.2 5.2L3.8 5.2Z", dots: true },
};

function drawn({ d, dots }: { readonly d: string; readonly dots?: true }, ink: string): string {
  return dots
    ? `<path d="${d}" fill="${ink}"/>`
    : `<path d="${d}" fill="none" stroke="${ink}" stroke-width="0.9"/>`;
}
