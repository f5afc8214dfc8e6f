import { drawSvg, naturalPtPerPx, type SvgPicture } from "./draw-svg.ts";
import type { Orientation, PageSize } from "./page-size.ts";
import { areaOf, type Pages } from "./pages.ts";
import { artifact, marked } from "./pdf-file.ts";
import { lineHeightPt, type TextStyle } from "./text-lines.ts";

/**
 * The layout for repeating a figure in readable parts, if its letters had to be made too small. Each part is on a page of its
 * own, with a strip of its neighbours at its edges, on as few pages as possible. Undefined if the figure is readable as it is.
 *
 * @param headPt the height that headings take on the first of these pages
 */
export function enlargement(
  { widthPx, heightPx }: SvgPicture,
  ptPerPx: number,
  size: PageSize,
  headPt = 0,
): Enlargement | undefined {
  if (ptPerPx >= readable.already) return undefined;
  const ways = (["landscape", "portrait"] as const).flatMap((orientation) => {
    const { width, top, bottom } = areaOf(size, orientation);
    const height = bottom - top - captionPt - headPt;
    return grids.map(({ columns, rows }): Enlargement => {
      const across = columns * width - (columns - 1) * overlapPt;
      const down = rows * height - (rows - 1) * overlapPt;
      return {
        orientation,
        headPt,
        columns,
        rows,
        ptPerPx: Math.min(naturalPtPerPx, across / widthPx, down / heightPx),
      };
    });
  });
  const fewest = ways
    .filter((way) => way.ptPerPx >= readable.again)
    .sort((a, b) => sheets(a) - sheets(b) || b.ptPerPx - a.ptPerPx)[0];
  return fewest ?? ways.sort((a, b) => b.ptPerPx - a.ptPerPx || sheets(a) - sheets(b))[0];
}

export interface Enlargement {
  readonly headPt: number;
  readonly orientation: Orientation;
  readonly columns: number;
  readonly rows: number;
  readonly ptPerPx: number;
}

export const sheets = ({ columns, rows }: Enlargement) => columns * rows;

/**
 * Draws the parts, row by row, each on a page of its own. If the figure is on no page before, the first part is on this page, and is
 * the figure's `element` for a screen reader; the others are artifacts.
 */
export function placeEnlarged(
  pages: Pages,
  picture: SvgPicture,
  {
    way,
    caption,
    element,
  }: {
    readonly way: Enlargement;
    readonly caption: string;
    readonly element?: PDFKit.PDFStructureElement;
  },
): void {
  const { pdf, text } = pages;
  const { orientation, headPt, columns, rows, ptPerPx } = way;
  for (let part = 0; part < sheets(way); part++) {
    if (part > 0 || !element) pages.newPage(orientation);
    const { left, width } = pages.area;
    const top = pages.y;
    const height = pages.fullPt - captionPt - headPt;
    const [column, row] = [part % columns, Math.floor(part / columns)];
    const x = left - column * (width - overlapPt);
    const y = top - row * (height - overlapPt);
    const draw = () => {
      pdf.doc.save().rect(left, top, width, height).clip();
      drawSvg(pdf, picture, { x, y, ptPerPx });
      pdf.doc.restore();
      const place = `part ${part + 1} of ${sheets(way)}${rows > 1 ? `: row ${row + 1}, column ${column + 1}` : ""}`;
      const [line = ""] = text.lines(`${place}, enlarged. ${caption}`, small, width);
      text.draw(line, small, { x: left, y: top + height + 4 });
    };
    if (part === 0 && element) marked(pdf, { element, tag: "Figure" }, draw);
    else artifact(pdf, draw);
    pages.y = pages.area.bottom;
  }
}

/** Points a pixel. Letters of 10 px are then 4.5 pt and 5.3 pt; 4 pt is the smallest size that is printed to be read. */
const readable = { already: 0.45, again: 0.53 };

/** The overlap of two neighbours: enough for a label that the edge of one cuts. */
const overlapPt = 70;

const small: TextStyle = { bold: false, sizePt: 7.5 };
const captionPt = lineHeightPt(small) + 8;

/** More sheets than these would need a floor to lay them out. */
const grids = [1, 2, 3, 4].flatMap((columns) =>
  [1, 2, 3, 4]
    .map((rows) => ({ columns, rows }))
    .filter(({ rows }) => columns * rows > 1 && columns * rows <= 8),
);
