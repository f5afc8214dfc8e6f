import type { Command } from "./command.ts";
import { findPlans, type PlanGroup } from "./find-plans.ts";
import { jsonReport } from "./json-report.ts";
import { type Reported, reportPlan } from "./reported-plan.ts";
import type { ExitCode, Outside } from "./run.ts";
import { textReport } from "./text-report.ts";
import { oneOfWords, wholeNumber } from "./usage.ts";

/** `loomwright check`: every plan that the names stand for, checked and reported. */
export const check: Command = {
  name: "check",
  usage: [{ words: "[files or folders]", does: "check plans; without names, those below this folder" }],
  takes: ["format", "max-warnings"],
  run: (names, given, outside) =>
    checkPlans(
      {
        names,
        format: oneOfWords("format", given.format, ["text", "json"]),
        maxWarnings: wholeNumber("max-warnings", given["max-warnings"] ?? "0"),
      },
      outside,
    ),
};

interface CheckOptions {
  readonly names: readonly string[];
  readonly format: "text" | "json";
  readonly maxWarnings: number;
}

async function checkPlans(options: CheckOptions, outside: Outside): Promise<ExitCode> {
  const groups = findPlans(options.names, outside.cwd);
  try {
    const plans = await checkGroups(groups, outside);
    outside.out(options.format === "json" ? jsonReport(plans) : textReport(plans, outside.terminal));
    return exitCode(plans, options.maxWarnings);
  } finally {
    await Promise.all(groups.map(({ checker }) => checker.dispose()));
  }
}

/** Checks every root, with a progress line for a person who waits. */
export async function checkGroups(groups: readonly PlanGroup[], outside: Outside): Promise<Reported[]> {
  const total = groups.reduce((sum, { roots }) => sum + roots.length, 0);
  const plans: Reported[] = [];
  for (const group of groups) {
    for (const root of group.roots) {
      if (outside.terminal.progress && total > 1)
        outside.err(`\r\u001b[Kchecking ${plans.length + 1} of ${total} plans`);
      plans.push(await reportPlan(await group.checker.check(root), group, outside.cwd));
    }
  }
  if (outside.terminal.progress && total > 1) outside.err("\r\u001b[K");
  return plans;
}

/** 2 before 1 before 0: a plan that could not be evaluated is worse news than one with findings. */
export function exitCode(plans: readonly Reported[], maxWarnings: number): ExitCode {
  if (plans.some(({ evaluated }) => !evaluated)) return 2;
  const open = plans.flatMap(({ findings }) => findings).filter(({ accepted }) => accepted === undefined);
  const warnings = open.filter(({ severity }) => severity === "warning").length;
  return open.some(({ severity }) => severity === "error") || warnings > maxWarnings ? 1 : 0;
}
