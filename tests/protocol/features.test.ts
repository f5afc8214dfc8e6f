import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import type {
  CodeAction,
  CompletionItem,
  CompletionList,
  Diagnostic,
  DocumentSymbol,
  Hover,
  InlayHint,
} from "vscode-languageserver/node";
import { version } from "../../library/package.json";
import type { Working } from "../../server/language/messages.ts";
import { pushing } from "./capabilities.mjs";
import { useEditors } from "./use-editors.ts";

const start = useEditors();

const winch = `import { circuit } from "loomwright";

circuit({ name: "winch", load: 40, oneWayFt: 15, gauge: 4, protect: 50, insulationC: 105 });
circuit({ name: "lamp", load: 40, oneWayFt: 15, gauge: 12, protect: 50, insulationC: 105 });
`;
/** The lamp: its fuse, its drop, and the 25 A that 75 °C terminals allow 12 AWG (NFPA 70 table 310.16). */
const foundInWinch = [
  "protection/above-conductor",
  "conductor/voltage-drop",
  "conductor/terminal-temperature",
];
const everywhere = { start: { line: 0, character: 0 }, end: { line: 99, character: 0 } };

describe("what the server offers, over the wire", () => {
  test("it introduces itself, and asks for incremental changes only", async () => {
    const { server } = await start({ files: {} });
    expect(server.serverInfo).toEqual({ name: "loomwright", version });
    expect(server.capabilities).toMatchObject({
      textDocumentSync: { openClose: true, change: 2 },
      hoverProvider: true,
      inlayHintProvider: true,
      documentSymbolProvider: true,
      codeActionProvider: { codeActionKinds: ["quickfix", "refactor.rewrite", "source.fixAll.loomwright"] },
    });
    expect(server.capabilities.foldingRangeProvider).toBeUndefined();
    expect(server.capabilities.diagnosticProvider).toBeUndefined();
  });

  test("hover, working, hints, lens and symbols of one plan", async () => {
    const editor = await start({ files: { "van.ts": winch } });
    editor.open("van.ts");
    const position = editor.behind("van.ts", "gauge: ");
    const hover = await editor.ask<Hover>("textDocument/hover", "van.ts", { position });
    expect(hover.contents).toMatchObject({ kind: "markdown" });
    expect(JSON.stringify(hover.contents)).toContain("How this was worked out");
    const working = await editor.ask<Working>("loomwright/working", "van.ts", { position });
    expect(working).toMatchObject({ circuit: "winch" });
    const hints = await editor.ask<InlayHint[]>("textDocument/inlayHint", "van.ts", { range: everywhere });
    expect(hints.map(({ label }) => label)).toEqual([
      expect.stringMatching(/^drop [\d.]+ %, [\d.]+ A spare$/),
      expect.stringMatching(/^drop [\d.]+ %, 5 A spare$/),
    ]);
    const [lens] = await editor.ask<{ command: { title: string } }[]>("textDocument/codeLens", "van.ts");
    expect(lens?.command.title).toMatch(/^2 circuits · 1 error, 1 warning, 1 note · worst drop .* \(lamp\)$/);
    const symbols = await editor.ask<DocumentSymbol[]>("textDocument/documentSymbol", "van.ts");
    expect(symbols.map(({ name }) => name)).toEqual(["winch", "lamp"]);
  });

  test("sizes are completed while the value is still empty", async () => {
    const editor = await start({ files: { "van.ts": winch } });
    editor.open("van.ts");
    editor.type("van.ts", "gauge: 4", "gauge: ");
    const items = await editor.ask<CompletionItem[]>("textDocument/completion", "van.ts", {
      position: editor.behind("van.ts", "gauge: "),
    });
    expect(items[0]).toMatchObject({ preselect: true });
    expect(items[0]?.detail).toContain("within all limits checked");
    const nothing = await editor.ask("textDocument/completion", "van.ts", {
      position: editor.behind("van.ts", "name: "),
    });
    expect(nothing).toBeNull();
  });

  test("places of the world while the place of a period is typed", async () => {
    const trip = 'import { period } from "loomwright";\nperiod({ name: "trip", place: "tarif" });\n';
    const editor = await start({ files: { "trip.ts": trip } });
    editor.open("trip.ts");
    const { items } = await editor.ask<CompletionList>("textDocument/completion", "trip.ts", {
      position: editor.behind("trip.ts", 'place: "tarif'),
    });
    expect(items[0]).toMatchObject({ label: "Tarifa, ES", textEdit: { newText: "Tarifa, ES" } });
  });

  test("fix all on save: every repair of the file in one action", async () => {
    const editor = await start({ files: { "van.ts": winch } });
    editor.open("van.ts");
    const [fixAll, ...others] = await editor.ask<CodeAction[]>("textDocument/codeAction", "van.ts", {
      range: everywhere,
      context: { diagnostics: [], only: ["source.fixAll"] },
    });
    expect(others).toEqual([]);
    expect(fixAll?.kind).toBe("source.fixAll.loomwright");
    editor.apply(fixAll!);
    const status = await editor.until("van.ts", "idle");
    expect(status.counts).toMatchObject({ errors: 0, warnings: 0 });
  });

  test("hints are asked for again when a result changes them, and can be turned off", async () => {
    const editor = await start({ files: { "van.ts": winch } });
    editor.open("van.ts");
    await editor.until("van.ts", "idle");
    const hints = () => editor.ask<InlayHint[]>("textDocument/inlayHint", "van.ts", { range: everywhere });
    editor.type("van.ts", "load: 40", "load: 30");
    // Answered at once, from the newest complete result, which may be any of them.
    await hints();
    await editor.until("van.ts", "idle");
    expect((await hints())[0]?.label).toContain(" A spare");
    const asked = editor.asks("workspace/configuration");
    editor.setConfiguration({ inlayHints: false });
    await asked;
    expect(await hints()).toEqual([]);
  });

  test("limits can be set, and a plan is stopped at them", async () => {
    const loop = `import "loomwright";\nfor (;;) {}\n`;
    const editor = await start({
      files: { "loop.ts": loop },
      capabilities: { ...pushing, workspace: { ...pushing.workspace, configuration: false } },
      initializationOptions: { timeLimitMs: 150 },
    });
    editor.open("loop.ts");
    await editor.until("loop.ts", "idle");
    expect(editor.pushed("loop.ts")?.map(({ code }) => code)).toEqual(["plan/too-slow"]);
    expect(editor.pushed("loop.ts")?.[0]?.message).toMatch(/150 ms|0\.15 s/);
  });

  test("limits that are changed while plans are open run them again", async () => {
    const loop = `import "loomwright";\nfor (let i = 0; i < 1e9; i++) {}\n`;
    const editor = await start({ files: { "loop.ts": loop }, configuration: { timeLimitMs: 400 } });
    editor.open("loop.ts");
    await editor.until("loop.ts", "idle");
    const [before] = editor.pushed("loop.ts") ?? [];
    const seen = editor.statuses.length;
    editor.setConfiguration({ timeLimitMs: 150 });
    await editor.asks("workspace/configuration");
    // The state is reported after the answer that waited for the check.
    await editor.ask("textDocument/documentSymbol", "loop.ts");
    await editor.ask("textDocument/documentSymbol", "loop.ts");
    expect(editor.statuses.slice(seen).map(({ state }) => state)).toEqual(["idle"]);
    expect(editor.pushed("loop.ts")?.[0]?.message).not.toBe(before?.message);
  });

  test("an editor that can do nothing special gets findings, plain edits, and news from disk when it saves", async () => {
    // 50 A is 125 % of the load: only the size is repaired.
    const files = {
      "van.ts": `import { circuit } from "loomwright";\nimport { size } from "./parts.ts";\n\ncircuit({ name: "winch", load: 40, oneWayFt: 15, gauge: size, protect: 50, insulationC: 105 });\n`,
      "parts.ts": "export const size = 2;\n",
    };
    const editor = await start({ files, capabilities: {}, initializationOptions: { inlayHints: false } });
    editor.open("van.ts");
    await editor.until("van.ts", "idle");
    expect(await editor.ask("textDocument/inlayHint", "van.ts", { range: everywhere })).toEqual([]);
    const findings = () => [...(editor.pushed("van.ts") ?? []), ...(editor.pushed("parts.ts") ?? [])];
    expect(findings().map(({ code }) => code)).not.toContain("conductor/voltage-drop");
    editor.onDiskUnheard({ "parts.ts": "export const size = 12;\n" });
    editor.save("van.ts");
    await editor.ask("textDocument/documentSymbol", "van.ts");
    expect(findings().map(({ code }) => code)).toContain("conductor/voltage-drop");
    editor.open("parts.ts", "export const size = 12;\n");
    const actions = await editor.ask<CodeAction[]>("textDocument/codeAction", "parts.ts", {
      range: everywhere,
      context: { diagnostics: [], only: ["quickfix"] },
    });
    const best = actions.find(({ isPreferred }) => isPreferred);
    expect(best?.edit?.documentChanges).toBeUndefined();
    expect(Object.keys(best?.edit?.changes ?? {})).toEqual([editor.uri("parts.ts")]);
    expect(editor.asked).toEqual([]);
  });

  test("a file under a name that editors and Node write differently", async () => {
    const file = "my van (old) #1/van plan.ts";
    const editor = await start({ files: { [file]: winch } });
    editor.open(file);
    await editor.until(file, "idle");
    expect(codes(editor.pushed(file))).toEqual(foundInWinch.toSorted());
  });

  test("works over Node's own channel too", async () => {
    const editor = await start({ files: { "van.ts": winch }, transport: "node-ipc" });
    editor.open("van.ts");
    await editor.until("van.ts", "idle");
    expect(codes(editor.pushed("van.ts"))).toEqual(foundInWinch.toSorted());
  });

  test("a bad question costs one answer, which names the parameter", async () => {
    const editor = await start({ files: { "van.ts": winch } });
    editor.open("van.ts");
    await editor.until("van.ts", "idle");
    await expect(editor.ask("textDocument/hover", "van.ts", { position: null })).rejects.toThrow(
      /^position is null/,
    );
    expect(await editor.ask("textDocument/documentSymbol", "van.ts")).toHaveLength(2);
  });

  test("after a restart everything is there again", async () => {
    const first = await start({ files: { "van.ts": winch } });
    first.open("van.ts");
    await first.until("van.ts", "idle");
    const before = first.pushed("van.ts")?.map(({ message }) => message);
    expect(await first.quit()).toBe(0);
    const second = await start({ files: { "van.ts": winch } });
    second.open("van.ts");
    await second.until("van.ts", "idle");
    expect(second.pushed("van.ts")?.map(({ message }) => message)).toEqual(before);
  });
});

function codes(found: readonly Diagnostic[] | undefined) {
  return found?.map(({ code }) => String(code)).sort();
}

test("started by hand without an editor, it says how it is meant to be started", () => {
  const server = fileURLToPath(new URL("../../server/dist/language-server.cjs", import.meta.url));
  const { status, stderr } = spawnSync(process.execPath, [server], { encoding: "utf8" });
  expect(status).toBe(2);
  expect(stderr).toContain("--stdio");
  expect(stderr).not.toContain("    at ");
});
