import { describe, expect, test } from "vitest";
import { type Position, TextDocumentSaveReason } from "vscode-languageserver/node";
import { sampleBuild } from "../../server/language/sample-build.tester.ts";
import { pulling } from "./capabilities.mjs";
import type { ScriptedEditor } from "./scripted-editor.ts";
import { useEditors } from "./use-editors.ts";

/** The build in order, except one fuse that the panel does not take. */
const plan = `${sampleBuild.replace("ratingA: 20,", "ratingA: 60,")}\n// here\n`;

const circuitByHand = `circuit({ name: "reading lamp", from: panel.branch, load: 2, oneWayFt: 8, gauge: 16, protect: { ratingA: 5, interruptingA: 5000 } });`;
const namesByHand = `const lampFt = 8;\nif (lampFt > 4) circuit({ from: panel.branch, load: lampFt / 4, oneWayFt: lampFt, gauge: 16, protect: { ratingA: 5, interruptingA: 5000 } });`;

const startEditor = useEditors();

async function open(text: string, capabilities?: typeof pulling): Promise<ScriptedEditor> {
  const editor = await startEditor({
    files: { "van.ts": text, "boat.ts": `import { circuit } from "loomwright";\n// of another boat\n` },
    ...(capabilities && { capabilities }),
  });
  editor.open("van.ts");
  await editor.until("van.ts", "idle");
  return editor;
}

const rulesIn = (editor: ScriptedEditor) => editor.pushed("van.ts")?.map(({ code }) => code);

/** The text after each key, in an editor that closes brackets and quotes. */
function statesOf(typed: string): string[] {
  const closing: Readonly<Record<string, string>> = { "(": ")", "{": "}", '"': '"' };
  let [left, right] = ["", ""];
  return [...typed].map((key) => {
    left += key;
    if (right.startsWith(key)) right = right.slice(1);
    else right = (closing[key] ?? "") + right;
    return left + right;
  });
}

describe("a builder types by hand, letter by letter", () => {
  test.each([
    ["a whole circuit", circuitByHand],
    ["names of their own", namesByHand],
  ])("%s: every finding, hint and figure of the rest stays as it is", async (_, typed) => {
    const editor = await open(plan);
    const line = plan.split("\n").indexOf("// here");
    const range = { start: { line: 0, character: 0 }, end: { line, character: 0 } };
    const hints = () =>
      editor.ask<{ position: Position; label: string }[]>("textDocument/inlayHint", "van.ts", { range });
    const before = { rules: rulesIn(editor), hints: await hints() };
    expect(before.rules).toContain("panel/rating");
    expect(before.hints).toHaveLength(5);
    const pushes = editor.pushes.length;
    let last = { text: "", hints: before.hints };
    const states: string[] = [];
    for (const text of statesOf(typed)) {
      editor.type("van.ts", `// here\n${last.text}`, `// here\n${text}`);
      const { state, message } = await editor.until("van.ts", "idle", "incomplete");
      states.push(state);
      const now = await hints();
      if (state === "incomplete") {
        expect(message).toContain("as of the last complete text");
        expect(now, text).toEqual(last.hints);
      } else {
        expect(message, text).toContain("3 cables");
        expect(now.map(({ position }) => position)).toEqual(before.hints.map(({ position }) => position));
      }
      last = { text, hints: now };
    }
    expect(states.at(-1)).toBe("idle");
    expect(editor.statuses.at(-1)?.counts).toMatchObject({ circuits: 3 });
    for (const { diagnostics } of editor.pushes.slice(pushes)) {
      const ofTheRest = diagnostics.filter(({ range }) => range.start.line < line);
      expect(ofTheRest.map(({ code }) => code)).toEqual(expect.arrayContaining(before.rules!));
      expect(diagnostics.map(({ code }) => code)).not.toContain("plan/cannot-run");
    }
  });
});

