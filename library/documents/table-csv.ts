import type { Cell, Table } from "./table.ts";
import { tableForPrograms } from "./table-for-people.ts";

/**
 * A table as CSV after RFC 4180: fields separated by commas, records by CRLF; fields that need it are in double quotes, a quote
 * within them doubled. The first record names the columns by their ids. Numbers have ten figures, more than anybody measures, a
 * point and no thousands separators: a spreadsheet can calculate with them. Notes are left out: a spreadsheet would take them for
 * rows.
 *
 * It begins with a byte order mark: without one, widely used spreadsheets assume the system's own encoding and show "Ω", "mm²"
 * and every name that is not English as rubbish; readers of CSV leave it out, or have an option for it.
 *
 * Text that a spreadsheet could take for a formula gets an apostrophe before it, which is shown: a plan may be a stranger's.
 *
 * Our own: quoting a field is one line, and no package knows the rules above for numbers. The tests read it with csv-parse.
 */
export function tableCsv(table: Table): string {
  const { columns, rows } = tableForPrograms(table);
  const records = [columns.map(({ id }) => id), ...rows.map((row) => row.map(cellText))];
  return `${byteOrderMark}${records.map((record) => `${record.map(field).join(",")}\r\n`).join("")}`;
}

const byteOrderMark = "\uFEFF";

function cellText(cell: Cell): string {
  if (cell === null) return "";
  return typeof cell === "string" ? harmless(cell) : plainNumber(cell.value);
}

/** Without the solver's rounding, 4 and not 3.9999999999997, and never with an exponent that a reader might not know. */
function plainNumber(value: number): string {
  if (!Number.isFinite(value)) return "";
  const written = String(Number(value.toPrecision(10)) + 0);
  return written.includes("e") ? value.toFixed(20).replace(/\.?0+$/, "") : written;
}

/**
 * Text that begins, after any space, like a formula or a command: equals, plus, minus, at, also in full width, a tab or a line
 * break. Numbers never come here: a minus before one stays a minus.
 */
function harmless(text: string): string {
  return formula.test(text) ? `'${text}` : text;
}

const formula = /^(?:[\t\r\n]|[\s\p{Cf}\p{Cc}]*[=+\-@\uFF1D\uFF0B\uFF0D\uFF20\u2212|%])/u;

function field(text: string): string {
  return /[",\r\n;\t]|^\s|\s$|^'/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
