import { formatDistinct } from "../../rules/wording/format-number.ts";
import type { Quantity, Table } from "../table.ts";
import { type ColumnOf, words } from "../table-of.ts";
import type { NumberedFinding } from "./chapter.ts";
import { numbersAbout } from "./numbered-findings.ts";
import type { Block } from "./report-content.ts";

/* Cells and columns that the report's tables share. All numbers are unrounded until here. */

/** A number with enough figures to differ from another one in its row if it does: a value and its limit. */
export function quantityBeside(value: number, other: number): Quantity {
  return { value, text: formatDistinct(value, other)[0] };
}

/** The findings about the subject of each row. */
export function findingsAbout<Row>(
  numbered: readonly NumberedFinding[],
  nameOf: (row: Row) => string,
): ColumnOf<Row> {
  return words("findings", "Findings", (row) => numbersAbout(numbered, nameOf(row)));
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
