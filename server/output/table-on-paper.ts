import type { Cell, Table } from "../../library/documents/table.ts";
import type { Pages } from "./pages.ts";
import { artifact, marked, structure } from "./pdf-file.ts";
import { lineHeightPt, type TextSetter, type TextStyle } from "./text-lines.ts";

/**
 * A table as it will stand on paper of this width. Its head is repeated on every page that it goes on to; a row is broken only
 * where it is higher than a whole page. The time it takes grows with the rows and no faster.
 */
export function tableOnPaper(table: Table, text: TextSetter, widthPt: number): TableOnPaper {
  const columns = measured(table, text);
  const sizePt = sizes.find((size) => minimumPt(columns, size) <= widthPt) ?? sizes.at(-1)!;
  const widths = shared(columns, sizePt, widthPt);
  const head: TextStyle = { bold: true, sizePt };
  const body: TextStyle = { bold: false, sizePt };
  const headLines = table.columns.map(({ title }, index) => text.lines(title, head, innerPt(widths[index]!)));
  const rowLines = (row: readonly Cell[]) =>
    row.map((cell, index) => text.lines(cellText(cell), body, innerPt(widths[index]!)));
  const headLength = Math.max(...headLines.map(({ length }) => length));
  const heightPt = (lines: readonly (readonly string[])[], style: TextStyle) =>
    Math.max(...lines.map(({ length }) => length)) * lineHeightPt(style) + 2 * padding.y;
  const rowHeightPt = (lines: readonly (readonly string[])[]) =>
    Math.max(heightPt(lines, body), toWriteIn(table) ? penPt : 0);
  const headPt = heightPt(headLines, head);
  const leadPt = headPt + table.rows.slice(0, 2).reduce((sum, row) => sum + rowHeightPt(rowLines(row)), 0);
  return {
    crammed: minimumPt(columns, sizePt) > widthPt || bestPt(columns, sizes[0]!) > crammedFrom * widthPt,
    leadPt,
    async place(pages, breathe) {
      const { pdf } = pages;
      const element = structure(pdf, pdf.root, "Table");
      const row = (lines: readonly (readonly string[])[], style: TextStyle, cells: Cells) => {
        const height = cells === "body" ? rowHeightPt(lines) : headPt;
        drawBox(pages, { widths, height, table, head: cells !== "body" });
        const line = cells === "repeated head" ? undefined : structure(pdf, element, "TR");
        const tag = cells === "body" ? "TD" : "TH";
        let x = pages.area.left;
        lines.forEach((cellLines, index) => {
          const width = widths[index]!;
          const draw = () =>
            cellLines.forEach((one, number) => {
              const free = innerPt(width) - text.widthPt(one, style);
              const { align, toFillIn } = table.columns[index]!;
              const indent = padding.x + (align === "end" && !toFillIn ? Math.max(free, 0) : 0);
              // The lines of a head stand on its rule, so that short titles are not far from their cells.
              const above = cells === "body" ? 0 : headLength - cellLines.length;
              const y = pages.y + padding.y + (above + number) * lineHeightPt(style);
              text.draw(one, style, { x: x + indent, y });
            });
          if (!line) artifact(pdf, draw);
          else {
            const scope = tag === "TH" ? { scope: "Column" as const } : {};
            marked(pdf, { element: structure(pdf, line, tag, scope), tag }, draw);
          }
          x += width;
        });
        // What is complete is written out, so that a long table is not kept in memory twice.
        line?.end();
        pages.y += height;
      };
      pages.makeRoom(leadPt);
      row(headLines, head, "head");
      for (const [index, cells] of table.rows.entries()) {
        if (index % 50 === 49) await breathe();
        let lines = rowLines(cells);
        if (rowHeightPt(lines) > pages.freePt) {
          pages.newPage();
          row(headLines, head, "repeated head");
        }
        while (rowHeightPt(lines) > pages.freePt) {
          const fit = Math.max(1, Math.floor((pages.freePt - 2 * padding.y) / lineHeightPt(body)));
          row(
            lines.map((cell) => cell.slice(0, fit)),
            body,
            "body",
          );
          lines = lines.map((cell) => cell.slice(fit));
          pages.newPage();
          row(headLines, head, "repeated head");
        }
        row(lines, body, "body");
      }
    },
  };
}

