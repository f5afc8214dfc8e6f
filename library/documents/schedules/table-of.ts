import type { Cell, Column, Table } from "../table.ts";

/** A table of things of one kind: what each column says of one of them stands beside the column. */
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

/** Words, from the left. */
export function words<Row>(id: string, title: string, cell: (row: Row) => Cell): ColumnOf<Row> {
  return { id, title, align: "start", cell };
}

/** Numbers, to the right. */
export function numbers<Row>(id: string, title: string, cell: (row: Row) => Cell): ColumnOf<Row> {
  return { id, title, align: "end", cell };
}

/** Empty, for a pen. */
export function toFillIn<Row>(id: string, title: string): ColumnOf<Row> {
  return { id, title, align: "start", toFillIn: true, cell: () => null };
}
