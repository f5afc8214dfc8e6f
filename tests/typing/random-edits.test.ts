import { afterEach, expect, test } from "vitest";
import { type ScriptedEditor, startEditor } from "../protocol/scripted-editor.ts";
import { everyCase, sampled } from "../setup/sampled.ts";
import { ownPlans } from "./typed-plans.ts";

/**
 * Random edits of two plans, typed into the built server over its real protocol, with questions in between: 400 of them, or
 * 3,000 in a run of every case. The server never dies, answers every question, and ends with exactly the findings of a server that
 * sees only the last text.
 */
const editors: ScriptedEditor[] = [];
const edits = everyCase ? 500 : 200;

afterEach(async () => {
  for (const editor of editors.splice(0)) expect(await editor.quit()).toBe(0);
});

test.each(
  sampled("seeds of random edits", [
    [1, 0],
    [2, 0],
    [3, 0],
    [4, 0],
    [1, 1],
    [2, 1],
  ] as const),
)(`${edits} random edits from seed %i, in plan %i`, { timeout: 180_000 }, async (seed, plan) => {
  const { file, files } = ownPlans[plan]!;
  const random = randomFrom(seed);
  const configuration = { timeLimitMs: 200 };
  const editor = await startEditor({ files, configuration });
  editors.push(editor);
  editor.open(file);
  const original = editor.textOf(file);

  for (let edit = 1; edit <= edits; edit++) {
    // Sometimes returns to a whole text: otherwise everything would be typed into one that is permanently broken.
    const from = random() < 0.2 ? original : editor.textOf(file);
    editor.retype(file, edited(from, random));
    if (edit % 10 === 0) await question(editor, file, random);
    // A file that no longer names the library is no plan, and the server has no state for it.
    const isPlan = editor.textOf(file).includes("loomwright");
    if (edit % 50 === 0 && isPlan) await editor.until(file, "idle", "incomplete", "failed");
    expect(editor.statuses.filter(({ state }) => state === "failed")).toEqual([]);
  }

  // The last text is whole again, except for one number: incomplete texts have no findings to compare. Above 30 A the wire is
  // never protected.
  const last = original.replace("protect: 10", `protect: ${30 + Math.ceil(random() * 40)}`);
  expect(last).not.toBe(original);
  editor.retype(file, last);
  await editor.until(file, "idle");

  const fresh = await startEditor({ files, configuration });
  editors.push(fresh);
  fresh.open(file, last);
  await fresh.until(file, "idle");
  const withoutFolder = (of: ScriptedEditor) =>
    JSON.parse(JSON.stringify(of.pushed(file) ?? []).replaceAll(of.uri(""), "folder/"));
  expect(withoutFolder(editor).length).toBeGreaterThan(0);
  expect(withoutFolder(editor)).toEqual(withoutFolder(fresh));
  expect(editor.logged).toEqual([]);
});

const questions = ["hover", "completion", "documentSymbol", "codeLens", "codeAction", "inlayHint"];

/** Any answer will do, including "the text changed meanwhile"; an answer must come. */
async function question(editor: ScriptedEditor, file: string, random: () => number): Promise<void> {
  const lines = editor.textOf(file).split("\n");
  const line = Math.floor(random() * lines.length);
  const position = { line, character: Math.floor(random() * (lines[line]!.length + 1)) };
  await editor.ask(`textDocument/${questions[Math.floor(random() * questions.length)]}`, file, {
    position,
    range: { start: position, end: { line: lines.length, character: 0 } },
    context: { diagnostics: [] },
  });
}

const pieces = [
  ..."{}()[]<>,;:.'\"`$/*\\ \n0129-+=!?",
  "circuit({",
  "gauge: ",
  "import ",
  "for (;;) ",
  "as any",
  "NaN",
  '"1/0"',
  "...usual",
  "=> ",
  "//",
  "/*",
  "undefined",
  "\u202E",
  "冷",
  "🚐",
];

function edited(text: string, random: () => number): string {
  const at = Math.floor(random() * (text.length + 1));
  const length = Math.floor(random() ** 3 * 40);
  const piece = pieces[Math.floor(random() * pieces.length)]!;
  const kinds = [
    () => text.slice(0, at) + piece + text.slice(at),
    () => text.slice(0, at) + text.slice(at + length),
    () => text.slice(0, at) + piece + text.slice(at + length),
    () => text.slice(0, at) + text.slice(at, at + length) + text.slice(at),
    () => text.replace(/\d+/, String(Math.floor(random() * 200))),
    () => {
      const lines = text.split("\n");
      const [moved = ""] = lines.splice(Math.floor(random() * lines.length), 1);
      lines.splice(Math.floor(random() * lines.length), 0, moved);
      return lines.join("\n");
    },
  ];
  return kinds[Math.floor(random() * kinds.length)]!();
}

/** The same numbers from the same seed on every machine: mulberry32, public domain. */
function randomFrom(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}
