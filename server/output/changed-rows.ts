import { extname } from "node:path";
import { csvRecords } from "./csv-records.ts";
import { csvMark } from "./seal.ts";

/**
 * The rows of a list on disk that would be lost, named by their first cells: those with an entry in a column that is left empty
 * for a pen; if there are none, those that the new list does not have in exactly this form. Empty for files that are no lists.
 */
export function changedRows(path: string, before: string, now: string): readonly string[] {
  const read = readers[extname(path).toLowerCase()];
  if (!read) return [];
  const [old, fresh] = [read(before), read(now)];
  const filled = old.rows.filter((row) =>
    row.some((cell, column) => cell !== "" && isForPen(old, fresh, column)),
  );
  const known = new Set(fresh.rows.map(keyOf));
  const other = filled.length > 0 ? filled : old.rows.filter((row) => !known.has(keyOf(row)));
  return other.map((row) =>
    row
      .filter((cell) => cell !== "")
      .slice(0, 2)
      .join(", "),
  );
}

interface List {
  readonly titles: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** A column that is empty in each row of the new list, or missing from it. */
function isForPen(old: List, fresh: List, column: number): boolean {
  const title = old.titles[column];
  const at = title === undefined ? -1 : fresh.titles.indexOf(title);
  return at < 0 || fresh.rows.every((row) => (row[at] ?? "") === "");
}

function keyOf(row: readonly string[]): string {
  return JSON.stringify(row);
}

const readers: Readonly<Record<string, (text: string) => List>> = {
  ".csv": (text) => {
    const [titles = [], ...rows] = csvRecords(text).map(({ cells }) => cells);
    const seal = titles.findIndex((title) => title.startsWith(csvMark));
    const withoutSeal = (cells: readonly string[]) => cells.filter((_, column) => column !== seal);
    return { titles: withoutSeal(titles), rows: rows.map(withoutSeal) };
  },
  ".md": (text) => {
    const lines = text.split(/\r?\n/).filter((line) => line.startsWith("|"));
    const [titles = [], , ...rows] = lines.map((line) =>
      line
        .slice(1)
        .split(/(?<!\\)\|/)
        .slice(0, -1)
        .map((cell) => cell.trim()),
    );
    return { titles, rows };
  },
};
