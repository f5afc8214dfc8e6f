import { resolve } from "node:path";
import type { PeriodEnergy } from "../../library/analysis/energy/energy-result.ts";
import { worstMonth, worstWeek } from "../../library/analysis/energy/worst-week.ts";
import { type ChartOf, energyChart } from "../../library/documents/energy/energy-chart.ts";
import { monthNames } from "../../library/model/use-properties.ts";
import { writeWhole } from "../output/atomic-write.ts";
import { drawingFile } from "../output/drawing-file.ts";
import type { OpenedPlan } from "./checked-plans.ts";
import type { DrawingTarget } from "./drawing-target.ts";
import type { ExitCode, Host } from "./host.ts";
import { printable } from "./terminal.ts";

interface AskedCharts {
  readonly target: DrawingTarget;
  /** Its worst week is drawn; undefined for the worst month of each bank. */
  readonly month: (typeof monthNames)[number] | undefined;
  readonly force: boolean;
}

/** `loomwright energy --out`: for each bank of each period the months and a worst week, below one another in one picture. */
export async function writeCharts(
  opened: OpenedPlan,
  periods: readonly PeriodEnergy[],
  { target, month, force }: AskedCharts,
  outside: Host,
  signal: AbortSignal,
): Promise<ExitCode> {
  const { file } = opened;
  const say = (why: string): ExitCode => {
    outside.err(`loomwright: ${printable(`${file}: ${why}`)}\n`);
    return 2;
  };
  const asked = month === undefined ? undefined : monthNames.indexOf(month);
  const charts = periods.flatMap((energy) => chartsOf(energy, asked));
  if (charts.length === 0) return say("no chart was written: no bank feeds a load or is charged by the sun.");
  if (asked !== undefined && !charts.some(({ kind }) => kind === "week"))
    return say(`no chart was written: ${month} is in none of these periods.`);
  const path = await target.pathFor(opened, "energy");
  if (typeof path !== "string") return say(`no chart was written: ${path.path} ${path.why}.`);
  const { bytes, missing } = await drawingFile(energyChart(charts, "paper"), target.kind, undefined);
  const written = await writeWhole(resolve(outside.cwd, path), bytes, { force, signal });
  if (!written.written) return say(`no chart was written: ${path} ${written.why}.`);
  if (missing.length > 0)
    outside.err(
      `loomwright: ${printable(path)}: drawn as empty boxes, because the typeface lacks them: ${printable(missing.join(" "))}\n`,
    );
  outside.out(`${printable(path)}: the energy of ${printable(file)}\n`);
  return 0;
}

function chartsOf(energy: PeriodEnergy, asked: number | undefined): readonly ChartOf[] {
  return energy.banks.flatMap((bank): ChartOf[] => {
    const month = asked ?? worstMonth(bank);
    const week = month === undefined ? undefined : worstWeek(energy.period, bank, month);
    return [
      { kind: "months", energy, bank },
      ...(week ? [{ kind: "week", energy, bank, week } as const] : []),
    ];
  });
}
