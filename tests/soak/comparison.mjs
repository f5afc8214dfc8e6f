// Everything that a server at rest says of the open files, and the same of a process that never saw anything but the last texts.

import { isDeepStrictEqual } from "node:util";
import { startSoakEditor } from "./soak-editor.mjs";

/** The differences between a server that has lived through much and a fresh one in the same world; empty when they agree. */
export async function differencesFromFresh(editor, world, questions) {
  const lived = await everythingSaid(editor, world, questions);
  const fresh = await startSoakEditor(world);
  try {
    const expected = await everythingSaid(fresh, world, questions);
    editor.troubles.push(...fresh.troubles.map((trouble) => `fresh process: ${trouble}`));
    return Object.keys({ ...expected, ...lived })
      .filter((key) => !isDeepStrictEqual(lived[key], expected[key]))
      .map((key) => ({ asked: key, lived: lived[key], fresh: expected[key] }));
  } finally {
    await fresh.end();
  }
}

async function everythingSaid(editor, world, questions) {
  await editor.rest(world.open);
  const said = {};
  const note = async (name, method, params) => {
    said[name] = withoutResultId(await editor.ask(method, params));
  };
  for (const uri of world.open.keys()) {
    const textDocument = { uri };
    const whole = { start: { line: 0, character: 0 }, end: { line: 100_000, character: 0 } };
    if (world.pulls) await note(`findings of ${uri}`, "textDocument/diagnostic", { textDocument });
    await note(`hints of ${uri}`, "textDocument/inlayHint", { textDocument, range: whole });
    await note(`lenses of ${uri}`, "textDocument/codeLens", { textDocument });
    await note(`symbols of ${uri}`, "textDocument/documentSymbol", { textDocument });
  }
  for (const { method, params } of questions) await note(`${method} ${JSON.stringify(params)}`, method, params);
  await editor.rest(world.open);
  for (const [uri, status] of editor.statuses) said[`status of ${uri}`] = status;
  for (const [uri, items] of editor.pushed) said[`pushed for ${uri}`] = items;
  return said;
}

/** It counts what the process has done. */
function withoutResultId({ answer, error }) {
  if (error) return { error };
  if (typeof answer !== "object" || answer === null || !("resultId" in answer)) return { answer };
  const { resultId: _, ...rest } = answer;
  return { answer: rest };
}
