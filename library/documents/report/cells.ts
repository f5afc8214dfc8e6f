import { formatDistinct, formatRounded } from "../../rules/wording/format-number.ts";
import type { Cell, Column, Table } from "../table.ts";
import type { Block } from "./report-content.ts";

/*
 * How the report puts numbers into tables. All are unrounded until here.
 */

/** A number with three significant figures. */
export function quantity(value: number): Cell {
  return { value, text: formatRounded(value) };
}

/** A value and its limit, told apart wherever they differ. */
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

/** A table as a block; none where it has no rows, because an empty frame says nothing. A last column without a word goes too. */
export function tableBlock(table: Table): readonly Block[] {
  if (table.rows.length === 0) return [];
  const last = table.columns.length - 1;
  const saysNothing = table.rows.every((row) => row[last] === "" || row[last] === null);
  if (!saysNothing) return [{ kind: "table", table }];
  const [columns, rows] = [table.columns.slice(0, last), table.rows.map((row) => row.slice(0, last))];
  return [{ kind: "table", table: { ...table, columns, rows } }];
}
