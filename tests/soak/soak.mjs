// `npm run soak -- MINUTES [--seed N] [--edits N] [--edits-per-comparison N] [--folder FOLDER]`
//
// Random edits over the protocol, with questions, cancellations, changes on disk, floods of file events, and changes of settings
// and folders. Now and then the server comes to rest, and all its answers are compared with a fresh process that is given the
// same texts. Ends with 1 at a mismatch, at a request without an answer, and at any output on standard error.

import { mkdirSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { parseArgs } from "node:util";
import { shrunk } from "./shrink.mjs";
import { soakSession } from "./soak-session.mjs";

const usage = "npm run soak -- MINUTES [--seed N] [--edits N] [--edits-per-comparison N] [--folder FOLDER]";
const options = {
  seed: { type: "string", default: "1" },
  edits: { type: "string", default: String(Number.MAX_SAFE_INTEGER) },
  "edits-per-comparison": { type: "string", default: "100" },
  folder: { type: "string", default: join(tmpdir(), "loomwright-soak-mismatches") },
};

const { values, positionals } = parseArgs({ options, allowPositionals: true });
const minutes = Number(positionals[0]);
const seed = Number(values.seed);
const mostEdits = Number(values.edits);
const editsPerComparison = Number(values["edits-per-comparison"]);
if (!(minutes > 0) || !Number.isInteger(seed) || !(mostEdits > 0) || !(editsPerComparison > 0)) {
  console.error(`usage: ${usage}`);
  process.exit(2);
}

/** The number of edits for one server; then another one begins with the next seed. */
const editsPerSession = 5_000;

const began = performance.now();
const minutesGone = () => (performance.now() - began) / 60_000;
const counts = {
  edits: 0,
  requests: 0,
  comparisons: 0,
  mismatches: 0,
  troubles: 0,
  residentMB: () => undefined,
};
const everyMinute = setInterval(() => console.log(`${minutesGone().toFixed(0)} min: ${inWords()}`), 60_000);

for (let session = 0; counts.edits < mostEdits && minutesGone() < minutes; session++) {
  const { mismatches, troubles, since } = await soakSession({
    seed: seed + session,
    edits: Math.min(editsPerSession, mostEdits - counts.edits),
    editsPerComparison,
    counts,
    isOver: () => minutesGone() >= minutes,
  });
  for (const trouble of troubles) console.error(trouble);
  counts.troubles += troubles.length;
  if (troubles.length > 0) keep(`trouble-${seed + session}`, { troubles, since });
  for (const mismatch of mismatches) {
    const name = `mismatch-${mismatch.seed}-${mismatch.step}`;
    console.error(
      `seed ${mismatch.seed}, step ${mismatch.step}: ${mismatch.differences.length} answers differ`,
    );
    keep(name, mismatch);
    const shorter = await shrunk(mismatch);
    if (shorter) keep(`${name}-shrunk`, shorter);
    else console.error("  it did not come again when its last operations were done one by one");
  }
}

clearInterval(everyMinute);
console.log(`after ${minutesGone().toFixed(1)} min: ${inWords()}`);
process.exitCode = counts.mismatches === 0 && counts.troubles === 0 ? 0 : 1;

function inWords() {
  const { edits, requests, comparisons, mismatches, troubles, residentMB } = counts;
  const memory = residentMB();
  return [
    `${edits} edits`,
    `${requests} requests`,
    `${comparisons} comparisons`,
    `${mismatches} mismatches`,
    `${troubles} troubles`,
    ...(memory ? [`server at ${memory} MB`] : []),
  ].join(", ");
}

function keep(name, what) {
  mkdirSync(values.folder, { recursive: true });
  const file = join(values.folder, `${name}.json`);
  writeFileSync(file, `${JSON.stringify(what, null, 2)}\n`);
  console.error(`  kept in ${file}`);
}
