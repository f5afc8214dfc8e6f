import { describe, expect, test } from "vitest";
import type {
  CodeAction,
  CompletionItem,
  DocumentSymbol,
  Hover,
  InlayHint,
} from "vscode-languageserver/node";
import snippets from "../../extension/snippets/plan.json";
import { words } from "../../library/model/record.ts";
import { isPartWord } from "../../library/model/terminals.ts";
import type { ScriptedEditor } from "./scripted-editor.ts";
import { useEditors } from "./use-editors.ts";

/** A bank, a switch and a panel with a heater. The bank is small: any fuse can interrupt its dead-short current. */
const build = `import { battery, build, cable, circuit, disconnect, fusePanel, scenario } from "loomwright";

build({ insulationC: 105 });
const bank = battery({ name: "house bank", chemistry: "AGM", capacityAh: 60, internalMilliohm: 20 });
const off = disconnect({ name: "main switch", ratedA: 100 });
const panel = fusePanel({ name: "fuse panel", positions: 6, ratedA: 100 });
cable({ name: "bank to switch", from: bank.positive, to: off.line, lengthFt: 1, gauge: 6, protect: { ratingA: 40, family: "ISO 8820-3 Type E", distanceIn: 6 } });
cable({ name: "feeder", from: off.load, to: panel.feed, lengthFt: 4, gauge: 6 });
cable({ name: "panel return", from: panel.negative, to: bank.negative, lengthFt: 5, gauge: 6 });
circuit({ name: "heater", from: panel.branch, load: 15, oneWayFt: 12, gauge: 10, protect: { ratingA: 20, family: "ISO 8820-3 Type C" } });
scenario({ name: "evening", chargePercent: 50 });
scenario({ name: "cooking" });
`;

const start = useEditors();

const everywhere = { start: { line: 0, character: 0 }, end: { line: 99, character: 0 } };

const rulesIn = (editor: ScriptedEditor) =>
  editor
    .pushed("van.ts")
    ?.filter(({ severity }) => severity !== undefined && severity < 3)
    .map(({ code }) => code);

const quickFixes = (editor: ScriptedEditor, found: string) => {
  const position = editor.behind("van.ts", found);
  return editor.ask<CodeAction[]>("textDocument/codeAction", "van.ts", {
    range: { start: position, end: position },
    context: { diagnostics: [], only: ["quickfix"] },
  });
};

const textOf = ({ contents }: Hover) => (contents as { readonly value: string }).value;

