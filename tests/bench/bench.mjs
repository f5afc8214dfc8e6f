// `npm run bench`: measures everything in one run on one machine and judges ratios, because seconds differ between machines.
// Prints one table and writes tests/bench/results.json (not kept in git: it belongs to the machine it was measured on).

import { spawnSync } from "node:child_process";
import { readdirSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { performance } from "node:perf_hooks";
import { fileURLToPath } from "node:url";
import { gzipSync } from "node:zlib";
import { makeBenchFolder } from "./bench-folder.mjs";
import { boardsBench } from "./boards-bench.mjs";
import { completionBench } from "./completion-bench.mjs";
import { energyBench } from "./energy-bench.mjs";
import { hoverBench } from "./hover-bench.mjs";
import { keystrokeBench, median, ours, seven, six, sizes } from "./keystroke-bench.mjs";
import { manyBuilds } from "./many-builds.mjs";
import { diagramBench, diagramSizes, reportBench } from "./paper-bench.mjs";
import { loomwrightServer } from "./peers.mjs";
import { planText } from "./plan-text.mjs";
import { solverBench } from "./solver-bench.mjs";

const house = fileURLToPath(new URL("../..", import.meta.url));
/** Measured: 2 to 3. */
const diagramLimit = 4;
/** For each edit. Measured: 1.18 to 1.25. */
const energyLimit = 1.3;
const folder = makeBenchFolder();

const results = {
  machine: { node: process.version, platform: process.platform, arch: process.arch },
};
try {
  results.keystroke = await keystrokeBench(folder);
  results.completion = await completionBench(folder);
  results.hover = await hoverBench(folder);
  results.energy = await energyBench();
  results.boards = await boardsBench();
  results.solver = await solverBench();
  results.diagram = await diagramBench(folder);
  results.report = reportBench();
  results.many = manyBuilds();
  results.command = coldCheck();
  results.start = await serverStart();
  results.bytes = packageBytes();
} finally {
  rmSync(folder, { recursive: true, force: true });
}

const { written, table, network } = results.keystroke;
const faulty = results.keystroke["table with findings"];
results.bounds = [
  bound("keystroke at 300, of TypeScript 6 server", written[300].of[six], 0.25),
  bound("keystroke at 300, of TypeScript 7 native", written[300].of[seven], 0.5),
  bound("keystroke at 3,000, of TypeScript 7 native", written[3000].of[seven], 0.8),
  bound("growth exponent, 300 to 3,000 circuits", growth(written), 1.15),
  bound("network of 300 branches, of TypeScript 7 native", network[300].of[seven], 0.8),
  bound("growth exponent, network of 300 to 3,000 branches", growth(network), 1.2),
  ...[300, 3000].flatMap((size) => [
    bound(`table of ${size.toLocaleString("en")}, of TypeScript 7 native`, table[size].of[seven], 1.5),
    bound(`  the same, 1 % with findings`, faulty[size].of[seven], 1.5),
  ]),
  ...Object.entries(results.completion).map(([place, { ratio }]) =>
    bound(`sizes of a ${place} in a network of 300 branches, of a keystroke`, ratio, 3),
  ),
  ...Object.entries(results.energy).map(([edited, { ratio }]) =>
    bound(`keystroke with a period, of one without: ${edited}`, ratio, energyLimit),
  ),
  bound("keystroke with boards, of one with stated lengths", results.boards.keystroke.ratio, 1.3),
  bound("a part that is dragged, of a keystroke with stated lengths", results.boards.drag.ratio, 5),
  ...solverBounds(),
  bound("500 builds, unchanged, of the first check", results.many.unchangedMs / results.many.firstMs, 0.2),
  // Download sizes in MB, 0.45 of each for the sun and the places of the world, 0.25 for the boards. A commit that moves one states the benefit to users.
  bound(
    "the packed extension (.vsix), MB",
    results.bytes["the packed extension (.vsix)"].compressed / 1e6,
    6,
  ),
  bound("the packed library (npm), MB", results.bytes["the packed library (npm)"].compressed / 1e6, 5.7),
  // Limits on time that a person feels, not only on a share of another program's time.
  ...Object.entries(results.hover).flatMap(([beside, { medianMs, longestMs }]) => [
    bound(`longest hover beside ${beside}, of 1 s`, longestMs / 1_000, 1),
    bound(`median hover beside ${beside}, of 300 ms`, medianMs / 300, 1),
  ]),
  ...Object.entries(results.diagram).map(([view, bySize]) =>
    bound(`${view} diagram of 60 circuits, of TypeScript 6's answer`, bySize[60].ofSix, diagramLimit),
  ),
];
print();
writeFileSync(new URL("results.json", import.meta.url), `${JSON.stringify(results, null, 2)}\n`);
process.exitCode = results.bounds.every(({ met }) => met) ? 0 : 1;

function growth(bySize) {
  return Math.log10(bySize[3000].ms[ours] / bySize[300].ms[ours]);
}

/** The whole command against the whole compiler, process start included, on the example of about twenty circuits. */
function coldCheck() {
  const example = join(house, "examples/library-bus");
  const check = () => timed([join(house, "server/dist/command.cjs"), "check", "--fresh", example]);
  const compile = () => timed([join(house, "node_modules/typescript/lib/tsc.js"), "--noEmit", "-p", example]);
  check();
  compile();
  const times = { check: [], compile: [] };
  for (let run = 0; run < 7; run++) {
    times.check.push(check());
    times.compile.push(compile());
  }
  return { "loomwright check": median(times.check), "tsc --noEmit (6)": median(times.compile) };
}

function timed(words) {
  const before = performance.now();
  const { status, stderr } = spawnSync(process.execPath, words, { encoding: "utf8" });
  if (status !== 0) throw new Error(`${words.join(" ")} ended with ${status}: ${stderr}`);
  return performance.now() - before;
}

/** From starting the process to the answered handshake, and to the first findings. */
async function serverStart() {
  const file = join(folder, "plan-30.ts");
  const text = planText(30);
  writeFileSync(file, text);
  const handshake = [];
  const findings = [];
  for (let run = 0; run < 5; run++) {
    const before = performance.now();
    const server = await loomwrightServer(folder);
    handshake.push(performance.now() - before);
    await server.open(file, text);
    findings.push(performance.now() - before);
    server.close();
  }
  return {
    "extension loaded, not yet started": extensionLoad(),
    "handshake answered": median(handshake),
    "first findings (30 circuits)": median(findings),
  };
}

/**
 * The cost of the extension in an editor without a plan: loading its entry, in plain Node, with an empty `vscode` instead of the
 * editor's. The editor's stories print how long its activation takes in a real editor.
 */
function extensionLoad() {
  const script = `
    const Module = require("node:module");
    const load = Module._load;
    const nothing = new Proxy(function () {}, { get: (_, name) => (name === Symbol.toPrimitive ? () => "" : nothing), apply: () => nothing, construct: () => nothing });
    Module._load = (name, ...rest) => (name === "vscode" ? nothing : load(name, ...rest));
    const before = performance.now();
    require(${JSON.stringify(join(house, "extension/dist/extension.cjs"))});
    console.log(performance.now() - before);`;
  const times = Array.from({ length: 7 }, () =>
    Number(spawnSync(process.execPath, ["-e", script], { encoding: "utf8" }).stdout),
  );
  return median(times);
}

function packageBytes() {
  const bytes = {};
  const packed = spawnSync(process.execPath, [join(house, "extension/package.mjs")], { encoding: "utf8" });
  const vsix = /^(.*\.vsix): /m.exec(packed.stdout)?.[1];
  if (!vsix) throw new Error(`the extension could not be packed: ${packed.stderr}`);
  bytes["the packed extension (.vsix)"] = { plain: statSync(vsix).size, compressed: statSync(vsix).size };
  const library = libraryPackage();
  bytes["the packed library (npm)"] = { plain: library.unpackedSize, compressed: library.size };
  for (const room of ["server/dist", "extension/dist"]) {
    for (const name of readdirSync(join(house, room))) {
      const path = join(house, room, name);
      if (!statSync(path).isFile()) continue;
      bytes[`${room}/${name}`] = {
        plain: statSync(path).size,
        compressed: gzipSync(readFileSync(path)).length,
      };
    }
  }
  return bytes;
}

/** As npm would publish it, without writing it. */
function libraryPackage() {
  const { status, stdout, stderr } = spawnSync(
    "npm",
    ["pack", "--workspace", "library", "--dry-run", "--json", "--ignore-scripts"],
    { cwd: house, encoding: "utf8", shell: process.platform === "win32" },
  );
  if (status !== 0) throw new Error(`the library could not be packed: ${stderr}`);
  return JSON.parse(stdout)[0];
}

/** If ngspice is installed: the solver takes at most a tenth of its time, without process start on either side. */
function solverBounds() {
  return sizes.flatMap((size) => {
    const { ratio } = results.solver.bySize[size];
    return ratio === undefined ? [] : [bound(`solver alone at ${size} branches, of ngspice`, 1 / ratio, 0.1)];
  });
}

function bound(what, ratio, limit) {
  return { what, ratio, limit, met: ratio <= limit };
}

function print() {
  const ms = (value) => `${value.toFixed(1)} ms`.padStart(12);
  for (const [kind, bySize] of Object.entries(results.keystroke)) {
    console.log(`\nOne-character edit to findings, median: ${kind}`);
    console.log(`${"".padEnd(28)}${sizes.map((size) => `${size} circuits`.padStart(16)).join("")}`);
    for (const name of Object.keys(bySize[sizes[0]].ms)) {
      console.log(
        `${name.padEnd(28)}${sizes.map((size) => ms(bySize[size].ms[name]).padStart(16)).join("")}`,
      );
    }
  }
  console.log("\nList of sizes in a network of 300 branches, beside an edit");
  for (const [place, { editMs, listMs }] of Object.entries(results.completion))
    console.log(`${`at a ${place}`.padEnd(34)}${ms(listMs)} list ${ms(editMs)} edit`);
  console.log("\nAn edit in a plan with a period, beside the same in the plan without it, processor time");
  for (const [edited, { withMs, withoutMs }] of Object.entries(results.energy))
    console.log(`${edited.padEnd(34)}${ms(withMs)} with ${ms(withoutMs)} without`);
  console.log("\nBoards, processor time");
  const { keystroke: onBoards, drag, large } = results.boards;
  console.log(
    `${"an edit, beside stated lengths".padEnd(34)}${ms(onBoards.firstMs)} ${ms(onBoards.secondMs)}`,
  );
  console.log(`${"the answer to a drag".padEnd(34)}${ms(drag.firstMs)}`);
  console.log(
    `${"200 conductors over six surfaces".padEnd(34)}${ms(large.dragMs)} drag ${ms(large.keystrokeMs)} edit`,
  );
  console.log("\nHover on a plan of 30 circuits, while another plan is opened and edited");
  for (const [beside, { medianMs, longestMs }] of Object.entries(results.hover))
    console.log(`${beside.padEnd(34)}${ms(medianMs)} median ${ms(longestMs)} longest`);
  console.log("\nSolver alone, one scenario, median");
  for (const size of sizes) {
    const { oursMs, threeScenariosMs, ngspiceMs } = results.solver.bySize[size];
    const beside =
      ngspiceMs === undefined ? "ngspice is not installed" : `ngspice ${ngspiceMs.toFixed(2)} ms`;
    console.log(
      `${`${size} branches`.padEnd(28)}${oursMs.toFixed(2).padStart(9)} ms  ${beside}, three scenarios ${threeScenariosMs.toFixed(2)} ms`,
    );
  }
  console.log("\nDiagram, from an edit to the new picture, median");
  console.log(`${"".padEnd(28)}${diagramSizes.map((size) => `${size} circuits`.padStart(16)).join("")}`);
  for (const [view, row] of Object.entries(results.diagram)) {
    console.log(`${view.padEnd(28)}${diagramSizes.map((size) => ms(row[size].ms).padStart(16)).join("")}`);
  }
  const { check, html, pdf, htmlBytes, pdfBytes } = results.report;
  console.log("\nReport of the library bus, process start included, median");
  console.log(`${"check alone".padEnd(34)}${ms(check)}`);
  console.log(
    `${"as HTML".padEnd(34)}${ms(html)}  ${(html / check).toFixed(1)} times the check, ${kib(htmlBytes)}`,
  );
  console.log(
    `${"as PDF".padEnd(34)}${ms(pdf)}  ${(pdf / check).toFixed(1)} times the check, ${kib(pdfBytes)}`,
  );
  const { builds, firstMs, unchangedMs, oneChangedMs, versionMs } = results.many;
  console.log(`\nA repository of ${builds} builds, checked by one command, process start included`);
  for (const [name, value] of Object.entries({
    "the first time": firstMs,
    "nothing changed": unchangedMs,
    "one file changed": oneChangedMs,
    "any command at all (--version)": versionMs,
  }))
    console.log(`${name.padEnd(34)}${ms(value)}`);
  console.log("\nBounds");
  for (const { what, ratio, limit, met } of results.bounds) {
    console.log(
      `${what.padEnd(52)}${ratio.toFixed(2).padStart(6)}  at most ${limit}  ${met ? "met" : "NOT MET"}`,
    );
  }
  console.log("\nCold, process start included, median");
  for (const [name, value] of Object.entries({ ...results.command, ...results.start }))
    console.log(`${name.padEnd(34)}${ms(value)}`);
  console.log("\nSizes");
  for (const [name, { plain, compressed }] of Object.entries(results.bytes)) {
    console.log(`${name.padEnd(44)}${kib(plain)} ${kib(compressed)} compressed`);
  }
}

function kib(bytes) {
  return `${Math.round(bytes / 1024).toLocaleString("en")} KiB`.padStart(11);
}
