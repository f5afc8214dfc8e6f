// How long a picture or a report takes: the diagram from an edit to the new picture, in the server as the panel requests it, and
// the report of the largest example from the command line, beside a plain check of it.

import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { performance } from "node:perf_hooks";
import { fileURLToPath } from "node:url";
import { median } from "./keystroke-bench.mjs";
import { loomwrightServer, typescriptServer } from "./peers.mjs";
import { networkPlanText } from "./plan-text.mjs";

const house = fileURLToPath(new URL("../..", import.meta.url));
export const diagramSizes = [20, 60, 200];
const views = ["one-line", "wiring"];
const edits = 11;
const warmUpEdits = 7;

/**
 * By view and number of circuits: `ms`, the median time from an edit to its picture, and `ofSix`, the median ratio to the time in
 * which TypeScript 6's server answers the same edit of the same file. That is a wait that everybody knows from the editor, on the
 * same machine at the same moment; it has no part in making the picture.
 */
export async function diagramBench(folder) {
  const results = {};
  for (const view of views) {
    results[view] = {};
    for (const size of diagramSizes) results[view][size] = await editToPicture(folder, view, size);
  }
  return results;
}

/** Each edit types a letter into the name of a circuit: the label grows, so no layout can be reused. */
async function editToPicture(folder, view, circuits) {
  const text = networkPlanText(Math.round(circuits * 2.25 + 4));
  const file = join(folder, `diagram-${view}-${circuits}.ts`);
  writeFileSync(file, text);
  const server = await loomwrightServer(folder);
  const six = await typescriptServer(folder);
  try {
    await server.open(file, text);
    await six.open(file, text);
    const lines = text.split("\n");
    const line = lines.findIndex(
      (row, index) => index > lines.length / 2 && row.startsWith('  name: "circuit '),
    );
    const at = { line, character: lines[line].indexOf('",') };
    const times = [];
    const sixTimes = [];
    let last = "";
    for (let edit = 0; edit < edits + warmUpEdits; edit++) {
      const before = performance.now();
      const answer = await server.picture(file, { start: at, end: at }, "x", {
        view,
        scenario: "everything on",
      });
      if (edit >= warmUpEdits) times.push(performance.now() - before);
      if (!answer?.picture || answer.picture.svg === last)
        throw new Error(`no new picture of ${circuits} circuits after edit ${edit}`);
      last = answer.picture.svg;
      const beforeSix = performance.now();
      await six.change(file, { start: at, end: at }, "x");
      if (edit >= warmUpEdits) sixTimes.push(performance.now() - beforeSix);
    }
    return { ms: median(times), ofSix: median(times.map((time, edit) => time / sixTimes[edit])) };
  } finally {
    server.close();
    six.close();
  }
}

/** The report of the library bus as both kinds of file, and a check of it, each as a separate command, ms. */
export function reportBench() {
  const folder = mkdtempSync(join(tmpdir(), "loomwright-report-"));
  try {
    const bus = join(house, "examples/library-bus");
    return {
      check: commandMs(["check", bus, "--fresh"], folder),
      html: commandMs(["report", bus, "--out", join(folder, "bus.html"), "--force"], folder),
      pdf: commandMs(["report", bus, "--out", join(folder, "bus.pdf"), "--force"], folder),
      htmlBytes: readFileSync(join(folder, "bus.html")).length,
      pdfBytes: readFileSync(join(folder, "bus.pdf")).length,
    };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Median of three, for the whole process. */
function commandMs(words, cwd) {
  const times = Array.from({ length: 3 }, () => {
    const before = performance.now();
    const { status, stderr } = spawnSync(
      process.execPath,
      [join(house, "server/dist/command.cjs"), ...words],
      { cwd, encoding: "utf8" },
    );
    if (status === null || status > 1) throw new Error(`loomwright ${words.join(" ")}: ${stderr}`);
    return performance.now() - before;
  });
  return times.sort((a, b) => a - b)[1];
}
