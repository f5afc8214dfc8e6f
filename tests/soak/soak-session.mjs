// One server and its editor: random work on several open files of one folder, and occasional comparisons with a fresh process.

import { execFileSync } from "node:child_process";
import { mkdtempSync, realpathSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setImmediate as nextTurn, setTimeout as pause } from "node:timers/promises";
import { pathToFileURL } from "node:url";
import { differencesFromFresh } from "./comparison.mjs";
import { perform, snapshotOf, worldIn } from "./operations.mjs";
import { randomFrom } from "./random.mjs";
import { calmConfiguration, createRandomOperations, randomQuestion } from "./random-operations.mjs";
import { startSoakEditor } from "./soak-editor.mjs";
import { startingFiles, workspaceFolders } from "./starting-plans.mjs";

/**
 * Runs `edits` edits from this seed, with a comparison about every `editsPerComparison`. An odd seed is an editor that pulls
 * findings, an even one receives them pushed. Updates `counts` during the run.
 */
export async function soakSession({ seed, edits, editsPerComparison, counts, isOver }) {
  const random = randomFrom(seed);
  const base = realpathSync(mkdtempSync(join(tmpdir(), "loomwright-soak-")));
  const openFirst = ["camper/plan.ts", "camper/bank.ts", "camper/stock.ts", "camper/odd.ts"];
  const world = worldIn(base, {
    pulls: seed % 2 !== 0,
    folders: workspaceFolders,
    configuration: calmConfiguration,
    open: openFirst.map((name) => [pathToFileURL(join(base, name)).href, startingFiles[name], 1]),
    files: startingFiles,
  });
  keepInGit(base);
  const editor = await startSoakEditor(world);
  counts.residentMB = editor.residentMB;
  const operations = createRandomOperations(world, random);
  const underWay = new Set();
  const mismatches = [];
  let [edit, step] = [0, 0];
  let since = { world: snapshotOf(world), operations: [] };

  /** Waits for an answer only now and then. */
  const start = async (operation) => {
    step++;
    since.operations.push(operation);
    if (operation.kind === "type") {
      edit++;
      counts.edits++;
    }
    const done = perform(operation, world, editor);
    if (operation.kind === "configure") await done;
    if (operation.kind !== "ask") return;
    counts.requests++;
    const tracked = done
      .then((said) => applySome(operation, said))
      .catch((error) => void editor.troubles.push(error.message))
      .finally(() => underWay.delete(tracked));
    underWay.add(tracked);
    // An editor has only a limited number of requests under way.
    if (underWay.size > 24) await Promise.all(underWay);
  };

  const applySome = async ({ method, cancelAfterMs }, said) => {
    if (method !== "textDocument/codeAction" || cancelAfterMs !== undefined || !random.chance(0.3)) return;
    const action = random.pick(said?.answer ?? []);
    for (const operation of action ? operations.application(action) : []) await start(operation);
  };

  const compare = async () => {
    await Promise.all(underWay);
    // A fresh process has no last complete text of a half-typed file, so all files are made whole first.
    for (const operation of operations.mending()) await start(operation);
    const questions = Array.from({ length: 12 }, () => randomQuestion(world, random)).filter(Boolean);
    counts.comparisons++;
    const differences = await differencesFromFresh(editor, world, questions);
    if (differences.length > 0) {
      counts.mismatches++;
      mismatches.push({ seed, step, edit, differences, questions, since, now: snapshotOf(world) });
    }
    since = { world: snapshotOf(world), operations: [] };
  };

  const troubles = () => editor.troubles.map((trouble) => `seed ${seed}, step ${step}: ${trouble}`);
  try {
    const distance = () => Math.ceil(editsPerComparison * (0.5 + random.next()));
    for (let next = distance(); edit < edits && !isOver(); ) {
      const operation = operations.next();
      if (operation) await start(operation);
      if (editor.troubles.length > 0) break;
      // Sometimes fast, sometimes with a pause: edits meet every state of the server.
      await random.weighted([
        [60, () => undefined],
        [25, () => nextTurn()],
        [10, () => pause(random.below(20))],
        [5, () => Promise.all(underWay)],
      ])();
      if (edit < next && edit < edits) continue;
      await compare();
      next = edit + distance();
      // A further mismatch of the same server is most likely the first one again.
      if (mismatches.length > 0) break;
    }
    await Promise.all(underWay);
  } catch (error) {
    editor.troubles.push(error.message);
  } finally {
    if (editor.troubles.length === 0) await editor.end();
    else editor.kill();
    rmSync(base, { recursive: true, force: true });
  }
  return { mismatches, troubles: troubles(), since: editor.troubles.length > 0 ? since : undefined };
}

/** Gives the difference to the last commit some content. Without git that question is simply answered differently. */
function keepInGit(base) {
  const git = (...words) => execFileSync("git", ["-C", base, ...words], { stdio: "ignore" });
  try {
    git("init");
    git("add", ".");
    git("-c", "user.name=soak", "-c", "user.email=soak@example.org", "commit", "-m", "Plans");
  } catch {
    // No git on this machine.
  }
}
