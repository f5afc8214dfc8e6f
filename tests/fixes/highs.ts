import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import type { JointProblem } from "../../library/analysis/joint-sizing.ts";

/**
 * The least copper of all runs of each problem, mm²·m, none above its last choice, by HiGHS 1.15.3 (MIT) in a process of its own.
 * Undefined: the limits cannot all be met so.
 */
export function leastCopperByHighs(problems: readonly JointProblem[]): readonly (number | undefined)[] {
  const script = fileURLToPath(new URL("./solve-with-highs.mjs", import.meta.url));
  const { stdout, stderr, status } = spawnSync(process.execPath, [script], {
    input: JSON.stringify(problems),
    encoding: "utf8",
    maxBuffer: 64 * 1024 * 1024,
  });
  if (status !== 0) throw new Error(`HiGHS gave no answer: ${stderr}`);
  return (JSON.parse(stdout) as (number | null)[]).map((optimum) => optimum ?? undefined);
}
