import type { PeriodEnergy } from "../../library/analysis/energy/energy-result.ts";
import { energyTables } from "../../library/documents/energy/energy-tables.ts";
import type { Table } from "../../library/documents/table.ts";
import { tableCsv } from "../../library/documents/table-csv.ts";
import { monthNames } from "../../library/model/use-properties.ts";
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
  takes: ["format", "period", "month", "out", "force"],
  async run(names, given, outside) {
    const month = given.month === undefined ? undefined : oneOfWords("month", given.month, monthNames);
    if (given.out !== undefined) {
      if (given.format !== undefined)
        throw new UsageError("--format is for the figures, --out for charts: give one of them.");
      const target = new DrawingTarget(given.out, outside.cwd);
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
    const shown: ShownPlan[] = [];
    const code = await eachCheckedPlan(names, outside, async (opened): Promise<ExitCode> => {
      if (format === "csv" && opened.of > 1)
        throw new UsageError(`CSV holds one table of one plan, and there are ${opened.of} plans: name one.`);
      return readPlan(opened, given.period, shown, outside);
    });
    if (shown.length === 0) return code;
    if (format === "csv" && shown.flatMap(({ periods }) => periods).length > 1)
      throw new UsageError("CSV holds one table, and the plan has several periods: name one with --period.");
    outside.out(onScreen(shown, format, outside));
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
  if (model.periods.length === 0)
    return refuse("the plan has no valid period: period() states where and when you live with it");
  if (all.length === 0) return refuse("the plan has no network that could be read: a period needs its bank");
  const names = model.periods.map(({ name }) => `'${name}'`).join(", ");
  const wanted = all.filter(({ period }) => asked === undefined || period.name === asked);
  if (wanted.length === 0) return refuse(`there is no period '${asked}'; there are ${names}`);
  const known = wanted.filter(({ climate }) => climate !== undefined);
  for (const { period } of wanted.filter((one) => !known.includes(one)))
    refuse(`the place of '${period.name}' is not clear; loomwright check reports it`);
  if (known.length > 0) shown.push({ file, periods: known });
  return known.length < wanted.length ? 2 : 0;
}

function onScreen(plans: readonly ShownPlan[], format: (typeof formats)[number], { terminal }: Host): string {
  switch (format) {
    case "json":
      return energyJson(plans);
    case "csv":
      return plans.flatMap(({ periods }) => periods.map((one) => tableCsv(energyTables(one)[0]!))).join("");
    case "text": {
      const paint = paintFor(terminal);
      const tables = (periods: readonly PeriodEnergy[]): readonly Table[] => periods.flatMap(energyTables);
      return plans
        .flatMap(({ file, periods }) => [
          ...(plans.length > 1 ? [`${paint("strong", printable(file))}\n`] : []),
          ...tables(periods).map((table) => textTable(table, paint)),
        ])
        .join("\n");
    }
  }
}
