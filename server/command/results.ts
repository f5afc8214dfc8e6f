import { mayHideHazard } from "../evaluate/files/passed-by.ts";
import { annotationsReport } from "./annotations-report.ts";
import type { CheckedPlans } from "./check-result.ts";
import type { ExitCode, Host } from "./host.ts";
import { jsonReport } from "./json-report.ts";
import type { Terminal } from "./terminal.ts";
import { textReport } from "./text-report.ts";

/** The output formats of `check` and `merge`. */
export const resultFormats = ["text", "json", "sarif", "annotations"] as const;

/** The findings in one of the formats; the same whether they are new, kept from an earlier run, or merged. */
export async function resultsAs(
  format: (typeof resultFormats)[number],
  checked: CheckedPlans,
  terminal: Terminal,
): Promise<string> {
  switch (format) {
    case "json":
      return jsonReport(checked);
    case "sarif": {
      // Loads all rules; the other formats do not need them.
      const { sarifReport } = await import("./sarif-report.ts");
      return sarifReport(checked);
    }
    case "annotations":
      return annotationsReport(checked);
    case "text":
      return `${isEmpty(checked) ? "" : textReport(checked, terminal)}${shardLine(checked)}`;
  }
}

/**
 * 2 before 1 before 0: a plan that was not judged to its end is worse than findings, whether it stopped, a file could not be read
 * as a plan, or there was no plan at all.
 */
export function exitCode({ plans, passedBy, shard }: CheckedPlans, maxWarnings: number): ExitCode {
  if (plans.some(({ evaluated }) => !evaluated) || passedBy.some(mayHideHazard)) return 2;
  if ((shard?.plans ?? plans.length) === 0) return 2;
  const open = plans.flatMap(({ findings }) => findings).filter(({ accepted }) => accepted === undefined);
  const warnings = open.filter(({ severity }) => severity === "warning").length;
  return open.some(({ severity }) => severity === "error") || warnings > maxWarnings ? 1 : 0;
}

function isEmpty({ plans, passedBy }: CheckedPlans): boolean {
  return plans.length === 0 && passedBy.length === 0;
}

/** A line, rewritten repeatedly, for a person who waits for several plans. */
export function showingProgress({ terminal, err }: Host) {
  let shown = false;
  return {
    at(place: number, of: number): void {
      if (!terminal.progress || of < 2) return;
      err(`\r\u001b[Kchecking ${place} of ${of} plans`);
      shown = true;
    },
    end(): void {
      if (shown) err("\r\u001b[K");
    },
  };
}

/** Without it, the count of plans would look like that of all. */
function shardLine({ plans, shard }: CheckedPlans): string {
  if (!shard) return "";
  return `Share ${shard.index} of ${shard.of}: ${plans.length} of ${shard.plans} plans. The rest was not checked here.\n`;
}