export interface TableOnPaper {
  /** Words have to be broken, or most rows take many lines: a wider page would serve it. */
  readonly crammed: boolean;
  /** What belongs together at its beginning: the head and two rows. */
  readonly leadPt: number;
  /** @param breathe called every few dozen rows */
  place(pages: Pages, breathe: () => Promise<void>): Promise<void>;
}

type Cells = "head" | "repeated head" | "body";

/** Of the letters, pt: the largest at which nothing has to be broken. */
const sizes = [8, 7.5, 7, 6.5];

/** How many times the width of the page all columns could use without any second line. */
const crammedFrom = 1.3;

const padding = { x: 3.5, y: 2.4 };

const innerPt = (widthPt: number) => widthPt - 2 * padding.x;

/** Where something is written in by hand, rows are as high and columns as wide as a pen needs: common practice, no source. */
const penPt = 22;
const penColumnPt = 62;

const toWriteIn = (table: Table) => table.columns.some(({ toFillIn }) => toFillIn);

const cellText = (cell: Cell) => (cell === null ? "" : typeof cell === "string" ? cell : cell.text);

/** Widths at a size of 1 pt: `least` without breaking what should stay whole, `best` without any second line. */
interface MeasuredColumn {
  readonly least: number;
  readonly best: number;
  /** Of its title on one line; a narrow column may have it on two. */
  readonly title: number;
  readonly pen: boolean;
}

function measured({ columns, rows }: Table, text: TextSetter): MeasuredColumn[] {
  const regular: TextStyle = { bold: false, sizePt: 1 };
  const bold: TextStyle = { bold: true, sizePt: 1 };
  return columns.map(({ title, align, toFillIn }, index) => {
    let least = text.widestWordPt(title, bold);
    let best = least;
    for (const row of rows) {
      const cell = cellText(row[index] ?? null);
      const whole = text.widthPt(cell, regular);
      best = Math.max(best, whole);
      // A number is not broken; of words, the longest of all does not set the width for everybody.
      least = Math.max(least, align === "end" ? whole : Math.min(text.widestWordPt(cell, regular), longWord));
    }
    return { least, best, title: text.widthPt(title, bold), pen: toFillIn === true };
  });
}

/** In multiples of the size of the letters. */
const longWord = 11;

function minimumPt(columns: readonly MeasuredColumn[], sizePt: number): number {
  return columns.reduce((sum, column) => sum + leastPt(column, sizePt), 0);
}

function leastPt({ least, pen }: MeasuredColumn, sizePt: number): number {
  return Math.max(least * sizePt, pen ? penColumnPt : 0) + 2 * padding.x;
}

function bestPt(columns: readonly MeasuredColumn[], sizePt: number): number {
  return columns.reduce(
    (total, column) => total + Math.max(column.best * sizePt, leastPt(column, sizePt)),
    0,
  );
}

/**
 * Every column gets its least; then, as far as there is room, what its cells want, what its title wants, and its share of the
 * rest, which goes to the columns for the pen where there are some.
 */
function shared(columns: readonly MeasuredColumn[], sizePt: number, widthPt: number): number[] {
  const least = columns.map((column) => leastPt(column, sizePt));
  if (total(least) > widthPt) return least.map((width) => (width * widthPt) / total(least));
  const wanting = (width: number) => width * sizePt + 2 * padding.x + 0.01;
  const forCells = widened(
    least,
    columns.map(({ best }) => wanting(best)),
    widthPt,
  );
  const forTitles = widened(
    forCells,
    columns.map(({ title }) => wanting(title)),
    widthPt,
  );
  const spare = widthPt - total(forTitles);
  const pens = columns.filter(({ pen }) => pen).length;
  return forTitles.map((width, index) => {
    if (pens > 0) return width + (columns[index]!.pen ? spare / pens : 0);
    return width + (spare * width) / total(forTitles);
  });
}

/** Widths moved towards those that are wanted: all the way, or each by the same part of it. */
function widened(widths: readonly number[], wanted: readonly number[], widthPt: number): number[] {
  const missing = widths.map((width, index) => Math.max(0, wanted[index]! - width));
  const part = Math.min(1, total(missing) > 0 ? (widthPt - total(widths)) / total(missing) : 0);
  return widths.map((width, index) => width + missing[index]! * part);
}

const total = (numbers: readonly number[]) => numbers.reduce((sum, one) => sum + one, 0);

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
