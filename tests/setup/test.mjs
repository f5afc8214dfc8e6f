// `npm test`: the whole gate. The checks that run none of our code run beside the tests.
// `npm run test:every-case` takes every case of the tests that otherwise take a share: `tests/setup/sampled.ts`.

import { deadCode, formatAndLint, tests, types } from "./checks.mjs";
import { runSteps } from "./steps.mjs";

const chains = [
  [
    { what: "git", words: ["tests/setup/git.mjs"] },
    { what: "ngspice, where it can be had", words: ["tests/setup/ngspice.mjs"] },
    tests("run"),
    { what: "tests in the real editor", words: ["tests/editor/run.mjs"] },
  ],
  [formatAndLint, ...types, deadCode],
];

const words = process.argv.slice(2);
if (words.includes("--every-case")) process.env.LOOMWRIGHT_CASES = "all";
const only = words.filter((word) => !word.startsWith("--"));
const asked = chains.map((chain) => chain.filter(({ what }) => only.length === 0 || only.includes(what)));
process.exitCode = (await runSteps(asked)) ? 0 : 1;
