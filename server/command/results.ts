import { annotationsReport } from "./annotations-report.ts";
import { jsonReport } from "./json-report.ts";
import type { Reported } from "./reported-plan.ts";
import type { ExitCode, Outside } from "./run.ts";
import type { Shard } from "./shard.ts";
import type { Terminal } from "./terminal.ts";
import { textReport } from "./text-report.ts";

/** How `check` and `merge` write what was found. */
export const resultFormats = ["text", "json", "sarif", "annotations"] as const;

/** What was found, in one of the formats; the same whether it was checked now, kept from an earlier run, or merged. */
export async function resultsAs(
  format: (typeof resultFormats)[number],
  { plans, shard, terminal }: Results,
): Promise<string> {
  switch (format) {
    case "json":
      return jsonReport(plans, shard);
    case "sarif": {
      // With all rules, which nothing else needs.
      const { sarifReport } = await import("./sarif-report.ts");
      return sarifReport(plans);
    }
    case "annotations":
      return annotationsReport(plans);
    case "text":
      return `${plans.length > 0 ? textReport(plans, terminal) : ""}${shard ? shardLine(plans, shard) : ""}`;
  }
}

interface Results {
  readonly plans: readonly Reported[];
  readonly shard?: Shard | undefined;
  readonly terminal: Terminal;
}

/** 2 before 1 before 0: a plan that could not be evaluated is worse news than one with findings. */
export function exitCode(plans: readonly Reported[], maxWarnings: number): ExitCode {
  if (plans.some(({ evaluated }) => !evaluated)) return 2;
  const open = plans.flatMap(({ findings }) => findings).filter(({ accepted }) => accepted === undefined);
  const warnings = open.filter(({ severity }) => severity === "warning").length;
  return open.some(({ severity }) => severity === "error") || warnings > maxWarnings ? 1 : 0;
}

/** A line, written over and over, for a person who waits for several plans. */
export function showingProgress({ terminal, err }: Outside) {
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

/** Else the count of plans would be taken for that of all. */
function shardLine(plans: readonly Reported[], { index, of, plans: all }: Shard): string {
  return `Share ${index} of ${of}: ${plans.length} of ${all} plans. The rest was not looked at here.\n`;
}
