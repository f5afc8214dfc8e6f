// `npm test`: the whole gate. The checks that run none of our code, and the stories in the real editor, which wait more than they
// work, run beside the tests.
// `npm run test:every-case` takes every case of the tests that otherwise take a share: `tests/setup/sampled.ts`.

import { deadCode, formatAndLint, tests, types } from "./checks.mjs";
import { runSteps } from "./steps.mjs";

const ngspice = { what: "ngspice, where it can be had", words: ["tests/setup/ngspice.mjs"] };

const chains = [
  // A story fails if its editor does not answer for a minute; a test may wait. So the stories come first.
  [{ what: "git", words: ["tests/setup/git.mjs"] }, ngspice, { ...tests("run"), priority: 5 }],
  // Each may install packages, which only one program at a time can do.
  [{ what: "tests in the real editor", words: ["tests/editor/run.mjs"], after: ngspice }],
  [formatAndLint, ...types, deadCode],
];

// Built a moment ago, and in use by the stories.
process.env.LOOMWRIGHT_BUILT = "yes";

const words = process.argv.slice(2);
if (words.includes("--every-case")) process.env.LOOMWRIGHT_CASES = "all";
const only = words.filter((word) => !word.startsWith("--"));
const asked = chains.map((chain) => chain.filter(({ what }) => only.length === 0 || only.includes(what)));
process.exitCode = (await runSteps(asked)) ? 0 : 1;
