import { setFlagsFromString } from "node:v8";
import { runInNewContext } from "node:vm";
import { expect, it } from "vitest";
import { createChecker } from "../../server/evaluate/checker.ts";
import type { Workspace } from "../../server/evaluate/workspace.ts";
import { everyCase } from "../setup/sampled.ts";
import { hostilePlans, soundPlan } from "./hostile-plans.ts";

/**
 * Hundreds of hostile plans, one after another, as if typed into one file; a thousand in a run of every case. About one in thirty
 * meets a limit, which ends its worker; the others end by themselves. After the first 150 everything has been used once, and
 * memory must not grow.
 */
const runs = everyCase ? 1_000 : 600;

it(`memory is as large after ${runs} hostile plans as after 150`, async () => {
  setFlagsFromString("--expose-gc");
  const collectGarbage = runInNewContext("gc") as () => void;
  const limitless = hostilePlans.filter(({ finding }) => finding !== "plan/too-slow");
  const limited = hostilePlans.filter(({ finding }) => finding === "plan/too-slow");
  let text = "";
  let version = 0;
  const root = "file:///camper/plan.ts";
  const workspace: Workspace = {
    read: (uri) => (uri === root ? { uri, version, text } : undefined),
    folders: () => ["file:///camper"],
    realUri: (uri) => uri,
    planFiles: () => [root],
  };
  const checker = createChecker(workspace, { limits: { timeMs: 60, records: 200 } });
  const check = async (plan: string) => {
    text = plan;
    version++;
    const outcome = await checker.check(root);
    return outcome.state === "checked" ? outcome.findings.length : undefined;
  };
  const measure = async () => {
    await check(soundPlan);
    collectGarbage();
    return process.memoryUsage();
  };

  let answered = 0;
  let early = await measure();
  for (let run = 1; run <= runs; run++) {
    const plans = run % 30 === 0 ? limited : limitless;
    const plan = plans[Math.floor(run / (plans === limited ? 30 : 1)) % plans.length];
    if (plan && ((await check(`${plan.text}// ${run}\n`)) ?? 0) > 0) answered++;
    if (run === 150) early = await measure();
  }
  const late = await measure();
  expect(answered).toBe(runs);
  expect(await check(soundPlan)).toBe(0);
  await checker.dispose();

  // If a run leaked, it would keep at least a page of 0.5 MB or an instance of 16 MB: 450 runs would show it. Variations of the
  // collector are below these.
  expect((late.heapUsed - early.heapUsed) / 1e6, "growth of the heap, MB").toBeLessThan(15);
  expect((late.arrayBuffers - early.arrayBuffers) / 1e6, "growth of buffers, MB").toBeLessThan(15);
  expect((late.rss - early.rss) / 1e6, "growth of the process, MB").toBeLessThan(200);
}, 300_000);
