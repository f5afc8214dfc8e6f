import type { PeriodEnergy } from "../../library/analysis/energy/energy-result.ts";
import { energyTables } from "../../library/documents/energy/energy-tables.ts";
import { refusedInWords } from "../../library/documents/energy/verdict-in-words.ts";
import type { Table } from "../../library/documents/table.ts";
import { tableCsv } from "../../library/documents/table-csv.ts";
import { monthNames } from "../../library/model/use-properties.ts";
import { drawingKinds } from "../output/drawing-file.ts";
import { eachCheckedPlan, type OpenedPlan } from "./checked-plans.ts";
import type { Command } from "./command.ts";
import { DrawingTarget } from "./drawing-target.ts";
import { writeCharts } from "./energy-charts.ts";
import { energyJson } from "./energy-json.ts";
import type { ExitCode, Host } from "./host.ts";
import { interruptible } from "./interruption.ts";
import { paintFor, printable } from "./terminal.ts";
import { textTable } from "./text-table.ts";
import { oneOfWords, UsageError } from "./usage.ts";

const formats = ["text", "csv", "json"] as const;
const tables = ["months", "use", "least-changes", "worksheet", "assumptions"] as const;

/** `loomwright energy`: whether the bank keeps up, month by month, for each period of a plan. */
export const energy: Command = {
  name: "energy",
  usage: [
    {
      words: "[files or folders]",
      does: "use, sources and state of charge by month, for each period of a plan",
    },
    {
      words: "[files or folders] --out PATH",
      does: "charts of the months and of a worst week: a file that ends in .svg, .png or .pdf, or a file for each plan into a folder",
    },
  ],
  formats,
  takes: ["format", "period", "table", "month", "out", "force"],
  async run(names, given, outside) {
    const month = given.month === undefined ? undefined : oneOfWords("month", given.month, monthNames);
    if (given.out !== undefined) {
      for (const option of ["format", "table"] as const)
        if (given[option] !== undefined)
          throw new UsageError(`--${option} is for the figures, --out for charts: give one of them.`);
      const target = new DrawingTarget(given.out, outside.cwd, drawingKinds);
      const asked = { target, month, force: given.force ?? false };
      return interruptible(outside, (signal) =>
        eachCheckedPlan(names, outside, async (opened) => {
          const shown: ShownPlan[] = [];
          const code = readPlan(opened, given.period, shown, outside);
          return shown[0] ? writeCharts(opened, shown[0].periods, asked, outside, signal) : code;
        }),
      );
    }
    if (month !== undefined || given.force !== undefined)
      throw new UsageError(
        `--${month === undefined ? "force" : "month"} is for charts: say where with --out.`,
      );
    const format = oneOfWords("format", given.format, formats);
    const table = given.table === undefined ? undefined : oneOfWords("table", given.table, tables);
    if (format === "json" && table)
      throw new UsageError("JSON holds everything: --table belongs to text and CSV.");
    const shown: ShownPlan[] = [];
    const code = await eachCheckedPlan(names, outside, async (opened): Promise<ExitCode> => {
      if (format === "csv" && opened.of > 1)
        throw new UsageError(`CSV holds one table of one plan, and there are ${opened.of} plans: name one.`);
      return readPlan(opened, given.period, shown, outside);
    });
    if (shown.length === 0) return code;
    if (format === "csv" && shown.flatMap(({ periods }) => periods).length > 1)
      throw new UsageError("CSV holds one table, and the plan has several periods: name one with --period.");
    outside.out(format === "json" ? energyJson(shown) : onScreen(shown, { format, table }, outside));
    return code;
  },
};

interface ShownPlan {
  readonly file: string;
  readonly periods: readonly PeriodEnergy[];
}

/** The periods asked for whose place is known; the others are reported. */
function readPlan(
  { plan, file }: OpenedPlan,
  asked: string | undefined,
  shown: ShownPlan[],
  outside: Host,
): ExitCode {
  const refuse = (why: string): ExitCode => {
    outside.err(`loomwright: ${printable(`${file}: ${why}`)}.\n`);
    return 2;
  };
  const { model, energy: all } = plan.judgement;
  const invalid = invalidPeriods(plan).filter((name) => asked === undefined || name === asked);
  const refuseInvalid = () => {
    for (const name of invalid)
      refuse(`a value of the period '${name}' is invalid; loomwright check names it`);
  };
  if (model.periods.length === 0) {
    refuseInvalid();
    return invalid.length > 0
      ? 2
      : refuse("the plan has no period: period() states where and when you live with it");
  }
  if (all.length === 0) return refuse("the plan has no network that could be read: a period needs its bank");
  const names = model.periods.map(({ name }) => `'${name}'`).join(", ");
  const wanted = all.filter(({ period }) => asked === undefined || period.name === asked);
  if (wanted.length === 0) return refuse(`there is no period '${asked}'; there are ${names}`);
  const known = wanted.filter(({ climate }) => climate !== undefined);
  for (const { period } of wanted.filter((one) => !known.includes(one)))
    refuse(`the place of '${period.name}' is not clear; loomwright check reports it`);
  const refused = known.filter(({ refusedParts }) => refusedParts.length > 0);
  for (const { period, refusedParts } of refused)
    refuse(
      `'${period.name}' is not judged whole: ${refusedInWords(refusedParts)}; loomwright check names it`,
    );
  const figures = known.filter(({ banks, refusedParts }) => banks.length > 0 || refusedParts.length === 0);
  if (figures.length > 0) shown.push({ file, periods: figures });
  refuseInvalid();
  return known.length < wanted.length ||
    refused.length > 0 ||
    invalid.length > 0 ||
    model.withoutCircuits.length > 0
    ? 2
    : 0;
}

/** The names of the periods with a value that was refused. */
function invalidPeriods({ judgement, records }: OpenedPlan["plan"]): readonly string[] {
  const ofPeriods = judgement.model.invalid.filter(({ record }) => records[record]?.word === "period");
  const read = new Set(judgement.model.periods.map(({ record }) => record));
  return [...new Map(ofPeriods.map(({ record, name }) => [record, name]))]
    .filter(([record]) => !read.has(record))
    .map(([, name]) => name);
}

function onScreen(
  plans: readonly ShownPlan[],
  { format, table }: { readonly format: "text" | "csv"; readonly table: (typeof tables)[number] | undefined },
  { terminal }: Host,
): string {
  // Each bank has tables of its own: months-1, months-2.
  const isAsked = ({ id }: Table, name: string) => id === name || id.startsWith(`${name}-`);
  const tablesOf = (periods: readonly PeriodEnergy[]): readonly Table[] =>
    periods.flatMap((one) => energyTables(one).filter((each) => table === undefined || isAsked(each, table)));
  if (format === "csv")
    return plans
      .flatMap(({ periods }) => tablesOf(periods).filter((each) => table ?? isAsked(each, "months")))
      .slice(0, 1)
      .map(tableCsv)
      .join("");
  const paint = paintFor(terminal);
  return plans
    .flatMap(({ file, periods }) => [
      ...(plans.length > 1 ? [`${paint("strong", printable(file))}\n`] : []),
      ...tablesOf(periods).map((each) => textTable(each, paint)),
    ])
    .join("\n");
}