describe("a builder works on a network", () => {
  test("in order: nothing found, and every part of the plan is counted", async () => {
    const editor = await start({ files: { "van.ts": build } });
    editor.open("van.ts");
    const status = await editor.until("van.ts", "idle");
    expect(rulesIn(editor)).toEqual([]);
    expect(status.counts).toMatchObject({ circuits: 1, parts: 3, cables: 3, errors: 0, warnings: 0 });
    expect(status.message).toMatch(/^1 circuit, 3 parts, 3 cables, /);
  });

  test("takes the fuse out of the bank's cable, sees where the bank reaches, takes the fix, and all is in order", async () => {
    const editor = await start({ files: { "van.ts": build } });
    editor.open("van.ts");
    editor.type("van.ts", ', protect: { ratingA: 40, family: "ISO 8820-3 Type E", distanceIn: 6 }', "");
    await editor.until("van.ts", "idle");
    expect(rulesIn(editor)).toContain("protection/unprotected-path");
    const ofFeeder = editor
      .pushed("van.ts")!
      .find(({ code, range }) => code === "protection/unprotected-path" && range.start.line === 7);
    // On the terminal where the bank's cable arrives, with references to the bank and to the cable before it.
    expect(ofFeeder?.range).toEqual({
      start: editor.behind("van.ts", 'name: "feeder", from: '),
      end: editor.behind("van.ts", 'name: "feeder", from: off.load'),
    });
    const related = ofFeeder?.relatedInformation ?? [];
    expect(related.map(({ location }) => location.range.start.line)).toEqual([3, 6]);
    expect(related[1]?.message).toContain("bank to switch");

    const [fix] = await quickFixes(editor, 'name: "bank to switch", from: ');
    expect(fix?.title).toMatch(/^Add a \d+ A fuse \(ISO 8820.*within 7 in of the positive terminal/);
    expect(fix?.isPreferred).toBe(true);
    editor.apply(fix!);
    await editor.until("van.ts", "idle");
    expect(rulesIn(editor)).toEqual([]);
    expect(editor.textOf("van.ts")).toMatch(/gauge: 6, protect: \{ ratingA: \d+, family: "ISO 8820/);
  });

  test("hover, working, hints, outline and lens speak of the network", async () => {
    const editor = await start({ files: { "van.ts": build } });
    editor.open("van.ts");
    const hoverAt = (found: string) =>
      editor.ask<Hover>("textDocument/hover", "van.ts", { position: editor.behind("van.ts", found) });
    expect(textOf(await hoverAt("const bank = bat"))).toMatch(
      /\| \*\*cooking\*\* \(worst\) \| \*\*11\.\d+ V\*\* \| \*\*gives 15 A\*\* \|/,
    );
    expect(textOf(await hoverAt("from: bank.pos"))).toContain("The positive terminal of the house bank");
    expect(textOf(await hoverAt('name: "fee'))).toContain("| evening | 15 A |");
    expect(textOf(await hoverAt('scenario({ name: "cook'))).toContain("**cooking**: solved");
    const hints = await editor.ask<InlayHint[]>("textDocument/inlayHint", "van.ts", { range: everywhere });
    expect(hints.map(({ label }) => label)).toEqual([
      ...Array(3).fill(expect.stringMatching(/^carries 15 A, \d+ A spare$/)),
      expect.stringMatching(/^drop 3\.\d+ %, 45 A spare$/),
    ]);
    const symbols = await editor.ask<DocumentSymbol[]>("textDocument/documentSymbol", "van.ts");
    expect(symbols.map(({ name, children }) => [name, children?.map((child) => child.name)])).toEqual([
      ["house bank", ["bank to switch"]],
      ["main switch", ["feeder"]],
      ["fuse panel", ["panel return", "heater"]],
      ["evening", undefined],
      ["cooking", undefined],
    ]);
    const [lens] = await editor.ask<{ command: { title: string } }[]>("textDocument/codeLens", "van.ts");
    expect(lens?.command.title).toMatch(/^1 circuit, 3 parts, 3 cables · .* \(heater, from the bank\)$/);
  });

  test("a scenario without an operating point is found, and said over the plan and in the status", async () => {
    const editor = await start({ files: { "van.ts": build } });
    editor.open("van.ts");
    editor.type("van.ts", "load: 15", "loadW: 3_000");
    const status = await editor.until("van.ts", "idle");
    expect(rulesIn(editor)?.filter((rule) => rule === "voltage/collapse")).toHaveLength(2);
    expect(status.message).toMatch(/2 of 2 scenarios not solved$/);
    const [lens] = await editor.ask<{ command: { title: string } }[]>("textDocument/codeLens", "van.ts");
    expect(lens?.command.title).toMatch(/2 of 2 scenarios not solved$/);
  });

  test("a refused value of a part: the network is not judged, and everything says so", async () => {
    const editor = await start({ files: { "van.ts": build } });
    editor.open("van.ts");
    editor.type("van.ts", "capacityAh: 60", "capacityAh: -60");
    const status = await editor.until("van.ts", "idle");
    expect(rulesIn(editor)).toContain("plan/invalid-value");
    expect(status.message).toMatch(/network not judged$/);
    const hover = await editor.ask<Hover>("textDocument/hover", "van.ts", {
      position: editor.behind("van.ts", "const panel = fuse"),
    });
    expect(textOf(hover)).toContain("**Not judged**");
  });

  test("sizes of a cable are completed while the value is still empty", async () => {
    const editor = await start({ files: { "van.ts": build } });
    editor.open("van.ts");
    editor.type("van.ts", "lengthFt: 4, gauge: 6", "lengthFt: 4, gauge: ");
    const items = await editor.ask<CompletionItem[]>("textDocument/completion", "van.ts", {
      position: editor.behind("van.ts", "lengthFt: 4, gauge: "),
    });
    // 33 CFR 183.425, Table 5: 6 AWG, 105 °C: 120 A.
    expect(items.find(({ label }) => label === "6")?.labelDetails?.description).toBe(
      "limits met: 15 A, 105 A spare",
    );
  });

  test("while a cable is half typed, what is shown is as of the last complete text", async () => {
    const editor = await start({ files: { "van.ts": build } });
    editor.open("van.ts");
    await editor.until("van.ts", "idle");
    editor.type("van.ts", 'scenario({ name: "evening"', 'cable({ from: \nscenario({ name: "evening"');
    await editor.until("van.ts", "incomplete");
    const hover = await editor.ask<Hover>("textDocument/hover", "van.ts", {
      position: editor.behind("van.ts", 'name: "fee'),
    });
    expect(textOf(hover)).toContain("As of the last complete text");
    const symbols = await editor.ask<DocumentSymbol[]>("textDocument/documentSymbol", "van.ts");
    expect(symbols).toHaveLength(5);
  });
});

describe("snippets", () => {
  /** As the editor inserts it: each placeholder with its default, of a choice the first. */
  const expanded = (body: readonly string[]) =>
    body
      .join("\n")
      .replace(/\$\{\d+\|([^,|]*)[^|]*\|\}/g, "$1")
      .replace(/\$\{\d+:([^}]*)\}/g, "$1")
      .replace(/\$\d+/g, "");

  test.each(["A new plan", "A new plan with a bank and a fuse panel"] as const)(
    "%s has nothing to be found",
    async (name) => {
      const text = expanded(snippets[name].body);
      const editor = await start({ files: { "van.ts": text } });
      editor.open("van.ts");
      const status = await editor.until("van.ts", "idle");
      expect(rulesIn(editor)).toEqual([]);
      expect(status.counts?.circuits).toBe(1);
    },
  );

  const bodies = Object.values(snippets).map(({ body }) => expanded(body));
  /** Those that are not whole plans with an import of their own. */
  const pieces = bodies.filter((body) => !body.includes("import "));

  test.each(words)("there is one that calls %s", (word) => {
    expect(bodies.filter((body) => new RegExp(`\\b${word}\\(`).test(body))).not.toEqual([]);
  });

  test("those for single parts, cables, circuits and scenarios make a plan together", async () => {
    const makesPart = (body: string) => body.startsWith("const ");
    const parts = [...pieces.filter(makesPart), ...pieces.filter((body) => !makesPart(body))];
    const text = `import { ${words.join(", ")} } from "loomwright";\n${parts
      .join("")
      .replace("to: inverter", "to: kettle")
      .replace("returnTo: negativeBus.stud", "returnTo: house.negative")}`;
    const editor = await start({ files: { "van.ts": text } });
    editor.open("van.ts");
    const status = await editor.until("van.ts", "idle");
    expect(rulesIn(editor)).not.toContain("plan/invalid-value");
    expect(rulesIn(editor)).not.toContain("plan/cannot-run");
    const begins = (call: string) => pieces.filter((body) => body.startsWith(call)).length;
    expect(status.counts).toMatchObject({
      parts: words.filter(isPartWord).length,
      cables: begins("cable("),
      circuits: begins("circuit("),
    });
  });
});
