import { describe, expect, test } from "vitest";
import type { WorkspaceCheck } from "../../server/language/messages.ts";
import type { ScriptedEditor } from "./scripted-editor.ts";
import { useEditors } from "./use-editors.ts";

const start = useEditors();

const importing = `import { circuit } from "loomwright";
import { size } from "./parts.ts";

circuit({ name: "winch", load: 40, oneWayFt: 15, gauge: size, protect: 50, insulationC: 105 });
`;
const codes = (editor: ScriptedEditor, file: string) =>
  editor
    .pushed(file)
    ?.map(({ code }) => code)
    .sort();

describe("a plan of several files", () => {
  test("the finding sits on the value in the imported file, whose unsaved text wins", async () => {
    const editor = await start({ files: { "van.ts": importing, "parts.ts": "export const size = 2;\n" } });
    editor.open("van.ts");
    await editor.until("van.ts", "idle");
    expect(codes(editor, "van.ts")).toEqual([]);
    editor.open("parts.ts");
    editor.type("parts.ts", "2", "12");
    await editor.until("parts.ts", "idle");
    expect(codes(editor, "parts.ts")).toContain("conductor/voltage-drop");
    editor.close("parts.ts");
    await editor.until("van.ts", "idle");
    const status = await editor.request<WorkspaceCheck>("loomwright/checkWorkspace", {});
    expect(status.plans).toMatchObject([{ state: "idle", counts: { errors: 0, warnings: 0 } }]);
    expect(codes(editor, "parts.ts")).toEqual([]);
  });

  test("a file that changes on disk re-checks the plans that import it", async () => {
    const editor = await start({ files: { "van.ts": importing, "parts.ts": "export const size = 2;\n" } });
    editor.open("van.ts");
    const first = await editor.until("van.ts", "idle");
    expect(first.counts).toMatchObject({ errors: 0, warnings: 0 });
    await changedOnDisk(editor, { "parts.ts": "export const size = 12;\n" });
    expect(codes(editor, "parts.ts")).toContain("conductor/voltage-drop");
    await changedOnDisk(editor, { "parts.ts": undefined });
    expect(codes(editor, "van.ts")).toEqual(["plan/cannot-run"]);
    expect(codes(editor, "parts.ts")).toEqual([]);
    await changedOnDisk(editor, { "parts.ts": "export const size = 2;\n" });
    expect(codes(editor, "van.ts")).toEqual([]);
  });

  test("a renamed file is found under its new name only", async () => {
    const editor = await start({ files: { "van.ts": importing, "parts.ts": "export const size = 12;\n" } });
    editor.open("van.ts");
    await editor.until("van.ts", "idle");
    expect(codes(editor, "parts.ts")).toContain("conductor/voltage-drop");
    await changedOnDisk(editor, { "parts.ts": undefined, "stock.ts": "export const size = 12;\n" });
    expect(codes(editor, "parts.ts")).toEqual([]);
    editor.type("van.ts", "./parts.ts", "./stock.ts");
    await editor.until("van.ts", "idle");
    expect(codes(editor, "stock.ts")).toContain("conductor/voltage-drop");
    expect(codes(editor, "parts.ts")).toEqual([]);
    expect(codes(editor, "van.ts")).toEqual(["protection/above-conductor"]);
  });

  test("two plans in one folder do not mix", async () => {
    const plan = (name: string, gauge: number) =>
      `import { build, circuit } from "loomwright";\nbuild({ voltage: ${gauge === 2 ? 24 : 12}, insulationC: 105 });\ncircuit({ name: "${name}", load: 40, oneWayFt: 15, gauge: ${gauge}, protect: 50 });\n`;
    const editor = await start({ files: { "van.ts": plan("van", 12), "boat.ts": plan("boat", 2) } });
    editor.open("van.ts");
    editor.open("boat.ts");
    const van = await editor.until("van.ts", "idle");
    const boat = await editor.until("boat.ts", "idle");
    expect(van.counts).toMatchObject({ circuits: 1 });
    expect(boat.counts).toMatchObject({ circuits: 1, errors: 0, warnings: 0 });
    const pushesOfBoat = editor.pushes.filter(({ uri }) => uri === editor.uri("boat.ts")).length;
    editor.type("van.ts", "gauge: 12", "gauge: 14");
    await editor.until("van.ts", "idle");
    expect(codes(editor, "van.ts")).toContain("conductor/ampacity");
    expect(editor.pushes.filter(({ uri }) => uri === editor.uri("boat.ts"))).toHaveLength(pushesOfBoat);
  });

  test("the whole workspace is checked on request, plans that are not open too", async () => {
    const editor = await start({
      files: {
        "van/van.ts": importing,
        "van/parts.ts": "export const size = 12;\n",
        "boat.ts": `import { circuit } from "loomwright";\ncircuit({\n`,
        "other.ts": "export const answer = 42;\n",
      },
    });
    const { plans } = await editor.request<WorkspaceCheck>("loomwright/checkWorkspace", {});
    expect(plans.map(({ uri, state }) => [uri, state]).sort()).toEqual([
      [editor.uri("boat.ts"), "incomplete"],
      [editor.uri("van/van.ts"), "idle"],
    ]);
    expect(codes(editor, "van/parts.ts")).toContain("conductor/voltage-drop");
    expect(editor.pushed("other.ts")).toBeUndefined();
  });

  test("a file that does not import the library is of no concern", async () => {
    const editor = await start({
      files: { "van.ts": importing, "parts.ts": "export const size = 2;\n", "web.ts": "" },
    });
    editor.open("web.ts", "export const answer = 42;\n");
    editor.type("web.ts", "42", "43");
    expect(await editor.ask("textDocument/documentSymbol", "web.ts")).toEqual([]);
    expect(await editor.ask("textDocument/codeLens", "web.ts")).toEqual([]);
    expect(editor.pushes).toEqual([]);
    expect(editor.statuses.filter(({ uri }) => uri !== undefined)).toEqual([]);
  });
});

/** Changes the disk and waits until the plan that imports the file has been checked again. */
async function changedOnDisk(editor: ScriptedEditor, files: Record<string, string | undefined>) {
  const before = editor.statuses.length;
  editor.onDisk(files);
  for (;;) {
    const rest = editor.statuses.slice(before).filter(({ state }) => state === "idle" || state === "failed");
    if (rest.length > 0) return;
    // Requests are answered in order: this one comes back after the notification was processed.
    await editor.ask("textDocument/documentSymbol", "van.ts");
  }
}
