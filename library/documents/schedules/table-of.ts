import type { Cell, Column, Table } from "../table.ts";

/** A table of things of one kind: each column comes with the function for its cells. */
export function tableOf<Row>(
  head: Pick<Table, "id" | "title" | "notes">,
  columns: readonly ColumnOf<Row>[],
  rows: readonly Row[],
): Table {
  return {
    ...head,
    columns: columns.map(({ cell: _, ...column }) => column),
    rows: rows.map((row) => columns.map(({ cell }) => cell(row))),
  };
}

export interface ColumnOf<Row> extends Column {
  cell(row: Row): Cell;
}

/** Words, aligned left. */
export function words<Row>(id: string, title: string, cell: (row: Row) => Cell): ColumnOf<Row> {
  return { id, title, align: "start", cell };
}

/** Numbers, aligned right. */
export function numbers<Row>(id: string, title: string, cell: (row: Row) => Cell): ColumnOf<Row> {
  return { id, title, align: "end", cell };
}

/** Empty, for a pen. */
export function toFillIn<Row>(id: string, title: string): ColumnOf<Row> {
  return { id, title, align: "start", toFillIn: true, cell: () => null };
}
