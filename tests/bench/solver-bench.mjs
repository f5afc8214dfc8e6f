// The network solver alone, against ngspice's own analysis time on the same networks, in the same run:
// `node tests/bench/solver-bench.mjs`, or as a part of `npm run bench`.
// Only the operating point counts on both sides. For ngspice, starting, reading and printing are excluded (the same process
// solves once and many times, and the difference counts); for ours, the branches are prepared. The cost of a keystroke, from the
// network to the results of three scenarios, is reported beside it.

import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { performance } from "node:perf_hooks";
import { fileURLToPath, pathToFileURL } from "node:url";
import { build } from "esbuild";

const sizes = [30, 300, 3000];
const ngspiceRepeats = { 30: 200, 300: 60, 3000: 12 };
const ourRounds = { 30: 5000, 300: 2000, 3000: 150 };

/**
 * By size: branches; the operating point of one scenario, ours and ngspice's, in ms, and how many times faster ours is; ours from
 * the network to all results, for one scenario and for three. ngspice's are undefined if it is not installed. `growth` is the
 * exponent of the last from 300 to 3,000 branches.
 */
export async function solverBench() {
  const folder = mkdtempSync(join(tmpdir(), "loomwright-solver-"));
  try {
    const bundle = join(folder, "solver.mjs");
    await build({
      entryPoints: [fileURLToPath(new URL("solver-networks.ts", import.meta.url))],
      bundle: true,
      platform: "node",
      format: "esm",
      outfile: bundle,
      logLevel: "warning",
    });
    const solver = await import(pathToFileURL(bundle).href);
    const bySize = {};
    for (const size of sizes) bySize[size] = measured(solver, size, folder);
    return { bySize, growth: Math.log10(bySize[3000].threeScenariosMs / bySize[300].threeScenariosMs) };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function measured({ benchNetwork, operatingPointOf, solveScenarios, spiceText }, size, folder) {
  const network = benchNetwork(size);
  const one = { ...network, scenarios: network.scenarios.slice(0, 1) };
  const rounds = ourRounds[size];
  const oursMs = median(operatingPointOf(one), rounds);
  const oneScenarioMs = median(() => solveScenarios(one), rounds);
  const threeScenariosMs = median(() => solveScenarios(network), rounds);
  const repeats = ngspiceRepeats[size];
  const onceMs = ngspiceMs(spiceText(one, 1).text, folder);
  const oftenMs = ngspiceMs(spiceText(one, 1 + repeats).text, folder);
  const ngspice =
    onceMs === undefined || oftenMs === undefined ? undefined : Math.max(0, oftenMs - onceMs) / repeats;
  return {
    branches: spiceText(one, 1).branches,
    oursMs,
    oneScenarioMs,
    threeScenariosMs,
    ngspiceMs: ngspice,
    ratio: ngspice === undefined ? undefined : ngspice / oursMs,
  };
}

function median(run, rounds) {
  for (let round = 0; round < rounds; round++) run();
  const times = Array.from({ length: rounds }, () => {
    const start = performance.now();
    run();
    return performance.now() - start;
  }).sort((a, b) => a - b);
  return times[rounds >> 1];
}

/** The best of three: a busy machine then counts in favour of ngspice and not against it. */
function ngspiceMs(text, folder) {
  writeFileSync(join(folder, "network.cir"), text);
  let best;
  for (let round = 0; round < 3; round++) {
    const start = performance.now();
    const { error } = spawnSync("ngspice", ["-b", "network.cir"], { cwd: folder, stdio: "ignore" });
    if (error) return undefined;
    const tookMs = performance.now() - start;
    if (!readFileSync(join(folder, "voltages.txt"), "utf8").includes(" = ")) {
      throw new Error("ngspice found no operating point of the bench's network.");
    }
    best = Math.min(best ?? tookMs, tookMs);
  }
  return best;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const { bySize, growth } = await solverBench();
  const shown = (ms) => (ms === undefined ? "not installed" : `${ms.toPrecision(3)} ms`);
  for (const size of Object.values(bySize)) {
    const than = size.ratio === undefined ? "" : ` (ours is ${size.ratio.toPrecision(3)} times as fast)`;
    console.log(
      `${size.branches} branches: operating point ${shown(size.oursMs)}, ngspice's ${shown(size.ngspiceMs)}${than}; ` +
        `all results ${shown(size.oneScenarioMs)}, of three scenarios ${shown(size.threeScenariosMs)}`,
    );
  }
  console.log(`growth exponent, 300 to 3,000 branches: ${growth.toPrecision(3)}`);
}
