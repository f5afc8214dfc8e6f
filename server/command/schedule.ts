import { fewerSizes } from "../../library/documents/fewer-sizes.ts";
import { markdownText } from "../../library/documents/markdown-text.ts";
import { benchDocuments, fewerSizesInTable } from "../../library/documents/schedules/bench-documents.ts";
import { labelSheets } from "../../library/documents/schedules/label-sheets.ts";
import { wireLabels } from "../../library/documents/schedules/labels.ts";
import type { Table } from "../../library/documents/table.ts";
import { tableCsv } from "../../library/documents/table-csv.ts";
import { tableMarkdown } from "../../library/documents/table-markdown.ts";
import { judge } from "../../library/judge.ts";
import { numberedWires } from "../evaluate/files/kept-numbers.ts";
import { LocatedPlan } from "../evaluate/provenance/located-plan.ts";
import { askedScenario } from "./asked-scenario.ts";
import { eachCheckedPlan, type OpenedPlan } from "./checked-plans.ts";
import type { Command } from "./command.ts";
import type { ExitCode, Host } from "./host.ts";
import type { GivenOptions } from "./options.ts";
import { TableFolder, type TableFormat, writeLabels } from "./table-files.ts";
import { tablesJson } from "./tables-json.ts";
import { paintFor, printable } from "./terminal.ts";
import { textTable } from "./text-table.ts";
import { reportUnreadNumbers } from "./unread-numbers.ts";
import { oneOfWords, UsageError } from "./usage.ts";

const formats = ["text", "csv", "markdown", "json"] as const;

/** `loomwright schedule`: the lists for the workshop, on the screen or a file for each. */
export const schedule: Command = {
  name: "schedule",
  usage: [
    {
      words: "[files or folders]",
      does: "wire schedule, cut list, parts list, fuse map, labels, checks before first power",
    },
    {
      words: "[file] --out FILE.pdf",
      does: "the labels for both ends of each wire, on label sheets",
    },
  ],
  formats,
  takes: ["format", "table", "scenario", "out", "sheet", "force"],
  async run(names, given, outside) {
    const asked = read(given, outside);
    const shown: ShownPlan[] = [];
    const code = await eachCheckedPlan(names, outside, async (opened) => {
      if (opened.of > 1) refuseSeveral(asked, opened.of);
      return schedulePlan(opened, asked, shown, outside);
    });
    if (asked.to.kind === "screen" && shown.length > 0)
      outside.out(onScreen(shown, asked.to.format, outside));
    return code;
  },
};

interface Asked {
  /** The id of a table, or the common beginning of several. */
  readonly table: (typeof tables)[number] | undefined;
  readonly scenario: string | undefined;
  readonly to:
    | { readonly kind: "screen"; readonly format: "text" | TableFormat }
    | { readonly kind: "folder"; readonly folder: TableFolder }
    | {
        readonly kind: "labels";
        readonly path: string;
        readonly sheet: (typeof labelSheets)[number];
        readonly force: boolean;
      };
}

interface ShownPlan {
  readonly file: string;
  readonly tables: readonly Table[];
}

const tables = [
  "wire-schedule",
  "cut-list",
  "spools",
  "fewer-sizes",
  "parts-list",
  "fuse-map",
  "labels",
  "first-power",
] as const;

/** Reads the words; reports those that do not go together before any plan is read. */
function read(given: GivenOptions, { cwd }: Host): Asked {
  const { out, force = false } = given;
  const table = given.table === undefined ? undefined : oneOfWords("table", given.table, tables);
  const common = { table, scenario: given.scenario };
  if (out === "") throw new UsageError("--out takes the name of a folder, or of a .pdf for the labels.");
  if (out !== undefined && /\.pdf$/i.test(out)) {
    if (given.format !== undefined || (table !== undefined && table !== "labels"))
      throw new UsageError("a .pdf from 'schedule' holds only the labels: leave out --format and --table.");
    const ids = labelSheets.map(({ id }) => id) as [string, ...string[]];
    const id = oneOfWords("sheet", given.sheet, ids);
    const sheet = labelSheets.find((one) => one.id === id)!;
    return { ...common, to: { kind: "labels", path: out, sheet, force } };
  }
  if (given.sheet !== undefined)
    throw new UsageError("--sheet is for labels on paper: give a file that ends in .pdf with --out.");
  if (out === undefined) {
    const format = oneOfWords("format", given.format, formats);
    if (format === "csv" && (table === undefined || table === "first-power"))
      throw new UsageError(
        "CSV holds one table: name it with --table, or give a folder for a file each with --out.",
      );
    return { ...common, to: { kind: "screen", format } };
  }
  if (/\.(csv|md|json|txt)$/i.test(out))
    throw new UsageError(`--out takes a folder, and a file for each table goes into it; not '${out}'.`);
  if (given.format === "text")
    throw new UsageError("text is for the screen: with --out, --format is csv, markdown or json.");
  const format = oneOfWords("format", given.format, ["csv", "markdown", "json"]);
  return { ...common, to: { kind: "folder", folder: new TableFolder(out, { cwd, format, force }) } };
}

function refuseSeveral({ to }: Asked, of: number): void {
  if (to.kind === "labels")
    throw new UsageError(`a .pdf holds the labels of one plan, and there are ${of} plans: name one.`);
  if (to.kind === "screen" && to.format === "csv")
    throw new UsageError(
      `CSV holds one table of one plan, and there are ${of} plans: name one, or give a folder with --out.`,
    );
}

async function schedulePlan(
  opened: OpenedPlan,
  { table, scenario: name, to }: Asked,
  shown: ShownPlan[],
  outside: Host,
): Promise<ExitCode> {
  const { plan, file, workspace } = opened;
  const asked = askedScenario(plan.judgement, name);
  if ("why" in asked) {
    outside.err(`loomwright: ${printable(`${file}: ${asked.why}`)}.\n`);
    return 2;
  }
  const { numbered, kept } = numberedWires(plan, workspace);
  reportUnreadNumbers(plan, kept, outside);
  if (to.kind === "labels") return writeLabels(opened, wireLabels(numbered.wires), to, outside);
  const isWanted = (id: string) => table === undefined || id === table || id.startsWith(`${table}-`);
  const made = {
    file,
    tables: benchDocuments(plan.judgement, numbered, {
      scenario: asked.scenario,
      // It judges the plan many times, so it runs only if asked for.
      ...(isWanted("fewer-sizes") && { fewerSizes: fewerSizesOf(opened) }),
    }).filter(({ id }) => isWanted(id)),
  };
  if (to.kind === "folder") return to.folder.write(made, outside);
  shown.push(made);
  return 0;
}

function fewerSizesOf({ plan }: OpenedPlan): Table | undefined {
  if (!(plan instanceof LocatedPlan)) return undefined;
  return fewerSizesInTable(fewerSizes(plan.records, plan.judgement, (records) => judge(records, [])));
}

function onScreen(plans: readonly ShownPlan[], format: "text" | TableFormat, { terminal }: Host): string {
  const paint = paintFor(terminal);
  switch (format) {
    case "json":
      return tablesJson(plans);
    case "csv":
      return plans.flatMap(({ tables }) => tables.map(tableCsv)).join("");
    case "markdown":
      return plans
        .flatMap(({ file, tables }) => [`# ${markdownText(file)}\n`, ...tables.map(tableMarkdown)])
        .join("\n");
    case "text":
      return plans
        .flatMap(({ file, tables }) => [
          ...(plans.length > 1 ? [`${paint("strong", printable(file))}\n`] : []),
          ...tables.map((table) => textTable(table, paint)),
        ])
        .join("\n");
  }
}
