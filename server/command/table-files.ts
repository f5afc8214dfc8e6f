import { basename, join, resolve } from "node:path";
import type { LabelSheetGeometry } from "../../library/documents/schedules/label-sheets.ts";
import type { WireLabel } from "../../library/documents/schedules/labels.ts";
import type { Table } from "../../library/documents/table.ts";
import { tableCsv } from "../../library/documents/table-csv.ts";
import { tableMarkdown } from "../../library/documents/table-markdown.ts";
import { makeNamedFolder, writeWhole } from "../output/atomic-write.ts";
import { PlanFileNames } from "../output/plan-file-names.ts";
import type { OpenedPlan } from "./checked-plans.ts";
import type { ExitCode, Host } from "./host.ts";
import { tablesJson } from "./tables-json.ts";
import { printable } from "./terminal.ts";

/** The file formats of a table. */
export type TableFormat = "csv" | "markdown" | "json";

/** A folder for the tables of plans, one file each: `bus.wire-schedule.csv`. */
export class TableFolder {
  private readonly names = new PlanFileNames();

  constructor(
    private readonly named: string,
    private readonly how: { readonly cwd: string; readonly format: TableFormat; readonly force: boolean },
  ) {}

  /** Writes every table it can; reports the others as unchanged, and then returns 2. */
  async write(plan: PlanTables, outside: Host): Promise<ExitCode> {
    const { cwd, format, force } = this.how;
    const folder = await makeNamedFolder(resolve(cwd, this.named));
    if (!folder.written) return refused(this.named, folder.why, outside);
    let code: ExitCode = 0;
    for (const table of plan.tables) {
      const name = join(this.named, this.names.nameFor(plan.file, `.${table.id}${endings[format]}`));
      const path = resolve(cwd, name);
      const content = Buffer.from(contentOf(plan.file, table, format));
      const written = await writeWhole(path, content, { force });
      if (written.written) outside.out(`${printable(name)}\n`);
      else code = refused(name, written.why, outside);
    }
    return code;
  }
}

interface PlanTables {
  /** Relative to where the command runs, with forward slashes. */
  readonly file: string;
  readonly tables: readonly Table[];
}

const endings: Readonly<Record<TableFormat, string>> = { csv: ".csv", markdown: ".md", json: ".json" };

function contentOf(file: string, table: Table, format: TableFormat): string {
  if (format === "csv") return tableCsv(table);
  if (format === "json") return tablesJson([{ file, tables: [table] }]);
  return `${tableMarkdown(table)}\n`;
}

/** The labels of a plan as a PDF to print on label sheets. */
export async function writeLabels(
  { file }: OpenedPlan,
  labels: readonly WireLabel[],
  {
    path,
    sheet,
    force,
  }: { readonly path: string; readonly sheet: LabelSheetGeometry; readonly force: boolean },
  outside: Host,
): Promise<ExitCode> {
  if (labels.length === 0) return refused(path, `would be empty: ${file} has no conductors`, outside);
  // The typeface and the PDF code are loaded only if needed.
  const { labelPdf } = await import("../output/paper.ts");
  const title = `Wire labels of ${basename(file)}`;
  const { bytes, missing, cut } = await labelPdf(
    labels.map(({ lines }) => lines),
    { title, geometry: sheet },
  );
  const written = await writeWhole(resolve(outside.cwd, path), bytes, { force });
  if (!written.written) return refused(path, written.why, outside);
  if (missing.length > 0)
    outside.err(
      `loomwright: ${printable(path)}: drawn as empty boxes, because the typeface lacks them: ${printable(missing.join(" "))}\n`,
    );
  if (cut > 0)
    outside.err(
      `loomwright: ${printable(path)}: ${cut === 1 ? "1 label is" : `${cut} labels are`} cut short with an ellipsis: give those wires a shorter label, or use a sheet with larger labels.\n`,
    );
  outside.out(
    `${printable(path)}: ${labels.length} labels for sheets of ${sheet.name}. Print at actual size, first on plain paper, and compare it with a sheet.\n`,
  );
  return 0;
}

function refused(name: string, why: string, outside: Host): ExitCode {
  outside.err(`loomwright: ${printable(`${name} ${why}`)}; it was not written.\n`);
  return 2;
}
