import { describe, expect, test } from "vitest";
import { type CodeAction, LSPErrorCodes } from "vscode-languageserver/node";
import { pulling } from "./capabilities.mjs";
import type { ScriptedEditor } from "./scripted-editor.ts";
import { useEditors } from "./use-editors.ts";

/** 12 AWG is too thin for 40 A over 15 ft: the drop is too large, the fuse is above the ampacity, and terminals of 75 °C allow 25 A. */
const tooThin = `import { circuit } from "loomwright";

circuit({ name: "winch", load: 40, oneWayFt: 15, gauge: 12, protect: 50, insulationC: 105 });
`;

/** Sorted. */
const foundInTooThin = [
  "conductor/terminal-temperature",
  "conductor/voltage-drop",
  "protection/above-conductor",
];

const start = useEditors();

const rulesIn = (editor: ScriptedEditor, file: string) =>
  editor
    .pushed(file)
    ?.map(({ code }) => code)
    .sort();

const quickFixes = (editor: ScriptedEditor, file: string, found: string) => {
  const position = editor.behind(file, found);
  return editor.ask<CodeAction[]>("textDocument/codeAction", file, {
    range: { start: position, end: position },
    context: { diagnostics: [], only: ["quickfix"] },
  });
};

describe("a builder edits one plan", () => {
  test("open, see what is wrong, take the fix, see it gone, close", async () => {
    const editor = await start({ files: { "van.ts": tooThin } });
    editor.open("van.ts");
    const status = await editor.until("van.ts", "idle");
    expect(status.counts).toMatchObject({ circuits: 1, accepted: 0 });
    expect(rulesIn(editor, "van.ts")).toEqual(foundInTooThin);
    const [drop] = editor.pushed("van.ts") ?? [];
    expect(drop?.source).toBe("loomwright");
    expect(drop?.codeDescription?.href).toMatch(/^file:.*\/dist\/rules\/.*\.md$/);
    expect(drop?.range.start.line).toBe(2);

    const fixes = await quickFixes(editor, "van.ts", "gauge: ");
    const best = fixes.find(({ isPreferred }) => isPreferred);
    expect(best?.kind).toBe("quickfix");
    expect(best?.diagnostics?.length).toBeGreaterThan(0);
    editor.apply(best!);
    expect(editor.textOf("van.ts")).not.toBe(tooThin);
    await editor.until("van.ts", "idle");
    expect(rulesIn(editor, "van.ts")).toEqual([]);

    editor.close("van.ts");
    await editor.request("loomwright/checkWorkspace", {});
    expect(editor.pushed("van.ts")?.length).toBeGreaterThan(0);
  });

  test("closing takes back what was shown", async () => {
    const editor = await start({ files: { "van.ts": tooThin, "boat.ts": tooThin } });
    editor.open("van.ts");
    await editor.until("van.ts", "idle");
    editor.close("van.ts");
    editor.open("boat.ts");
    await editor.until("boat.ts", "idle");
    expect(editor.pushed("van.ts")).toEqual([]);
    expect(rulesIn(editor, "boat.ts")).toEqual(foundInTooThin);
  });

  test("every push names the version of the text it was computed from", async () => {
    const editor = await start({ files: { "van.ts": tooThin } });
    editor.open("van.ts");
    for (const [from, to] of [
      ["gauge: 12", "gauge: 2"],
      ["load: 40", "load: 41"],
      ["gauge: 2", "gauge: 14"],
    ] as const) {
      editor.type("van.ts", from, to);
    }
    await editor.until("van.ts", "idle");
    const last = editor.pushes.at(-1);
    expect(last?.version).toBe(4);
    expect(last?.diagnostics.length).toBeGreaterThan(0);
    expect(editor.pushes.map(({ version }) => version ?? 0)).toEqual(
      editor.pushes.map(({ version }) => version ?? 0).sort((one, other) => one - other),
    );
  });

  test("while the text is half typed nothing new is shown and no fix is offered", async () => {
    const editor = await start({ files: { "van.ts": tooThin } });
    editor.open("van.ts");
    await editor.until("van.ts", "idle");
    const pushes = editor.pushes.length;
    editor.type("van.ts", "gauge: 12,", "gauge: ,");
    const held = await editor.until("van.ts", "incomplete");
    expect(held.message).toContain("as of the last complete text");
    expect(editor.pushes).toHaveLength(pushes);
    expect(await quickFixes(editor, "van.ts", "protect: ")).toEqual([]);
    const [lens] = await editor.ask<{ command: { title: string } }[]>("textDocument/codeLens", "van.ts");
    expect(lens?.command.title).toContain("as of the last complete text");
    editor.type("van.ts", "gauge: ,", "gauge: 2,");
    await editor.until("van.ts", "idle");
    expect(rulesIn(editor, "van.ts")).toEqual([]);
  });

  test("a cancelled request is answered as cancelled, never with an empty list", async () => {
    const loop = `import { circuit } from "loomwright";\ncircuit({ load: 1, oneWayFt: 1, gauge: 4, protect: 5 });\nfor (;;) {}\n`;
    const editor = await start({ files: { "loop.ts": loop } });
    editor.open("loop.ts");
    const { CancellationTokenSource } = await import("vscode-languageserver/node");
    const source = new CancellationTokenSource();
    const answer = editor.connection.sendRequest(
      "textDocument/codeAction",
      {
        textDocument: { uri: editor.uri("loop.ts") },
        range: { start: { line: 1, character: 0 }, end: { line: 1, character: 3 } },
        context: { diagnostics: [] },
      },
      source.token,
    );
    source.cancel();
    await expect(answer).rejects.toMatchObject({ code: LSPErrorCodes.RequestCancelled });
    // And the server continues: it stops the loop, and reports this.
    await editor.until("loop.ts", "idle");
    expect(rulesIn(editor, "loop.ts")).toContain("plan/too-slow");
  });

  test("a plan that loops does not keep the other from being checked", async () => {
    const loop = `import { circuit } from "loomwright";\nfor (;;) circuit;\n`;
    const editor = await start({
      files: { "loop.ts": loop, "van.ts": tooThin },
      configuration: { timeLimitMs: 300 },
    });
    editor.open("loop.ts");
    editor.open("van.ts");
    await editor.until("van.ts", "idle");
    expect(rulesIn(editor, "van.ts")).toEqual(foundInTooThin);
    await editor.until("loop.ts", "idle");
    expect(editor.pushed("loop.ts")?.[0]?.message).toContain("0.3 s");
  });
});

