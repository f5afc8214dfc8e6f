// The list of sizes while one is typed, beside a one-character edit to findings in the same plan: both in turns, in one run.

import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { performance } from "node:perf_hooks";
import { median } from "./keystroke-bench.mjs";
import { loomwrightServer } from "./peers.mjs";
import { networkPlanText } from "./plan-text.mjs";

const turns = 21;
const warmUpTurns = 8;

/** By place of the size: the median ratio of the list to the edit just before it, and both medians, ms. */
export async function completionBench(folder, branches = 300) {
  const results = {};
  for (const [place, pattern] of Object.entries(places)) {
    results[place] = await listsAt(folder, networkPlanText(branches), pattern);
  }
  return results;
}

/** A size that affects one device, and one that affects eight. */
const places = { lamp: /^ {2}gauge: 12,$/, feeder: /^ {2}gauge: 4,$/ };

async function listsAt(folder, text, pattern) {
  const server = await loomwrightServer(folder);
  const file = join(folder, "completed.ts");
  writeFileSync(file, text);
  try {
    await server.open(file, text);
    const lines = text.split("\n");
    const afterHalf = (test) => lines.findIndex((row, index) => index > lines.length / 2 && test.test(row));
    const [edited, sized] = [afterHalf(/\bload: \d,/), afterHalf(pattern)];
    const load = lines[edited].indexOf("load: ") + "load: ".length;
    const range = { start: { line: edited, character: load }, end: { line: edited, character: load + 1 } };
    const position = { line: sized, character: lines[sized].indexOf("gauge: ") + "gauge: ".length };
    const times = { edit: [], list: [], ratio: [] };
    for (let turn = 0; turn < turns + warmUpTurns; turn++) {
      const before = performance.now();
      await server.change(file, range, String(3 + (turn % 5)));
      const between = performance.now();
      const answer = await server.complete(file, position);
      const after = performance.now();
      const items = Array.isArray(answer) ? answer : answer?.items;
      if (!items?.some(({ labelDetails }) => labelDetails?.description?.startsWith("limits met")))
        throw new Error("the list of sizes judged none");
      if (turn < warmUpTurns) continue;
      times.edit.push(between - before);
      times.list.push(after - between);
      times.ratio.push((after - between) / (between - before));
    }
    return { editMs: median(times.edit), listMs: median(times.list), ratio: median(times.ratio) };
  } finally {
    server.close();
  }
}
