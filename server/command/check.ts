import { checkPlans } from "./check-plans.ts";
import type { Command } from "./command.ts";
import type { ExitCode, Host } from "./host.ts";
import { exitCode, resultFormats, resultsAs, showingProgress } from "./results.ts";
import { type AskedShard, askedShard } from "./shard.ts";
import { oneOfWords, wholeNumber } from "./usage.ts";

/** `loomwright check`: checks and reports every plan that the names refer to. */
export const check: Command = {
  name: "check",
  usage: [{ words: "[files or folders]", does: "check plans; without names, those below this folder" }],
  formats: resultFormats,
  takes: ["format", "max-warnings", "shard", "fresh"],
  run: (names, given, outside) =>
    checkAndReport(
      {
        names,
        format: oneOfWords("format", given.format, resultFormats),
        maxWarnings: wholeNumber("max-warnings", given["max-warnings"] ?? "0"),
        shard: askedShard(given.shard),
        fresh: given.fresh ?? false,
      },
      outside,
    ),
};

interface CheckOptions {
  readonly names: readonly string[];
  readonly format: (typeof resultFormats)[number];
  readonly maxWarnings: number;
  readonly shard: AskedShard | undefined;
  readonly fresh: boolean;
}

async function checkAndReport(
  { format, maxWarnings, ...asked }: CheckOptions,
  outside: Host,
): Promise<ExitCode> {
  const { cwd, kept, sandbox } = outside;
  const progress = showingProgress(outside);
  const checked = await checkPlans({ ...asked, cwd, kept, sandbox, progress: progress.at });
  progress.end();
  outside.out(await resultsAs(format, checked, outside.terminal));
  return exitCode(checked, maxWarnings);
}
