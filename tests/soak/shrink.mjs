// Reproduces a mismatch with fewer operations.

import { mkdtempSync, realpathSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { differencesFromFresh } from "./comparison.mjs";
import { perform, worldIn } from "./operations.mjs";
import { startSoakEditor } from "./soak-editor.mjs";

/**
 * Repeats the operations since the last agreement, one by one with a rest after each, and leaves out as many as possible.
 * Undefined if this does not reproduce the mismatch: it needs a longer history, or depended on timing.
 */
export async function shrunk({ since, questions }) {
  let runs = 0;
  const attempt = async (operations) => {
    runs++;
    return again({ world: since.world, operations, questions });
  };
  let operations = since.operations.filter(({ cancelAfterMs }) => cancelAfterMs === undefined);
  let differences = await attempt(operations);
  if (differences.length === 0) return undefined;
  for (
    let size = Math.ceil(operations.length / 2);
    size >= 1 && runs < mostRuns;
    size = Math.floor(size / 2)
  ) {
    for (let at = 0; at < operations.length && runs < mostRuns; ) {
      const fewer = [...operations.slice(0, at), ...operations.slice(at + size)];
      const found = await attempt(fewer);
      if (found.length > 0) [operations, differences] = [fewer, found];
      else at += size;
    }
  }
  return { world: since.world, operations, differences };
}

/** Each run starts two servers. */
const mostRuns = 40;

async function again({ world: start, operations, questions }) {
  const base = realpathSync(mkdtempSync(join(tmpdir(), "loomwright-soak-")));
  const moved = (value) =>
    JSON.parse(JSON.stringify(value).replaceAll(folderNamed(start), pathToFileURL(base).href));
  const world = worldIn(base, moved(start));
  const editor = await startSoakEditor(world);
  try {
    for (const operation of moved(operations)) {
      await perform(operation, world, editor);
      await editor.rest(world.open);
    }
    return await differencesFromFresh(editor, world, moved(questions));
  } catch (error) {
    return [{ asked: "anything", lived: error.message }];
  } finally {
    editor.kill();
    rmSync(base, { recursive: true, force: true });
  }
}

/** The folder of the URIs in a snapshot. */
function folderNamed({ base }) {
  return pathToFileURL(base).href;
}
