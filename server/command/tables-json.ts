import * as z from "zod";
import type { Table } from "../../library/documents/table.ts";
import { tableJson } from "../../library/documents/table-json.ts";
import { name, version } from "../../library/package.json";

/**
 * The shape of `loomwright schedule --format json`. Stable: within a major version, tables, columns and properties are added,
 * never renamed or removed. Numbers are unrounded, in the unit that ends the column's id; files are relative to where the command
 * ran, with forward slashes.
 */
export const tablesJsonSchema = z.strictObject({
  tool: z.strictObject({ name: z.string(), version: z.string() }),
  plans: z.array(
    z.strictObject({
      file: z.string(),
      tables: z.array(
        z.strictObject({
          id: z.string(),
          title: z.string(),
          notes: z.array(z.string()),
          columns: z.array(z.strictObject({ id: z.string(), title: z.string(), toFillIn: z.boolean() })),
          /** By column id; null for an empty cell, and for one to fill in with a pen. */
          rows: z.array(z.record(z.string(), z.union([z.string(), z.number(), z.null()]))),
        }),
      ),
    }),
  ),
  /** Only in a file that Loomwright wrote: the digest of everything else in it. It no longer matches once the file is changed. */
  sha256: z.string().optional(),
});

type TablesJson = z.infer<typeof tablesJsonSchema>;

/** The tables of plans as text, ending in a line break. */
export function tablesJson(
  plans: readonly { readonly file: string; readonly tables: readonly Table[] }[],
): string {
  const report: TablesJson = {
    tool: { name, version },
    plans: plans.map(({ file, tables }) => ({ file, tables: tables.map(tableJson) })),
  };
  return `${JSON.stringify(report, null, 2)}\n`;
}
