import type { Cell, Column, Table } from "./table.ts";
import { tableForPrograms } from "./table-for-people.ts";

/**
 * A table as plain data for JSON: each row an object by column id, numbers unrounded. Empty cells are null: every row has every
 * column.
 */
export function tableJson(table: Table): TableInJson {
  const { id, title, notes, columns, rows } = tableForPrograms(table);
  return {
    id,
    title,
    notes: [...notes],
    columns: columns.map(({ id: column, title: shown, toFillIn }) => ({
      id: column,
      title: shown,
      toFillIn: toFillIn ?? false,
    })),
    rows: rows.map((row) => Object.fromEntries(row.map((cell, index) => [columns[index]!.id, value(cell)]))),
  };
}

export interface TableInJson {
  id: string;
  title: string;
  notes: string[];
  columns: { id: Column["id"]; title: string; toFillIn: boolean }[];
  rows: Record<string, string | number | null>[];
}

function value(cell: Cell): string | number | null {
  if (cell === null || typeof cell === "string") return cell;
  // JSON has neither NaN nor infinity.
  return Number.isFinite(cell.value) ? cell.value : null;
}
