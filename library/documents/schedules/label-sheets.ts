/**
 * Places labels on sheets of labels, row by row from the top left. Millimetres from the top left corner of the page. The first
 * `skip` labels of the first sheet are left out: they were used before.
 */
export function labelSheet<Lines>(
  labels: readonly Lines[],
  geometry: LabelSheetGeometry,
  skip = 0,
): readonly LabelPage<Lines>[] {
  const { columns, rows, labelWidthMm, labelHeightMm, leftMm, topMm, pitchXMm, pitchYMm } = geometry;
  const onPage = columns * rows;
  const pages: { page: number; labels: PlacedLabel<Lines>[] }[] = [];
  labels.forEach((lines, index) => {
    const place = index + (skip % onPage);
    const page = Math.floor(place / onPage);
    const cell = place % onPage;
    pages[page] ??= { page: page + 1, labels: [] };
    pages[page].labels.push({
      xMm: leftMm + (cell % columns) * pitchXMm,
      yMm: topMm + Math.floor(cell / columns) * pitchYMm,
      widthMm: labelWidthMm,
      heightMm: labelHeightMm,
      lines,
    });
  });
  return pages;
}

export interface LabelPage<Lines> {
  /** From 1. */
  readonly page: number;
  readonly labels: readonly PlacedLabel<Lines>[];
}

export interface PlacedLabel<Lines> {
  readonly xMm: number;
  readonly yMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly lines: Lines;
}

/** A sheet of labels as it is sold, by its measures alone. */
export interface LabelSheetGeometry {
  /** For the command line: "A4-5x13". */
  readonly id: string;
  /** For people: "A4, 5 × 13 of 38.1 × 21.2 mm". */
  readonly name: string;
  readonly paper: "A4" | "Letter";
  readonly columns: number;
  readonly rows: number;
  readonly labelWidthMm: number;
  readonly labelHeightMm: number;
  /** Of the first label. */
  readonly leftMm: number;
  readonly topMm: number;
  /** From one label to the next. */
  readonly pitchXMm: number;
  readonly pitchYMm: number;
}

/** A4 is 210 × 297 mm (ISO 216), Letter 8½ × 11 in. */
export const paperMm = {
  A4: { widthMm: 210, heightMm: 297 },
  Letter: { widthMm: 215.9, heightMm: 279.4 },
} as const;

/**
 * Label sheets that are widely sold, smallest labels first within a paper. Measures: common practice, no source. Compare a print
 * on plain paper with the sheet before printing on labels.
 */
export const labelSheets: readonly LabelSheetGeometry[] = [
  centred({ paper: "A4", columns: 5, rows: 13, labelWidthMm: 38.1, labelHeightMm: 21.2, gapXMm: 2.5 }),
  centred({ paper: "A4", columns: 4, rows: 10, labelWidthMm: 48.5, labelHeightMm: 25.4, gapXMm: 0 }),
  centred({ paper: "A4", columns: 3, rows: 7, labelWidthMm: 63.5, labelHeightMm: 38.1, gapXMm: 2.5 }),
  centred({ paper: "A4", columns: 3, rows: 8, labelWidthMm: 70, labelHeightMm: 37, gapXMm: 0 }),
  centred({ paper: "Letter", columns: 4, rows: 20, labelWidthMm: 44.45, labelHeightMm: 12.7, gapXMm: 7.62 }),
  centred({
    paper: "Letter",
    columns: 3,
    rows: 10,
    labelWidthMm: 66.675,
    labelHeightMm: 25.4,
    gapXMm: 3.175,
  }),
];

/** Rows touch one another; the rest of the page is the same on both sides. */
function centred({
  gapXMm,
  ...sheet
}: Pick<LabelSheetGeometry, "paper" | "columns" | "rows" | "labelWidthMm" | "labelHeightMm"> & {
  readonly gapXMm: number;
}): LabelSheetGeometry {
  const { paper, columns, rows, labelWidthMm, labelHeightMm } = sheet;
  const { widthMm, heightMm } = paperMm[paper];
  const size = `${Math.round(labelWidthMm * 10) / 10} × ${Math.round(labelHeightMm * 10) / 10} mm`;
  return {
    ...sheet,
    id: `${paper}-${columns}x${rows}`,
    name: `${paper}, ${columns} × ${rows} of ${size}`,
    pitchXMm: labelWidthMm + gapXMm,
    pitchYMm: labelHeightMm,
    leftMm: (widthMm - columns * labelWidthMm - (columns - 1) * gapXMm) / 2,
    topMm: (heightMm - rows * labelHeightMm) / 2,
  };
}
