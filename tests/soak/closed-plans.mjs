// How much memory the largest thread of the built server uses after many plans were opened, checked, viewed, and closed again.
// `node tests/soak/closed-plans.mjs [PLANS] [CIRCUITS]` prints it for three such sequences.

import { mkdtempSync, realpathSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { TextDocument } from "vscode-languageserver-textdocument";
import { planText } from "../bench/plan-text.mjs";
import { startSoakEditor } from "./soak-editor.mjs";

/** Megabytes in use after each of the numbers of plans, in one server: opened and closed one after another. */
export async function afterOneByOne(numbers, circuits) {
  return inFolder(circuits, 0, async ({ editor, open, documentOf }) => {
    const used = [];
    for (let index = 0; index < Math.max(...numbers); index++) {
      const close = await open(documentOf(index));
      await close();
      if (numbers.includes(index + 1)) used.push(await steadyMB(editor));
    }
    return used;
  });
}

/** The same, each number of plans open at the same time before they are closed. */
export async function afterAllAtOnce(numbers, circuits) {
  return inFolder(circuits, 0, async ({ editor, open, documentOf }) => {
    const used = [];
    for (const number of numbers) {
      const closes = [];
      for (let index = 0; index < number; index++) closes.push(await open(documentOf(index)));
      for (const close of closes) await close();
      used.push(await steadyMB(editor));
    }
    return used;
  });
}

/** The same, one after another, in a folder with that many files on disk from the beginning; a server for each number. */
export async function afterFolderOf(numbers, circuits) {
  const used = [];
  for (const number of numbers) {
    const one = await inFolder(circuits, number, async ({ editor, open, documentOf }) => {
      for (let index = 0; index < number; index++) await (await open(documentOf(index)))();
      return steadyMB(editor);
    });
    used.push(one);
  }
  return used;
}

/** At rest, the server prepares an engine that could take over: the memory is measured when that is done. */
async function steadyMB(editor) {
  for (let before = 0; ; ) {
    const now = await editor.largestThreadMB();
    if (Math.abs(now - before) < 0.02 * now) return now;
    before = now;
    await new Promise((resolve) => setTimeout(resolve, 1_500));
  }
}

async function inFolder(circuits, files, run) {
  const base = realpathSync(mkdtempSync(join(tmpdir(), "loomwright-closed-")));
  const nameOf = (index) => join(base, `plan-${String(index).padStart(3, "0")}.ts`);
  const textOf = (index) => planText(circuits).replace("measured build", `build ${index}`);
  for (let index = 0; index < files; index++) writeFileSync(nameOf(index), textOf(index));
  const world = { folders: [pathToFileURL(base).href], pulls: false, configuration: {}, open: new Map() };
  const editor = await startSoakEditor(world, [
    "--require",
    fileURLToPath(new URL("memory-of-threads.cjs", import.meta.url)),
  ]);
  const documentOf = (index) =>
    TextDocument.create(pathToFileURL(nameOf(index)).href, "typescript", 1, textOf(index));
  /** Views a plan as an editor does; returns the function that closes it. */
  const open = async (document) => {
    const { uri } = document;
    world.open.set(uri, document);
    editor.open(document);
    await editor.rest(world.open);
    const textDocument = { uri };
    const whole = { start: { line: 0, character: 0 }, end: { line: 100_000, character: 0 } };
    const position = document.positionAt(document.getText().indexOf("load: ") + 6);
    await Promise.all([
      editor.ask("textDocument/inlayHint", { textDocument, range: whole }),
      editor.ask("textDocument/codeLens", { textDocument }),
      editor.ask("textDocument/hover", { textDocument, position }),
      editor.ask("textDocument/completion", { textDocument, position }),
    ]);
    return async () => {
      world.open.delete(uri);
      editor.notify("textDocument/didClose", { textDocument });
      await editor.rest(world.open);
    };
  };
  try {
    const result = await run({ editor, open, documentOf });
    if (editor.troubles.length > 0) throw new Error(editor.troubles.join("\n"));
    return result;
  } finally {
    await editor.end();
    rmSync(base, { recursive: true, force: true });
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const plans = Number(process.argv[2] ?? 200);
  const circuits = Number(process.argv[3] ?? 2_000);
  const atOnce = Math.min(plans, 50);
  const show = (way, [few, many], number) =>
    console.log(
      `${way}: ${few.toFixed(0)} MB after 5 plans, ${many.toFixed(0)} MB after ${number}, ${(many / few).toFixed(2)} times`,
    );
  console.log(`plans of ${circuits} circuits`);
  show("one after another", await afterOneByOne([5, plans], circuits), plans);
  show("open at the same time", await afterAllAtOnce([5, atOnce], circuits), atOnce);
  show("all in one folder", await afterFolderOf([5, plans], circuits), plans);
}