test("a circuit that is left half written: the rest of the network is judged without it", async () => {
  const editor = await open(plan);
  const begun = 'circuit({\n  name: "reading lamp",\n  from: panel.branch,\n});';
  editor.type("van.ts", "// here", begun);
  await editor.until("van.ts", "incomplete");
  const { message } = await editor.until("van.ts", "idle");
  expect(message).toContain("3 cables");
  expect(message).toContain("network judged without a circuit with an invalid value");
  expect(rulesIn(editor)).toEqual(expect.arrayContaining(["panel/rating", "plan/invalid-value"]));
  const range = { start: { line: 0, character: 0 }, end: { line: 99, character: 0 } };
  expect(await editor.ask("textDocument/inlayHint", "van.ts", { range })).toHaveLength(5);
});

describe("an undeclared name is an error", () => {
  const typeHalf = async (editor: ScriptedEditor) => {
    editor.type("van.ts", "// here", "circuit({ gau })");
    const { message } = await editor.until("van.ts", "incomplete");
    expect(message).toContain("van.ts is half typed");
    expect(rulesIn(editor)).toContain("panel/rating");
    expect(rulesIn(editor)).not.toContain("plan/cannot-run");
  };

  test("as soon as the file is saved", async () => {
    const editor = await open(plan);
    await typeHalf(editor);
    editor.save("van.ts");
    await editor.until("van.ts", "idle");
    expect(rulesIn(editor)).toContain("plan/cannot-run");
  });

  test("not if the editor saves the file by itself", async () => {
    const editor = await open(plan);
    await typeHalf(editor);
    const known = editor.statuses.length;
    editor.save("van.ts", TextDocumentSaveReason.AfterDelay);
    editor.type("van.ts", "gau", "gaug");
    await editor.until("van.ts", "incomplete");
    const states = editor.statuses.slice(known).filter(({ uri }) => uri === editor.uri("van.ts"));
    expect(states.map(({ state }) => state)).not.toContain("idle");
    expect(rulesIn(editor)).not.toContain("plan/cannot-run");
  });

  test("when nothing more is typed for a while", async () => {
    const editor = await open(plan);
    await typeHalf(editor);
    await editor.until("van.ts", "idle");
    expect(rulesIn(editor)).toContain("plan/cannot-run");
  });

  test("and an editor that pulls findings is asked to fetch it", async () => {
    const editor = await open(plan, pulling);
    const pull = () => editor.ask<{ items?: { code: string }[] }>("textDocument/diagnostic", "van.ts");
    expect((await pull()).items).toHaveLength(1);
    editor.type("van.ts", "// here", "circuit({ gau })");
    await expect(pull()).rejects.toThrow("half typed");
    await editor.asks("workspace/diagnostic/refresh");
    expect((await pull()).items?.map(({ code }) => code)).toContain("plan/cannot-run");
  });

  test("as soon as something else is edited, in the same file or another", async () => {
    const editor = await open(plan);
    editor.open("boat.ts");
    await editor.until("boat.ts", "idle");
    await typeHalf(editor);
    editor.type("van.ts", "house bank", "domestic bank");
    await editor.until("van.ts", "idle");
    expect(rulesIn(editor)).toContain("plan/cannot-run");

    editor.type("van.ts", "gau", "gaug");
    await editor.until("van.ts", "incomplete");
    const known = editor.statuses.length;
    editor.type("boat.ts", "another", "some");
    await editor.until("boat.ts", "idle");
    while (
      !editor.statuses.slice(known).some(({ uri, state }) => uri === editor.uri("van.ts") && state === "idle")
    )
      await editor.request("loomwright/checkWorkspace", {});
    expect(rulesIn(editor)).toContain("plan/cannot-run");
  });

  test("in a file that is opened with it", async () => {
    const editor = await open(`${plan}circuit({ gau });\n`);
    expect(rulesIn(editor)).toContain("plan/cannot-run");
  });

  test("where the name is declared, and used too early", async () => {
    const editor = await open(plan);
    editor.type("van.ts", "// here", "circuit({ load });\nconst load = 4;");
    await editor.until("van.ts", "idle");
    expect(rulesIn(editor)).toContain("plan/cannot-run");
  });
});
