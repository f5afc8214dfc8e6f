/** Sheets of paper, upright, in points of 1/72 in: A4 of ISO 216, 210 mm × 297 mm; Letter, 8.5 in × 11 in. */
export const pageSizes = {
  A4: { widthPt: (210 / 25.4) * 72, heightPt: (297 / 25.4) * 72 },
  Letter: { widthPt: 8.5 * 72, heightPt: 11 * 72 },
} as const;

export type PageSize = keyof typeof pageSizes;

export type Orientation = "portrait" | "landscape";
