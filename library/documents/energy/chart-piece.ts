/** One chart of a picture: its words, its lines from the upper edge that it was given, and its height. */
export interface ChartPiece {
  readonly title: string;
  readonly description: string;
  readonly svg: string;
  readonly heightPx: number;
}

/** The width of an upright page at its natural size. */
export const chartWidthPx = 640;
