import type { Cell, Table } from "../../library/documents/table.ts";
import { lineHeightPt, type TextSetter, type TextStyle } from "./text-lines.ts";

/**
 * The width of each column of a table on paper, and the letter size: the largest that needs no broken words and keeps rows low.
 * Every column gets its minimum. The remaining width first serves cells, then titles; the rest is shared, or goes to the columns
 * for the pen if there are any.
 */
export function columnWidths(table: Table, text: TextSetter, widthPt: number): ColumnWidths {
  const columns = measured(table, text);
  const whole = sizes.filter((size) => minimumPt(columns, size) <= widthPt);
  const usual = whole.filter((size) => size >= smallestUsual);
  const most = columns.some(({ pen }) => pen) ? crammedWithPen : crammedFrom;
  const roomy = (size: number) => wishedPt(columns, size) <= most * widthPt;
  const fitting = usual.find(roomy) ?? usual.at(-1);
  const sizePt = fitting
    ? lowest(
        table,
        text,
        usual.filter((size) => size <= fitting),
      )
    : (whole[0] ?? sizes.at(-1)!);
  return {
    sizePt,
    widths: shared(columns, sizePt, widthPt),
    crammed: usual.length === 0 || !roomy(sizes[0]!),
  };

  /** A smaller size only for a long table, and only if it saves much of its height. */
  function lowest(of: Table, setter: TextSetter, [first, ...smaller]: readonly number[]): number {
    if (of.rows.length < longTable) return first!;
    const heights = new Map([first!, ...smaller].map((size) => [size, heightPt(of, setter, size)]));
    const best = smaller.reduce(
      (one, other) => (heights.get(other)! < heights.get(one)! ? other : one),
      first!,
    );
    return heights.get(best)! < worthIt * heights.get(first!)! ? best : first!;
  }

  function heightPt({ rows }: Table, setter: TextSetter, size: number): number {
    const widths = shared(columns, size, widthPt);
    const style: TextStyle = { bold: false, sizePt: size };
    return rows.reduce((sum, row) => {
      const lines = row.map(
        (cell, index) => setter.lines(cellText(cell), style, innerPt(widths[index]!)).length,
      );
      return sum + Math.max(...lines) * lineHeightPt(style) + 2 * padding.y;
    }, 0);
  }
}

/** From this many rows on, a table is longer than a page. */
const longTable = 20;
/** Fraction of the height that a smaller size must reach. */
const worthIt = 0.85;

export interface ColumnWidths {
  readonly sizePt: number;
  /** Together as wide as the table, pt. */
  readonly widths: readonly number[];
  /** Words have to be broken, or most rows take many lines: a wider page would help. */
  readonly crammed: boolean;
}

export const cellText = (cell: Cell) => (cell === null ? "" : typeof cell === "string" ? cell : cell.text);

/** Between the edge of a cell and its text, pt. */
export const padding = { x: 4.5, y: 2.4 };

export const innerPt = (widthPt: number) => widthPt - 2 * padding.x;

/** Letter sizes, pt. The last two only keep words whole. */
const sizes = [8, 7.5, 7, 6.5, 6, 5.5];
const smallestUsual = 6.5;

/** How many page widths the columns may wish for before their rows grow tall. */
const crammedFrom = 1.3;
/** Rows for handwriting are high anyway. */
const crammedWithPen = 1.6;

/** Minimum width of a column for handwriting, pt: common practice, no source. */
const penColumnPt = 52;

/** Widths at a size of 1 pt: `least` without breaking text that should stay whole, `best` without any second line. */
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
      // A number is not broken. A long word with marks in it may go on behind one of them.
      const word = Math.max(
        Math.min(text.widestWordPt(cell, regular), longWord),
        Math.min(text.widestPiecePt(cell, regular), endlessWord),
      );
      least = Math.max(least, align === "end" ? whole : word);
    }
    return { least, best, title: text.widthPt(title, bold), pen: toFillIn === true };
  });
}

/** In multiples of the letter size. */
const longWord = 11;
/** No language has longer ones; only these are broken anywhere. */
const endlessWord = 30;
const sentence = 18;

function minimumPt(columns: readonly MeasuredColumn[], sizePt: number): number {
  return columns.reduce((sum, column) => sum + leastPt(column, sizePt), 0);
}

function leastPt({ least, pen }: MeasuredColumn, sizePt: number): number {
  return Math.max(least * sizePt, pen ? penColumnPt : 0) + 2 * padding.x;
}

/** For the shortest rows. Sentences take several lines anyway, and wish for no more than {@link sentence}. */
function wishedPt(columns: readonly MeasuredColumn[], sizePt: number): number {
  return total(
    columns.map((column) => Math.max(Math.min(column.best, sentence) * sizePt, leastPt(column, sizePt))),
  );
}

function shared(columns: readonly MeasuredColumn[], sizePt: number, widthPt: number): number[] {
  const least = columns.map((column) => leastPt(column, sizePt));
  if (total(least) > widthPt) return least.map((width) => (width * widthPt) / total(least));
  const around = 2 * padding.x + 0.01;
  const forCells = evenRows(
    least,
    columns.map(({ best }) => best * sizePt),
    widthPt,
  );
  const forTitles = widened(
    forCells,
    columns.map(({ title }) => title * sizePt + around),
    widthPt,
  );
  const spare = widthPt - total(forTitles);
  const pens = columns.filter(({ pen }) => pen).length;
  return forTitles.map((width, index) => {
    if (pens > 0) return width + (columns[index]!.pen ? spare / pens : 0);
    return width + (spare * width) / total(forTitles);
  });
}

/** Widths that give the longest cell of each column about the same number of lines, as few as fit. */
function evenRows(least: readonly number[], best: readonly number[], widthPt: number): number[] {
  // Text broken at words does not fill its lines.
  const at = (lines: number) =>
    best.map((width, index) => {
      const filled = lines === 1 ? width : (width / lines) * 1.12;
      return Math.max(least[index]!, filled + 2 * padding.x + 0.01);
    });
  if (total(at(1)) <= widthPt) return at(1);
  let [few, many] = [1, 1000];
  for (let round = 0; round < 40; round++) {
    const middle = (few + many) / 2;
    if (total(at(middle)) <= widthPt) many = middle;
    else few = middle;
  }
  const found = at(many);
  return total(found) <= widthPt ? found : [...least];
}

/** Widths enlarged to those wanted: fully, or each by the same fraction of its shortfall. */
function widened(widths: readonly number[], wanted: readonly number[], widthPt: number): number[] {
  const missing = widths.map((width, index) => Math.max(0, wanted[index]! - width));
  const part = Math.min(1, total(missing) > 0 ? (widthPt - total(widths)) / total(missing) : 0);
  return widths.map((width, index) => width + missing[index]! * part);
}

const total = (numbers: readonly number[]) => numbers.reduce((sum, one) => sum + one, 0);
