import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterEach, beforeEach, expect, test } from "vitest";
import { type DocumentAnswer, type DocumentParams, documentMethod } from "../../server/language/messages.ts";
import { sampleBuild } from "../../server/language/sample-build.tester.ts";
import { boardsPlan } from "../editor/harness/boards-plan.ts";
import type { ScriptedEditor } from "./scripted-editor.ts";
import { useEditors } from "./use-editors.ts";

const startEditor = useEditors();
let handedOut: string;

beforeEach(() => {
  handedOut = mkdtempSync(join(tmpdir(), "loomwright-handed-out-"));
});
afterEach(() => {
  rmSync(handedOut, { recursive: true, force: true });
});

async function start(): Promise<ScriptedEditor> {
  const editor = await startEditor({ files: { "van.ts": sampleBuild } });
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

test("lists of two plans of one name in one folder are files of their own, named as the command line names them", async () => {
  const boat = sampleBuild.replace('"heater"', '"bilge fan"');
  const editor = await startEditor({
    files: { "van/plan.ts": sampleBuild, "boat/plan.ts": boat, "plan.ts": sampleBuild, "plan.mts": boat },
  });
  for (const file of ["van/plan.ts", "boat/plan.ts", "plan.ts", "plan.mts"]) {
    editor.open(file);
    const params = { document: "lists", path: handedOut, force: false };
    expect(await editor.ask<DocumentAnswer>(documentMethod, file, params)).toMatchObject({
      state: "written",
    });
  }
  const schedules = readdirSync(handedOut).filter((name) => name.endsWith(".wire-schedule.csv"));
  expect(schedules.sort()).toEqual([
    "boat-plan.wire-schedule.csv",
    "plan.ts.wire-schedule.csv",
    "plan.wire-schedule.csv",
    "van-plan.wire-schedule.csv",
  ]);
  expect(read("boat-plan.wire-schedule.csv")).toContain("bilge fan");
  expect(read("van-plan.wire-schedule.csv")).toContain("heater");
  // As on the command line: the first by name has the plain one.
  expect(read("plan.wire-schedule.csv")).toContain("bilge fan");
  expect(read("plan.ts.wire-schedule.csv")).toContain("heater");
});

test("a drawing is made for the paper and states the revision that is asked for", async () => {
  const editor = await start();
  const drawing = async (name: string, more: Partial<DocumentParams>) => {
    const answer = await ask(editor, { document: "drawing", path: join(handedOut, name), ...more });
    return answer.state === "written" ? read(name) : answer;
  };
  // A3 is 297 mm × 420 mm, at 72 points an inch, turned for the larger drawing.
  expect(await drawing("van.pdf", { page: "A3" })).toMatch(
    /\/MediaBox \[0 0 (841\.89 1190\.551|1190\.551 841\.89)\]/,
  );
  expect(await drawing("van.svg", { revision: { text: "B" } })).toContain(">revision: B<");
  expect(await drawing("plain.svg", {})).not.toContain("revision");
  expect(await drawing("commit.svg", { revision: "commit" })).toMatchObject({
    state: "failed",
    message: expect.stringMatching(/^van\.ts: its commit is not known: /),
  });
  const labels = { document: "labels", path: join(handedOut, "labels.pdf"), page: "A3" } as const;
  expect(await ask(editor, labels)).toMatchObject({ state: "failed" });
});

test("front views and drilling templates are written in the format of the file's ending", async () => {
  const oneBoard = boardsPlan.replace(/^const side.*\n/m, "");
  const editor = await startEditor({ files: { "van.ts": oneBoard } });
  editor.open("van.ts");
  const written = async (document: "boards" | "templates", name: string, more = {}) => {
    const path = join(handedOut, name);
    const answer = await ask(editor, { document, path, ...more });
    expect(answer).toMatchObject({ state: "written", paths: [path] });
    return read(name);
  };
  const plain = await written("boards", "boards.svg", { revision: { text: "B" } });
  expect(plain).toContain("Main board");
  expect(plain).toContain("revision: B");
  expect(await written("boards", "ways.svg", { conductors: true })).toContain("data-conductor");
  expect(plain).not.toContain("data-conductor");
  expect(await written("boards", "boards.png")).toMatch(/^\x89PNG/);
  expect(await written("boards", "boards.pdf", { page: "A3" })).toMatch(
    /\/MediaBox \[0 0 (841\.89 1190\.551|1190\.551 841\.89)\]/,
  );
  // In true size: the board is 1,200 mm × 800 mm.
  expect(await written("templates", "board.svg")).toMatch(/width="1[2-9]\d\d(\.\d+)?mm"/);
  expect(await written("templates", "board.dxf")).toMatch(/^\s*0\s+SECTION/);
  expect(await written("templates", "board.pdf")).toMatch(/^%PDF-/);
  const wrong = { document: "templates", path: join(handedOut, "board.png") } as const;
  expect(await ask(editor, wrong)).toEqual({
    state: "failed",
    message: "Drilling templates are a file that ends in .pdf, .svg or .dxf, not board.png.",
  });
});

test("of several surfaces only a PDF holds all front views, and a plan without a surface has none", async () => {
  const editor = await startEditor({ files: { "van.ts": sampleBuild, "cabin.ts": boardsPlan } });
  editor.open("van.ts");
  editor.open("cabin.ts");
  for (const document of ["boards", "templates"] as const) {
    const wants = (file: string, name: string) =>
      editor.ask<DocumentAnswer>(documentMethod, file, {
        ...{ force: false, document, path: join(handedOut, name) },
      });
    expect(await wants("cabin.ts", `${document}.svg`)).toMatchObject({
      message: expect.stringContaining("only a PDF holds them all"),
    });
    expect(await wants("cabin.ts", `${document}.pdf`)).toMatchObject({ state: "written" });
    expect(await wants("van.ts", "none.pdf")).toMatchObject({
      message: expect.stringMatching(/^The plan has no surface:/),
    });
  }
  expect(read("boards.pdf").match(/\/Type \/Page\b/g)).toHaveLength(2);
  editor.type("cabin.ts", "widthMm: 600, heightMm: 800", "widthMm: 600, heightMm: -800");
  const path = join(handedOut, "boards.pdf");
  const one = { force: false, document: "boards", path } as const;
  expect(await editor.ask<DocumentAnswer>(documentMethod, "cabin.ts", one)).toMatchObject({
    note: "Not drawn, because of a mistake in the plan: Side wall.",
  });
  expect(read("boards.pdf").match(/\/Type \/Page\b/g)).toHaveLength(1);
  expect(readdirSync(handedOut).sort()).toEqual(["boards.pdf", "templates.pdf"]);
});

test("a line of the wire numbers that cannot be read is mentioned with each document that shows them", async () => {
  const editor = await startEditor({
    files: { "van.ts": sampleBuild, "van.wire-numbers.txt": "seven\n" },
  });
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
