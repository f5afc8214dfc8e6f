import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { CancellationTokenSource, LSPErrorCodes } from "vscode-languageserver/node";
import { type ReportAnswer, type ReportParams, reportMethod } from "../../server/language/messages.ts";
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

const shed = `import { build, circuit } from "loomwright";
build({ name: "shed", insulationC: 105 });
circuit({ name: "lamp", load: 2, oneWayFt: 10, gauge: 14, protect: 5 });
`;

async function start(): Promise<ScriptedEditor> {
  const editor = await startEditor({ files: { "shed.ts": shed, "notes.ts": "export {};\n" } });
  return editor;
}

function ask(editor: ScriptedEditor, name: string, more: Partial<ReportParams> = {}): Promise<ReportAnswer> {
  const path = join(handedOut, name);
  return editor.ask<ReportAnswer>(reportMethod, "shed.ts", { path, page: "A4", force: false, ...more });
}

const read = (name: string) => readFileSync(join(handedOut, name), "latin1");

test("the report is of the text in the editor, saved or not, as a page and as a PDF", async () => {
  const editor = await start();
  editor.open("shed.ts");
  editor.type("shed.ts", '"lamp"', '"lantern"');
  expect(await ask(editor, "shed.html")).toEqual({
    state: "written",
    path: join(handedOut, "shed.html"),
    missing: "",
  });
  expect(read("shed.html")).toContain("lantern");
  expect(await ask(editor, "shed.pdf", { page: "Letter" })).toMatchObject({ state: "written" });
  expect(read("shed.pdf")).toMatch(/^%PDF-/);
  expect(readdirSync(handedOut).sort()).toEqual(["shed.html", "shed.pdf"]);
});

test("the edition, the paper and the revision are those that are asked for", async () => {
  const editor = await start();
  editor.open("shed.ts");
  await ask(editor, "all.html", { revision: { text: "B" } });
  await ask(editor, "bench.html", { edition: "bench" });
  expect(read("all.html")).toContain("<dd>B</dd>");
  expect(read("all.html")).toContain("Parts list");
  expect(read("bench.html")).not.toContain("Parts list");
  expect(read("bench.html")).not.toContain("State of the plan");
  await ask(editor, "shed.pdf", { page: "A3" });
  expect(read("shed.pdf")).toContain("/MediaBox [0 0 841.89 1190.551]");
  expect(await ask(editor, "commit.html", { revision: "commit" })).toMatchObject({
    state: "failed",
    message: expect.stringMatching(/^shed\.ts: its commit is not known: .*; no report was written\.$/),
  });
});

test("a file of somebody else is asked about first", async () => {
  const editor = await start();
  editor.open("shed.ts");
  writeFileSync(join(handedOut, "shed.html"), "my own notes");
  expect(await ask(editor, "shed.html")).toEqual({
    state: "not-ours",
    message: "shed.html was not made by Loomwright.",
  });
  expect(read("shed.html")).toBe("my own notes");
  expect(await ask(editor, "shed.html", { force: true })).toMatchObject({ state: "written" });
  expect(read("shed.html")).toContain("lamp");
});

test("what cannot be reported on is said, and nothing is written", async () => {
  const editor = await start();
  editor.open("shed.ts");
  const failed = (message: RegExp) => ({ state: "failed", message: expect.stringMatching(message) });
  expect(await ask(editor, "shed.txt")).toEqual(failed(/^A report is a file that ends in \.html or \.pdf/));
  expect(await ask(editor, "nowhere/shed.html")).toEqual(
    failed(/^shed\.html is in a folder that does not exist; /),
  );
  editor.type("shed.ts", "protect: 5 });", "protect: ");
  expect(await ask(editor, "shed.html")).toEqual(failed(/^shed\.ts is half typed/));
  editor.retype("shed.ts", `${shed}throw new Error("no such lamp");\n`);
  expect(await ask(editor, "shed.html")).toEqual(failed(/did not run to its end.*no such lamp/));
  editor.open("notes.ts");
  const path = join(handedOut, "notes.html");
  const notes = await editor.ask<ReportAnswer>(reportMethod, "notes.ts", { path, page: "A4", force: false });
  expect(notes).toEqual(failed(/^This file belongs to no plan/));
  expect(readdirSync(handedOut)).toEqual([]);
});

test("one that is broken off is answered as cancelled, and leaves no file", async () => {
  const editor = await start();
  editor.open("shed.ts");
  const stopping = new CancellationTokenSource();
  const path = join(handedOut, "shed.pdf");
  const textDocument = { uri: editor.uri("shed.ts") };
  const params: ReportParams = { textDocument, path, page: "A4", force: false };
  const asked = editor.connection.sendRequest(reportMethod, params, stopping.token);
  stopping.cancel();
  await expect(asked).rejects.toMatchObject({ code: LSPErrorCodes.RequestCancelled });
  // The next request is answered as usual; by that time, the one before has ended.
  expect(await ask(editor, "shed.html")).toMatchObject({ state: "written" });
  expect(existsSync(path)).toBe(false);
  expect(readdirSync(handedOut)).toEqual(["shed.html"]);
});
