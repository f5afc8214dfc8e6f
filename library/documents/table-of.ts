import { formatRounded } from "../rules/wording/format-number.ts";
import type { Cell, Column, Quantity, Table } from "./table.ts";

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

/** A column that people read in another form. */
export function forPrograms<Row>(column: ColumnOf<Row>): ColumnOf<Row> {
  return { ...column, only: "programs" };
}

/** A column that programs read in another form. */
export function forPeople<Row>(column: ColumnOf<Row>): ColumnOf<Row> {
  return { ...column, only: "people" };
}

/** Empty, for a pen. */
export function toFillIn<Row>(id: string, title: string): ColumnOf<Row> {
  return { id, title, align: "start", toFillIn: true, cell: () => null };
}

/** A cell with a number: three significant figures for people, all of them for calculations. */
export function quantity(value: number): Quantity {
  return { value, text: formatRounded(value) };
}