describe("an editor that pulls findings", () => {
  interface Report {
    kind: string;
    resultId?: string;
    items?: { code: string }[];
  }
  const pull = (editor: ScriptedEditor, file: string, previousResultId?: string) =>
    editor.ask<Report>("textDocument/diagnostic", file, { previousResultId });

  test("gets the full list, then unchanged, and unchanged again while the text is half typed", async () => {
    const editor = await start({ files: { "van.ts": tooThin }, capabilities: pulling });
    expect(editor.server.capabilities.diagnosticProvider).toMatchObject({ interFileDependencies: true });
    editor.open("van.ts");
    const first = await pull(editor, "van.ts");
    expect(first).toMatchObject({ kind: "full" });
    expect(first.items?.map(({ code }) => code).sort()).toEqual(foundInTooThin);
    expect(await pull(editor, "van.ts", first.resultId)).toMatchObject({ kind: "unchanged" });
    editor.type("van.ts", "gauge: 12,", "gauge: ,");
    expect(await pull(editor, "van.ts", first.resultId)).toEqual({
      kind: "unchanged",
      resultId: first.resultId,
    });
    editor.type("van.ts", "gauge: ,", "gauge: 2,");
    const whole = await pull(editor, "van.ts", first.resultId);
    expect(whole).toMatchObject({ kind: "full", items: [] });
    expect(editor.pushes).toEqual([]);
  });

  test("is told that there is nothing yet, when a file is half typed from the start", async () => {
    const editor = await start({ files: { "van.ts": `${tooThin}circuit({` }, capabilities: pulling });
    editor.open("van.ts");
    await expect(pull(editor, "van.ts")).rejects.toMatchObject({
      code: LSPErrorCodes.ServerCancelled,
      data: { retriggerRequest: false },
    });
  });

  test("is asked to pull again when another file changes what it shows", async () => {
    const editor = await start({
      files: {
        "van.ts": `import { circuit } from "loomwright";\nimport { size } from "./parts.ts";\n\ncircuit({ name: "winch", load: 40, oneWayFt: 15, gauge: size, protect: 50, insulationC: 105 });\n`,
        "parts.ts": `export const size = 2;\n`,
      },
      capabilities: pulling,
    });
    editor.open("van.ts");
    editor.open("parts.ts");
    expect(await pull(editor, "van.ts")).toMatchObject({ items: [] });
    expect(await pull(editor, "parts.ts")).toMatchObject({ items: [] });
    editor.type("parts.ts", "2", "14");
    await editor.until("van.ts", "idle");
    const parts = await pull(editor, "parts.ts");
    expect(parts.items?.map(({ code }) => code)).toContain("conductor/ampacity");
  });
});
