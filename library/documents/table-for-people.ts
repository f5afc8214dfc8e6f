import type { Cell, Column, Table } from "./table.ts";

/** Without the columns that are only for programs. */
export function tableForPeople(table: Table): Table {
  return withColumns(table, ({ only }) => only !== "programs");
}

/** Without the columns that are only for people. */
export function tableForPrograms(table: Table): Table {
  return withColumns(table, ({ only }) => only !== "people");
}

/**
 * Without the columns that say the same in every row, or the same as an earlier column: a sentence above the table states them
 * once. The first column and columns for a pen remain, and so does every column of a short table.
 */
export function withoutRepetition(table: Table): Table {
  const { columns, rows } = table;
  if (rows.length < fewestRows) return table;
  const texts = columns.map((_, index) => rows.map((row) => textOf(row[index] ?? null)));
  const left = new Set<Column>();
  const [same, empty]: [string[], string[]] = [[], []];
  for (const [index, column] of columns.entries()) {
    if (index === 0 || column.toFillIn) continue;
    const cells = texts[index]!;
    const like = columns.find((one, at) => at < index && !one.toFillIn && isEqual(texts[at]!, cells));
    const [first = ""] = cells;
    const isConstant = cells.every((cell) => cell === first);
    if (!isConstant && !like) continue;
    left.add(column);
    if (!isConstant) same.push(`${column.title}: as ${like!.title}`);
    else if (first === "") empty.push(column.title);
    else same.push(`${column.title}: ${first}`);
  }
  if (left.size === 0) return table;
  const above = [
    ...(same.length > 0 ? [`The same in every row: ${same.join("; ")}.`] : []),
    ...(empty.length > 0 ? [`Empty in every row: ${empty.join("; ")}.`] : []),
  ].join(" ");
  return { ...withColumns(table, (column) => !left.has(column)), above };
}

function isEqual(one: readonly string[], other: readonly string[]): boolean {
  return one.every((text, index) => text === other[index]);
}

/** Below this many rows, a column less saves no room. */
const fewestRows = 4;

export function textOf(cell: Cell): string {
  return cell === null ? "" : typeof cell === "string" ? cell : cell.text;
}

function withColumns(table: Table, isKept: (column: Column) => boolean): Table {
  const kept = table.columns.map(isKept);
  if (kept.every(Boolean)) return table;
  return {
    ...table,
    columns: table.columns.filter((_, index) => kept[index]),
    rows: table.rows.map((row) => row.filter((_, index) => kept[index])),
  };
}
