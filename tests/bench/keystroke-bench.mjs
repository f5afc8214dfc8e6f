// One-character edits to findings, ours and those of TypeScript's servers on the same file:
// `node tests/bench/keystroke-bench.mjs [PLAN [SIZE]]`, or as a part of `npm run bench`.
// The servers take turns, edit by edit, and ratios are medians of the ratios within a turn: a machine that is busy for a while is
// busy for all of them.

import { rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { performance } from "node:perf_hooks";
import { fileURLToPath } from "node:url";
import { makeBenchFolder } from "./bench-folder.mjs";
import { loomwrightServer, nativeTypeScript, typescriptServer } from "./peers.mjs";
import { networkPlanText, planText, tabularPlanText } from "./plan-text.mjs";

export const sizes = [30, 300, 3000];
const editsPerSize = { 30: 41, 300: 41, 3000: 15 };
/**
 * Edits before any is counted, for every server alike: half a minute of typing at 200 characters a minute. Fewer in the largest plan, of
 * which one edit runs as much code as ten in the next smaller one.
 */
const warmUpEdits = { 30: 100, 300: 100, 3000: 25 };

export const ours = "loomwright";
export const six = "TypeScript 6 server";
export const seven = "TypeScript 7 native";
const starts = { [ours]: loomwrightServer, [six]: typescriptServer, [seven]: nativeTypeScript };

const plans = {
  written: { text: planText, servers: [ours, six, seven] },
  table: { text: (size) => tabularPlanText(size), servers: [ours, seven] },
  "table with findings": { text: (size) => tabularPlanText(size, 100), servers: [ours, seven] },
  network: { text: networkPlanText, servers: [ours, seven] },
};

/**
 * By kind of plan and size: `ms`, the median time of each server, and `of`, the median ratio of ours to each other one's.
 */
export async function keystrokeBench(folder, kinds = Object.keys(plans), wanted = sizes) {
  const results = {};
  for (const kind of kinds) {
    results[kind] = {};
    for (const size of wanted) results[kind][size] = await keystrokes(folder, plans[kind], size);
  }
  return results;
}

/**
 * The edit changes one load from one digit to another in the middle of the file. Every answer therefore differs from the one
 * before, and none can be reused.
 */
async function keystrokes(folder, { text: textOf, servers: names }, size) {
  const text = textOf(size);
  const file = join(folder, `plan-${size}.ts`);
  writeFileSync(file, text);
  const servers = [];
  try {
    for (const name of names) {
      const server = await starts[name](folder);
      servers.push({ name, server, times: [] });
      await server.open(file, text);
    }
    const lines = text.split("\n");
    const line = lines.findIndex((row, index) => index > lines.length / 2 && /\bload: \d,/.test(row));
    const character = lines[line].indexOf("load: ") + "load: ".length;
    const range = { start: { line, character }, end: { line, character: character + 1 } };
    for (let edit = 0; edit < editsPerSize[size] + warmUpEdits[size]; edit++) {
      for (let turn = 0; turn < servers.length; turn++) {
        const { server, times } = servers[(edit + turn) % servers.length];
        const before = performance.now();
        await server.change(file, range, String(3 + (edit % 5)));
        if (edit >= warmUpEdits[size]) times.push(performance.now() - before);
      }
    }
  } finally {
    for (const { server } of servers) server.close();
  }
  const [own, ...others] = servers;
  return {
    ms: Object.fromEntries(servers.map(({ name, times }) => [name, median(times)])),
    of: Object.fromEntries(
      others.map(({ name, times }) => [name, median(own.times.map((time, edit) => time / times[edit]))]),
    ),
  };
}

export function median(values) {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)];
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const [kind, size] = process.argv.slice(2);
  const folder = makeBenchFolder();
  try {
    const results = await keystrokeBench(folder, kind && [kind], size && [Number(size)]);
    for (const [kind, bySize] of Object.entries(results)) {
      for (const [size, { ms, of }] of Object.entries(bySize)) {
        const times = Object.entries(ms).map(([name, time]) => `${name} ${time.toFixed(1)} ms`);
        const ratios = Object.entries(of).map(([name, ratio]) => `${ratio.toFixed(2)} of ${name}`);
        console.log(`${kind}, ${size}: ${[...times, ...ratios].join(", ")}`);
      }
    }
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
