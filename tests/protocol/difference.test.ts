import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import { jsonDifferenceSchema } from "../../server/command/difference-json.ts";
import { type DifferenceAnswer, differenceMethod } from "../../server/language/messages.ts";
import { boat, runGit, scriptedRepository, sizes } from "../difference/scripted-repository.ts";
import type { ScriptedEditor } from "./scripted-editor.ts";
import { useEditors } from "./use-editors.ts";

const command = fileURLToPath(new URL("../../server/dist/command.cjs", import.meta.url));

const startEditor = useEditors();

async function start(files: Readonly<Record<string, string>>, ...commits: readonly string[]) {
  const editor = await startEditor({ files });
  const folder = fileURLToPath(editor.uri("")).replace(/[\\/]$/, "");
  const git = (...words: readonly string[]) => runGit(folder, words);
  const commit = (message: string) => {
    git("add", "--all");
    git("commit", "--quiet", "--message", message);
  };
  if (commits.length > 0) git("init", "--quiet");
  for (const message of commits) commit(message);
  return { editor, folder, git, commit };
}

async function asked(
  editor: ScriptedEditor,
  file: string,
): Promise<Extract<DifferenceAnswer, { state: "compared" }>> {
  const answer = await editor.ask<DifferenceAnswer>(differenceMethod, file);
  if (answer.state !== "compared") throw new Error(answer.message);
  return answer;
}

const refused = async (editor: ScriptedEditor, file: string) => {
  const answer = await editor.ask<DifferenceAnswer>(differenceMethod, file);
  return answer.state === "cannot" ? answer.message : `compared: ${answer.markdown}`;
};

describe("a builder asks what changed since the last commit", () => {
  const files = { "boat.ts": boat, "sizes.ts": sizes };

  test("in text that was never saved, in any file of the plan, and asked again after typing", async () => {
    const { editor } = await start(files, "first");
    editor.open("boat.ts");
    expect((await asked(editor, "boat.ts")).markdown).toContain("boat.ts: no change in the build");
    editor.type("boat.ts", "load: 6", "load: 11");
    const { title, markdown } = await asked(editor, "boat.ts");
    expect(title).toBe("tender");
    expect(markdown).toMatch(/\*\*the last commit \([0-9a-f]{7}\) → the editor\*\*/);
    expect(markdown).toContain("| circuit bilge pump | load | 6 A | 11 A |");
    expect(markdown).toMatch(/\| new \| error \| bilge pump \| .* \| protection\/below-load \|/);
    editor.open("sizes.ts");
    editor.type("sizes.ts", "14", "10");
    expect((await asked(editor, "sizes.ts")).markdown).toContain(
      "| circuit cabin lights | size | 14 AWG | 10 AWG |",
    );
  });

  test("half typed: as of the last complete text", async () => {
    const { editor } = await start(files, "first");
    editor.open("boat.ts");
    editor.type("boat.ts", "load: 6", "load: 7");
    await editor.until("boat.ts", "idle");
    editor.type("boat.ts", "load: 7", "load: ");
    await editor.until("boat.ts", "incomplete");
    const { markdown } = await asked(editor, "boat.ts");
    expect(markdown).toContain("the editor, as of the last complete text");
    expect(markdown).toContain("| circuit bilge pump | load | 6 A | 7 A |");
  });

  test("a plan that is new, one that was moved, one that could not be evaluated before", async () => {
    const { editor, commit } = await start(files, "first");
    const hut =
      'import { build, circuit } from "loomwright";\nbuild({ name: "hut", insulationC: 105 });\ncircuit({ name: "lamp", load: 2, oneWayFt: 10, gauge: 14, protect: 5 });\n';
    editor.onDisk({ "hut.ts": hut });
    editor.open("hut.ts", hut);
    expect((await asked(editor, "hut.ts")).markdown).toMatch(
      /a plan that is not in the last commit \([0-9a-f]{7}\): 1 circuit/,
    );

    editor.onDisk({ "hut.ts": hut.replace("load: 2", "load: two") });
    commit("broken");
    expect((await asked(editor, "hut.ts")).markdown).toMatch(/could not be evaluated: hut\.ts, line 3/);

    editor.onDisk({ "boat.ts": undefined, "tender.ts": boat });
    editor.open("tender.ts", boat.replace("load: 3", "load: 4"));
    const { markdown } = await asked(editor, "tender.ts");
    expect(markdown).toContain("### tender.ts (was boat.ts)");
    expect(markdown).toContain("| circuit cabin lights | load | 3 A | 4 A |");
  });

  test("no repository, no commit, no plan: a sentence each", async () => {
    const { editor, git } = await start({ ...files, "notes.ts": "export const note = 1;\n" });
    editor.open("boat.ts");
    expect(await refused(editor, "boat.ts")).toMatch(
      /^There is no state to compare with: .* is not in a git repository\.$/,
    );
    git("init", "--quiet");
    expect(await refused(editor, "boat.ts")).toContain("this repository has no commit yet");
    editor.open("notes.ts");
    expect(await refused(editor, "notes.ts")).toContain("not part of a plan");
  });

  test("asked and called off: the server goes on", async () => {
    const { editor } = await start(files, "first");
    editor.open("boat.ts");
    await editor.until("boat.ts", "idle");
    const { CancellationTokenSource } = await import("vscode-languageserver/node");
    const source = new CancellationTokenSource();
    const params = { textDocument: { uri: editor.uri("boat.ts") } };
    const answer = editor.connection.sendRequest(differenceMethod, params, source.token);
    source.cancel();
    await expect(answer).rejects.toThrow();
    expect((await asked(editor, "boat.ts")).markdown).toContain("no change");
  });
});

test("the built command, against a commit and between two folders", () => {
  const repository = scriptedRepository();
  const beside = mkdtempSync(join(tmpdir(), "loomwright-beside-"));
  try {
    repository.write("boat.ts", boat);
    repository.write("sizes.ts", sizes);
    repository.commit("first");
    repository.edit("boat.ts", "load: 6", "load: 11");
    const loomwright = (...words: readonly string[]) =>
      spawnSync(process.execPath, [command, "diff", ...words], { cwd: repository.folder, encoding: "utf8" });
    const text = loomwright("HEAD");
    expect(text.stderr).toBe("");
    expect(text.stdout).toMatch(/circuit bilge pump +load +6 A +11 A/);
    expect(text.status).toBe(1);
    writeFileSync(join(beside, "boat.ts"), boat);
    writeFileSync(join(beside, "sizes.ts"), sizes);
    const { stdout, status } = loomwright(beside, "./", "--format", "json");
    expect(jsonDifferenceSchema.parse(JSON.parse(stdout)).plans).toMatchObject([
      { file: "boat.ts", becameWorse: true },
    ]);
    expect(status).toBe(1);
    const lost = loomwright("nowhere");
    expect(lost).toMatchObject({ status: 2, stdout: "" });
    expect(lost.stderr).not.toMatch(/\n +at /);
  } finally {
    repository.remove();
    rmSync(beside, { recursive: true });
  }
});
