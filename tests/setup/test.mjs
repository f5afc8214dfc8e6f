// `npm test`: the whole gate. Every step runs even when one before it failed, so that one run tells everything.

import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";

const house = fileURLToPath(new URL("../..", import.meta.url));
const node = process.execPath;

const steps = [
  {
    what: "format and lint",
    words: ["node_modules/@biomejs/biome/bin/biome", "check", "--error-on-warnings", "."],
  },
  { what: "types", words: ["node_modules/typescript/lib/tsc.js", "-p", "."] },
  {
    what: "types of the diagram's page",
    words: ["node_modules/typescript/lib/tsc.js", "-p", "extension/diagram/page"],
  },
  {
    what: "types of the stories in the editor",
    words: ["node_modules/typescript/lib/tsc.js", "-p", "tests/editor"],
  },
  { what: "dead code", words: ["node_modules/knip/bin/knip.js", "--config", ".knip.json"] },
  { what: "git", words: ["tests/setup/git.mjs"] },
  { what: "ngspice, where it can be had", words: ["tests/setup/ngspice.mjs"] },
  { what: "tests", words: ["node_modules/vitest/vitest.mjs", "run", "--config", "tests/vitest.config.ts"] },
  { what: "tests in the real editor", words: ["tests/editor/run.mjs"] },
];

const only = process.argv.slice(2);
const results = steps
  .filter(({ what }) => only.length === 0 || only.includes(what))
  .map(({ what, words }) => {
    console.log(`\n== ${what} ==`);
    const { status } = spawnSync(node, words, { cwd: house, stdio: "inherit" });
    return { what, passed: status === 0 };
  });

console.log("");
for (const { what, passed } of results) console.log(`${passed ? "passed" : "FAILED"}  ${what}`);
const failed = results.filter(({ passed }) => !passed).length;
console.log(`steps: ${results.length - failed} passed, ${failed} failed`);
process.exitCode = failed === 0 ? 0 : 1;
