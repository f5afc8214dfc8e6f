import type { Cell, Column, Table } from "../../library/documents/table.ts";
import { tableForPeople } from "../../library/documents/table-for-people.ts";
import { type Paint, printable } from "./terminal.ts";

/**
 * A table for a terminal: columns aligned, long cells on several lines, empty columns left out. A table wider than the screen is
 * set in several parts below each other; each repeats the first columns. Our own: these parts, and keeping a stranger's control
 * characters off the screen, are most of it.
 */
export function textTable(whole: Table, paint: Paint): string {
  const table = tableForPeople(whole);
  const notes = table.notes.flatMap((note) =>
    wrapped(printable(note), widest - 2, [betweenWords]).map(noteLine),
  );
  const head = paint("strong", printable(table.title));
  if (table.rows.length === 0) return [head, "  no entries", ...notes, ""].join("\n");
  const columns = table.columns.flatMap((column, index): TextColumn[] => {
    const cells = table.rows.map((row) => cellLines(row[index] ?? null));
    if (!column.toFillIn && cells.every((lines) => lines.join("") === "")) return [];
    const title = printable(column.title);
    const lines = [[title], ...cells].flat();
    const width = lines.reduce((most, text) => Math.max(most, cellsWide(text)), column.toFillIn ? 8 : 0);
    return [{ column, title, cells, width }];
  });
  const parts = partsOf(columns).map((part) => setPart(part, table.rows.length, paint));
  return [head, parts.join("\n\n"), ...notes, ""].join("\n");
}

/** The usual width of a terminal. */
const widest = 140;
/** A longer cell continues on the next line. */
const widestCell = 44;
/** Between two columns. */
const gap = "  ";

interface TextColumn {
  readonly column: Column;
  readonly title: string;
  /** By row, the lines of its cell. */
  readonly cells: readonly (readonly string[])[];
  readonly width: number;
}

function cellLines(cell: Cell): readonly string[] {
  if (cell === null) return [""];
  return wrapped(printable(typeof cell === "string" ? cell : cell.text), widestCell);
}

/** Columns that fit side by side; each further part begins with the columns that identify its rows. */
function partsOf(columns: readonly TextColumn[]): TextColumn[][] {
  const key = keyOf(columns);
  const parts: TextColumn[][] = [[]];
  for (const column of columns) {
    const part = parts.at(-1)!;
    if (part.length > key.length && widthOf([...part, column]) > widest) parts.push([...key, column]);
    else part.push(column);
  }
  return parts;
}

/** The first columns that together identify the rows, three at most; a number alone is meaningless to people. */
function keyOf(columns: readonly TextColumn[]): readonly TextColumn[] {
  const rows = columns[0]!.cells.length;
  for (let many = columns[0]!.column.align === "end" ? 2 : 1; many < 3; many++) {
    const key = columns.slice(0, many);
    const told = new Set(
      Array.from({ length: rows }, (_, row) => JSON.stringify(key.map(({ cells }) => cells[row]))),
    );
    if (told.size === rows) return key;
  }
  return columns.slice(0, 3);
}

function widthOf(columns: readonly TextColumn[]): number {
  return columns.reduce((sum, { width }) => sum + width + gap.length, -gap.length);
}

function setPart(columns: readonly TextColumn[], rows: number, paint: Paint): string {
  const lines = [paint("faint", line(columns.map((column) => [column, column.title])))];
  for (let row = 0; row < rows; row++) {
    const height = Math.max(...columns.map(({ cells }) => cells[row]!.length));
    for (let at = 0; at < height; at++) {
      const texts = columns.map((column): [TextColumn, string] => {
        const toFill = column.column.toFillIn && at === 0 ? "_".repeat(column.width) : "";
        return [column, column.cells[row]![at] || toFill];
      });
      lines.push(line(texts));
    }
  }
  return lines.map((text) => `  ${text}`.trimEnd()).join("\n");
}

function line(cells: readonly (readonly [TextColumn, string])[]): string {
  return cells
    .map(([{ column, width }, text]) => {
      const space = " ".repeat(Math.max(0, width - cellsWide(text)));
      return column.align === "end" ? `${space}${text}` : `${text}${space}`;
    })
    .join(gap);
}

function noteLine(text: string, index: number): string {
  return index === 0 ? `  ${text}` : `    ${text}`;
}

/**
 * Broken after a semicolon if possible, else after a comma, else between words. A word longer than the line is not broken,
 * because half a name is another name.
 */
function wrapped(text: string, most: number, [separator, ...finer] = breaks): string[] {
  const lines: string[] = [];
  for (const piece of separator ? text.split(separator) : [text]) {
    const before = lines.at(-1);
    const longer = before === undefined ? piece : `${before} ${piece}`;
    if (before !== undefined && cellsWide(longer) <= most) lines[lines.length - 1] = longer;
    else if (cellsWide(piece) <= most || finer.length === 0) lines.push(piece);
    else lines.push(...wrapped(piece, most, finer));
  }
  return lines;
}

const betweenWords = / /;
const breaks: readonly RegExp[] = [/(?<=;) /, /(?<=,) /, betweenWords];

/** The width of a text in terminal cells: East Asian characters and emoji take two, combining marks none. */
function cellsWide(text: string): number {
  let width = 0;
  for (const character of text) {
    if (/\p{M}/u.test(character)) continue;
    width += doubleWidth.test(character) ? 2 : 1;
  }
  return width;
}

const doubleWidth =
  /[\u1100-\u115f\u2e80-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe6f\uff00-\uff60\uffe0-\uffe6]|\p{Emoji_Presentation}/u;
