import { formatDistinct, formatRounded } from "../../rules/wording/format-number.ts";
import type { Cell, Column, Table } from "../table.ts";
import type { Block } from "./report-content.ts";

/* Cells for the numbers in the report's tables. All are unrounded until here. */

/** A number with three significant figures. */
export function quantity(value: number): Cell {
  return { value, text: formatRounded(value) };
}

/** A value and its limit, with enough figures to differ if they do. */
export function valueAndLimit(value: number, limit: number): readonly [Cell, Cell] {
  const [is, may] = formatDistinct(value, limit);
  return [
    { value, text: is },
    { value: limit, text: may },
  ];
}

export function textColumn(id: string, title: string): Column {
  return { id, title, align: "start" };
}

export function numberColumn(id: string, title: string): Column {
  return { id, title, align: "end" };
}

/** A table as a block; none if it has no rows, because an empty frame has no information. An empty last column is dropped too. */
export function tableBlock(table: Table): readonly Block[] {
  if (table.rows.length === 0) return [];
  const last = table.columns.length - 1;
  const saysNothing = table.rows.every((row) => row[last] === "" || row[last] === null);
  if (!saysNothing) return [{ kind: "table", table }];
  const [columns, rows] = [table.columns.slice(0, last), table.rows.map((row) => row.slice(0, last))];
  return [{ kind: "table", table: { ...table, columns, rows } }];
}
