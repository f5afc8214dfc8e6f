import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterEach, beforeEach, expect, test } from "vitest";
import { type DocumentAnswer, type DocumentParams, documentMethod } from "../../server/language/messages.ts";
import { sampleBuild } from "../../server/language/sample-build.tester.ts";
import { type ScriptedEditor, startEditor } from "./scripted-editor.ts";

const editors: ScriptedEditor[] = [];
let handedOut: string;

beforeEach(() => {
  handedOut = mkdtempSync(join(tmpdir(), "loomwright-handed-out-"));
});
afterEach(async () => {
  for (const editor of editors.splice(0)) expect(await editor.quit()).toBe(0);
  rmSync(handedOut, { recursive: true, force: true });
});

async function start(): Promise<ScriptedEditor> {
  const editor = await startEditor({ files: { "van.ts": sampleBuild } });
  editors.push(editor);
  editor.open("van.ts");
  return editor;
}

const ask = (editor: ScriptedEditor, params: Partial<DocumentParams>) =>
  editor.ask<DocumentAnswer>(documentMethod, "van.ts", { force: false, ...params });

const read = (name: string) => readFileSync(join(handedOut, name), "latin1");

test("a drawing is written in the format of the file's ending, of the text in the editor", async () => {
  const editor = await start();
  editor.type("van.ts", '"heater"', '"stove fan"');
  const starts = { svg: "<svg", png: "\x89PNG", pdf: "%PDF-" };
  for (const [ending, beginning] of Object.entries(starts)) {
    const path = join(handedOut, `van.${ending}`);
    const answer = await ask(editor, { document: "drawing", path, view: "wiring", scenario: "evening" });
    expect(answer).toEqual({ state: "written", paths: [path], note: "" });
    expect(read(`van.${ending}`).slice(0, beginning.length)).toBe(beginning);
  }
  expect(read("van.svg")).toContain("stove fan");
  expect(read("van.svg")).toContain("scenario: evening");
  const wrong = await ask(editor, { document: "drawing", path: join(handedOut, "van.gif") });
  expect(wrong).toEqual({
    state: "failed",
    message: "A drawing is a file that ends in .svg, .png or .pdf, not van.gif.",
  });
  const gone = { document: "drawing", path: join(handedOut, "x.svg"), scenario: "noon" } as const;
  expect(await ask(editor, gone)).toMatchObject({ state: "failed" });
  expect(readdirSync(handedOut).sort()).toEqual(["van.pdf", "van.png", "van.svg"]);
});

test("each list is a file of its own, and labels are a PDF", async () => {
  const editor = await start();
  const lists = await ask(editor, { document: "lists", path: join(handedOut, "lists") });
  if (lists.state !== "written") throw new Error(lists.message);
  expect(readdirSync(join(handedOut, "lists")).sort()).toEqual(
    lists.paths.map((path) => path.slice(join(handedOut, "lists").length + 1)).sort(),
  );
  expect(read("lists/van.wire-schedule.csv")).toContain("heater");
  expect(read("lists/van.parts-list.csv")).toContain("house bank");

  const path = join(handedOut, "labels.pdf");
  expect(await ask(editor, { document: "labels", path, page: "Letter" })).toMatchObject({
    state: "written",
    paths: [path],
    note: expect.stringMatching(/^For sheets of .*Letter/i),
  });
  expect(read("labels.pdf")).toMatch(/^%PDF-/);
});

test("a line of the wire numbers that cannot be read is mentioned with each document that shows them", async () => {
  const editor = await startEditor({
    files: { "van.ts": sampleBuild, "van.wire-numbers.txt": "seven\n" },
  });
  editors.push(editor);
  editor.open("van.ts");
  for (const [document, name] of [
    ["drawing", "van.svg"],
    ["labels", "labels.pdf"],
    ["lists", "lists"],
  ] as const)
    expect(await ask(editor, { document, path: join(handedOut, name) })).toMatchObject({
      state: "written",
      note: expect.stringContaining("Wire numbers may be missing: see their file."),
    });
});

test("a file of somebody else is asked about first", async () => {
  const editor = await start();
  const path = join(handedOut, "van.svg");
  writeFileSync(path, "my own notes");
  expect(await ask(editor, { document: "drawing", path })).toEqual({
    state: "not-ours",
    message: "van.svg was not made by Loomwright.",
  });
  expect(read("van.svg")).toBe("my own notes");
  expect(await ask(editor, { document: "drawing", path, force: true })).toMatchObject({ state: "written" });
});

test("wires get numbers that stay, and a plan that is half typed gets none", async () => {
  const editor = await start();
  const file = fileURLToPath(editor.uri("van.wire-numbers.txt"));
  editor.type("van.ts", "scenario({ name", "scenario({{ name");
  await editor.until("van.ts", "incomplete");
  expect(await ask(editor, { document: "numbers" })).toMatchObject({
    state: "failed",
    message: "van.ts is half typed, so there is no document yet.",
  });
  expect(existsSync(file)).toBe(false);

  editor.type("van.ts", "scenario({{ name", "scenario({ name");
  expect(await ask(editor, { document: "numbers" })).toEqual({
    state: "written",
    paths: [file],
    note: "7 conductors numbered, 7 of them new.",
  });
  const before = readFileSync(file, "utf8");
  expect(await ask(editor, { document: "numbers" })).toMatchObject({ state: "written", paths: [] });
  expect(readFileSync(file, "utf8")).toBe(before);
});
