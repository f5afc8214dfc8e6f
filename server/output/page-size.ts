import { paperMm } from "../../library/documents/schedules/label-sheets.ts";

export const ptPerMm = 72 / 25.4;

/** Sheets of paper, upright, in points of 1/72 in. */
export const pageSizes = {
  A3: inPoints({ widthMm: 297, heightMm: 420 }),
  A4: inPoints(paperMm.A4),
  Letter: inPoints(paperMm.Letter),
} as const;

export type PageSize = keyof typeof pageSizes;

export type Orientation = "portrait" | "landscape";

/** To a thousandth, the precision of a PDF. */
function inPoints({ widthMm, heightMm }: { readonly widthMm: number; readonly heightMm: number }) {
  const points = (mm: number) => Math.round(mm * ptPerMm * 1000) / 1000;
  return { widthPt: points(widthMm), heightPt: points(heightMm) };
}
