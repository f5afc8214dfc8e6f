// All answers of a server at rest about the open files, and those of a process that only ever saw the last texts.

import { isDeepStrictEqual } from "node:util";
import { startSoakEditor } from "./soak-editor.mjs";

/** The differences between a long-running server and a fresh one in the same world; empty when they agree. */
export async function differencesFromFresh(editor, world, questions) {
  const fresh = await startSoakEditor(world);
  try {
    const [lived, expected] = await Promise.all(
      [editor, fresh].map((asked) => everythingSaid(asked, world, questions)),
    );
    editor.troubles.push(...fresh.troubles.map((trouble) => `fresh process: ${trouble}`));
    return Object.keys({ ...expected, ...lived })
      .filter((key) => !isDeepStrictEqual(lived[key], expected[key]))
      .map((key) => ({ asked: key, lived: lived[key], fresh: expected[key] }));
  } finally {
    await fresh.end();
  }
}

async function everythingSaid(editor, world, questions) {
  // A fresh process takes every text as written. Saving one ends its last edit.
  for (const uri of world.open.keys()) editor.notify("textDocument/didSave", { textDocument: { uri } });
  await editor.rest(world.open);
  const said = {};
  const answers = [];
  const note = (name, method, params) => {
    const noted = editor.ask(method, params).then((answer) => {
      said[name] = withoutResultId(answer);
    });
    answers.push(noted);
    return noted;
  };
  for (const uri of world.open.keys()) {
    const textDocument = { uri };
    const whole = { start: { line: 0, character: 0 }, end: { line: 100_000, character: 0 } };
    if (world.pulls) note(`findings of ${uri}`, "textDocument/diagnostic", { textDocument });
    note(`hints of ${uri}`, "textDocument/inlayHint", { textDocument, range: whole });
    note(`lenses of ${uri}`, "textDocument/codeLens", { textDocument });
    note(`symbols of ${uri}`, "textDocument/documentSymbol", { textDocument });
  }
  // One after another: a newer question about the same view would cancel the older one.
  for (const { method, params } of questions)
    await note(`${method} ${JSON.stringify(params)}`, method, params);
  await Promise.all(answers);
  await editor.rest(world.open);
  for (const [uri, status] of editor.statuses) said[`status of ${uri}`] = status;
  for (const [uri, items] of editor.pushed) said[`pushed for ${uri}`] = items;
  return said;
}

/** It depends on the earlier work of the process. */
function withoutResultId({ answer, error }) {
  if (error) return { error };
  if (typeof answer !== "object" || answer === null || !("resultId" in answer)) return { answer };
  const { resultId: _, ...rest } = answer;
  return { answer: rest };
}
