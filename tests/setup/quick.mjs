// `npm run quick`: format, lint and types of everything, and the tests near the changed files.
// `npm run quick -- --related` runs every test that imports one of them, however indirectly.

import { changedFiles } from "./changed-files.mjs";
import { formatAndLint, tests, types } from "./checks.mjs";
import { nearTests } from "./near-tests.mjs";
import { runSteps } from "./steps.mjs";

const { files, since } = changedFiles();
const related = process.argv.includes("--related");
const near = nearTests(files);

console.log(`Changed since ${since}:`);
list(files, "nothing; format, lint and types are checked");
if (files.length > 0 && !related) {
  console.log("Tests near these files:");
  list(near.tests, "none");
}
console.log("`npm test` runs everything.\n");

process.exitCode = (await runSteps([testSteps(), [formatAndLint, ...types]])) ? 0 : 1;

function testSteps() {
  const build = { what: "build", words: ["tests/setup/build-if-stale.mjs"] };
  if (files.length === 0) return [];
  if (related) return [build, tests("related", "--run", "--passWithNoTests", ...files)];
  if (near.tests.length === 0) return [];
  return [...(near.runTheBuild ? [build] : []), tests("run", ...near.tests)];
}

function list(lines, ifNone) {
  for (const line of lines.length > 0 ? lines : [ifNone]) console.log(`  ${line}`);
}
