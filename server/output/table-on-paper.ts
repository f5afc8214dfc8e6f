import type { Cell, Table } from "../../library/documents/table.ts";
import { cellText, columnWidths, innerPt, padding } from "./column-widths.ts";
import type { Pages } from "./pages.ts";
import { artifact, marked, structure } from "./pdf-file.ts";
import { lineHeightPt, type TextSetter, type TextStyle } from "./text-lines.ts";

/**
 * A table laid out for paper of this width. Its head is repeated on every page; a row is broken only if it would take most of a
 * page. The time is linear in the number of rows.
 */
export function tableOnPaper(table: Table, text: TextSetter, widthPt: number): TableOnPaper {
  const { sizePt, widths, crammed } = columnWidths(table, text, widthPt);
  const head: TextStyle = { bold: true, sizePt };
  const body: TextStyle = { bold: false, sizePt };
  const linesOf = (cells: readonly string[], style: TextStyle): CellLines =>
    cells.map((cell, index) => text.lines(cell, style, innerPt(widths[index]!)));
  const headLines = linesOf(
    table.columns.map(({ title }) => title),
    head,
  );
  const rowLines = (row: readonly Cell[]) => linesOf(row.map(cellText), body);
  const longest = (lines: CellLines) => Math.max(...lines.map(({ length }) => length));
  const heightPt = (lines: CellLines) => longest(lines) * lineHeightPt(body) + 2 * padding.y;
  const penHeightPt = table.columns.some(({ toFillIn }) => toFillIn) ? penPt : 0;
  const rowHeightPt = (lines: CellLines) => Math.max(heightPt(lines), penHeightPt);

  function drawCells(
    pages: Pages,
    lines: CellLines,
    style: TextStyle,
    around: (index: number, draw: () => void) => void,
  ) {
    let x = pages.area.left;
    lines.forEach((cellLines, index) => {
      const width = widths[index]!;
      const { align, toFillIn } = table.columns[index]!;
      // The lines of a head rest on its rule, which keeps a short title near its cells.
      const above = style === head ? longest(lines) - cellLines.length : 0;
      const left = x + padding.x;
      around(index, () => {
        cellLines.forEach((line, number) => {
          const free = align === "end" && !toFillIn ? innerPt(width) - text.widthPt(line, style) : 0;
          const y = pages.y + padding.y + (above + number) * lineHeightPt(style);
          text.draw(line, style, { x: left + Math.max(free, 0), y });
        });
      });
      x += width;
    });
  }

  function drawHead(pages: Pages, around: (index: number, draw: () => void) => void) {
    const height = heightPt(headLines);
    drawBox(pages, { widths, height, table, head: true });
    drawCells(pages, headLines, head, around);
    pages.y += height;
  }

  return {
    crammed,
    leadPt:
      heightPt(headLines) + table.rows.slice(0, 2).reduce((sum, row) => sum + rowHeightPt(rowLines(row)), 0),
    async place(pages, breathe, notesPt) {
      const { pdf } = pages;
      const element = structure(pdf, pdf.root, "Table");
      const first = structure(pdf, element, "TR");
      drawHead(pages, (_, draw) =>
        marked(pdf, { element: structure(pdf, first, "TH", { scope: "Column" }), tag: "TH" }, draw),
      );
      const onNewPage = () => {
        pages.newPage();
        drawHead(pages, (_, draw) => artifact(pdf, draw));
      };
      for (const [index, row] of table.rows.entries()) {
        if (index % 50 === 49) await breathe();
        const line = structure(pdf, element, "TR");
        const cells = row.map(() => structure(pdf, line, "TD"));
        const place = (lines: CellLines) => {
          const height = rowHeightPt(lines);
          drawBox(pages, { widths, height, table, head: false });
          drawCells(pages, lines, body, (cell, draw) =>
            marked(pdf, { element: cells[cell]!, tag: "TD" }, draw),
          );
          pages.y += height;
        };
        let lines = rowLines(row);
        const linesThatFit = () => Math.floor((pages.freePt - 2 * padding.y) / lineHeightPt(body));
        const breaksHere = rowHeightPt(lines) > mostInOnePiece * pages.fullPt && linesThatFit() >= 4;
        // The last two rows stay on one page, and the last one keeps the notes with it.
        const next =
          index === table.rows.length - 2 ? rowHeightPt(rowLines(table.rows.at(-1)!)) + notesPt : 0;
        const together = rowHeightPt(lines) + (index > 1 && next < pages.fullPt / 3 ? next : 0);
        if (together > pages.freePt && !breaksHere) onNewPage();
        while (rowHeightPt(lines) > pages.freePt) {
          const fit = Math.max(1, linesThatFit());
          place(lines.map((cell) => cell.slice(0, fit)));
          lines = lines.map((cell) => cell.slice(fit));
          onNewPage();
        }
        place(lines);
        // A complete row is written out: a long table is not kept in memory twice.
        line.end();
      }
    },
  };
}

export interface TableOnPaper {
  /** Words have to be broken, or most rows take many lines: a wider page would help. */
  readonly crammed: boolean;
  /** Height of the parts that belong together at its beginning: the head and two rows. */
  readonly leadPt: number;
  /**
   * @param breathe called every few dozen rows
   * @param notesPt height of the notes after it
   */
  place(pages: Pages, breathe: () => Promise<void>, notesPt: number): Promise<void>;
}

/** The lines of each cell of a row. */
type CellLines = readonly (readonly string[])[];

/** Fraction of a page; a higher row is broken. */
const mostInOnePiece = 0.5;

/** Rows for handwriting are as high as a pen needs: common practice, no source. */
const penPt = 18;

function drawBox(
  { pdf, area, y }: Pages,
  { widths, height, table, head }: { widths: readonly number[]; height: number; table: Table; head: boolean },
): void {
  artifact(pdf, () => {
    const { doc } = pdf;
    doc.save();
    if (head) doc.rect(area.left, y, area.width, height).fill("#e9e9e9");
    const bottom = y + height;
    doc.lineWidth(head ? 0.8 : 0.3).strokeColor(head ? "#000000" : "#8a8a8a");
    doc
      .moveTo(area.left, bottom)
      .lineTo(area.left + area.width, bottom)
      .stroke();
    doc.lineWidth(0.3).strokeColor("#8a8a8a");
    let x = area.left;
    table.columns.forEach(({ toFillIn }, index) => {
      const right = x + widths[index]!;
      if (toFillIn) doc.rect(x, y, widths[index]!, height).stroke();
      x = right;
    });
    doc.restore();
  });
}
