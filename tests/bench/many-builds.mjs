// A repository of many small builds, each in its own folder: the cost of checking all of them the first time, and the cost after
// no change, or after a change of one file.

import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { performance } from "node:perf_hooks";
import { fileURLToPath } from "node:url";

const command = fileURLToPath(new URL("../../server/dist/command.cjs", import.meta.url));

/**
 * @param {number} builds how many
 * @param {number} runs how often the unchanged repository is checked; the median counts
 * @returns {{ builds: number, firstMs: number, unchangedMs: number, oneChangedMs: number, versionMs: number }} each includes the
 *   start of the process; `versionMs` is the minimum for any command
 */
export function manyBuilds(builds = 500, runs = 5) {
  const folder = mkdtempSync(join(tmpdir(), "loomwright-builds-"));
  const repository = join(folder, "repository");
  try {
    for (let build = 0; build < builds; build++) {
      mkdirSync(join(repository, `build-${build}`), { recursive: true });
      for (const [name, text] of Object.entries(filesOf(build)))
        writeFileSync(join(repository, `build-${build}`, name), text);
    }
    const check = () => timed(["check", "--format", "json"], folder);
    const first = check();
    const unchanged = Array.from({ length: runs }, check);
    if (unchanged.some(({ out }) => out !== first.out)) throw new Error("a later run says something else");
    writeFileSync(join(repository, "build-0/plan.ts"), filesOf(builds)["plan.ts"]);
    return {
      builds,
      firstMs: first.ms,
      unchangedMs: median(unchanged.map(({ ms }) => ms)),
      oneChangedMs: check().ms,
      versionMs: median(Array.from({ length: runs }, () => timed(["--version"], folder).ms)),
    };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** A plan and a file that it imports; no two builds are alike. */
function filesOf(build) {
  const lamps = Array.from(
    { length: 6 },
    (_, lamp) =>
      `circuit({ name: "lamp ${lamp}", load: ${1 + lamp / 4}, oneWayFt: ${6 + lamp + build / 100}, gauge: 12, protect: 5 });`,
  );
  return {
    "plan.ts": [
      'import { battery, build, cable, circuit, fusePanel } from "loomwright";',
      'import "./lamps.ts";',
      `build({ name: "build ${build}", insulationC: 105 });`,
      'const bank = battery({ chemistry: "LiFePO4", capacityAh: 100, internalMilliohm: 8 });',
      'const panel = fusePanel({ name: "panel", positions: 6, ratedA: 100 });',
      'cable({ name: "feeder", from: bank.positive, to: panel.feed, lengthFt: 4, gauge: 4, protect: { ratingA: 60, family: "UL 248-15 Class T", distanceIn: 6, interruptingA: 20_000 } });',
      'cable({ name: "return", from: panel.negative, to: bank.negative, lengthFt: 5, gauge: 4 });',
      `circuit({ name: "heater", from: panel.branch, load: ${10 + (build % 5)}, oneWayFt: 12, gauge: 10, protect: { ratingA: 20, interruptingA: 5_000 } });`,
      "",
    ].join("\n"),
    "lamps.ts": ['import { circuit } from "loomwright";', ...lamps, ""].join("\n"),
  };
}

function timed(words, folder) {
  const before = performance.now();
  const { status, stdout, stderr } = spawnSync(process.execPath, [command, ...words], {
    cwd: join(folder, "repository"),
    encoding: "utf8",
    env: { ...process.env, LOOMWRIGHT_CACHE: join(folder, "kept") },
    maxBuffer: 1024 * 1024 * 1024,
  });
  if (status === null || status > 1) throw new Error(`loomwright ${words.join(" ")}: ${status} ${stderr}`);
  return { ms: performance.now() - before, out: stdout };
}

function median(numbers) {
  return [...numbers].sort((a, b) => a - b)[Math.floor(numbers.length / 2)];
}
