// `npm run demo`: the main job on a real plan. Checks a camper's first draft, repairs a copy of it, and checks that; then makes a
// builder's workshop documents for a whole network.

import { spawnSync } from "node:child_process";
import { cpSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

const house = fileURLToPath(new URL("../..", import.meta.url));
const copy = mkdtempSync(join(tmpdir(), "loomwright-demo-"));

try {
  say("A camper's first draft, examples/camper-draft/camper.ts:");
  const draft = loomwright(["check", "examples/camper-draft"], house);
  cpSync(join(house, "examples/camper-draft"), join(copy, "camper-draft"), { recursive: true });
  say("A copy of it, repaired with `loomwright fix`:");
  const repaired = loomwright(["fix", "camper-draft"], copy);
  say("A whole network, examples/library-bus: what hangs behind each fuse, and papers for the bench:");
  const bus = join(house, "examples/library-bus");
  const papers = mkdtempSync(join(tmpdir(), "library-bus-"));
  const made = [
    ["schedule", bus, "--table", "fuse-map"],
    ["draw", bus, "--view", "one-line", "--out", join(papers, "diagram.svg")],
    ["report", bus, "--out", join(papers, "report.pdf")],
  ].map((words) => loomwright(words, house));
  say(
    `Open the two files in ${papers}, and examples/camper-draft in VS Code to see findings while you type; the README says how.`,
  );
  // The draft is wrong on purpose, the repaired copy is not: any other result means that the demo itself is broken.
  const sound = draft === 1 && repaired === 0 && made.every((code) => code === 0);
  process.exitCode = sound ? 0 : 1;
} finally {
  rmSync(copy, { recursive: true, force: true });
}

function loomwright(words, cwd) {
  return spawnSync(process.execPath, [join(house, "server/dist/command.cjs"), ...words], {
    cwd,
    stdio: "inherit",
  }).status;
}

function say(text) {
  console.log(`\n${text}\n`);
}
