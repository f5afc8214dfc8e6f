import { describe, expect, test } from "vitest";
import { CancellationTokenSource, LSPErrorCodes } from "vscode-languageserver/node";
import type { EnergyLever, EnergyParams, EnergyView, MoveAnswer } from "../../server/language/messages.ts";
import { energyPlan } from "../editor/harness/energy-plan.ts";
import type { ScriptedEditor } from "./scripted-editor.ts";
import { useEditors } from "./use-editors.ts";

const startEditor = useEditors();

async function start(text = energyPlan): Promise<ScriptedEditor> {
  const editor = await startEditor({ files: { "hut.ts": text } });
  editor.open("hut.ts");
  return editor;
}

const ask = (editor: ScriptedEditor, params: Omit<EnergyParams, "textDocument"> = {}) =>
  editor.ask<EnergyView>("loomwright/energy", "hut.ts", params);

const versionsOf = ({ versions }: EnergyView) =>
  Object.entries(versions).map(([uri, version]) => ({ uri, version }));

const leverOf = ({ shown }: EnergyView, label: string): EnergyLever => {
  const found = shown?.levers.find((lever) => lever.label.startsWith(label));
  if (!found) throw new Error(`no lever is called ${label}: ${JSON.stringify(shown?.levers)}`);
  return found;
};

describe("figures with a lever moved", () => {
  test("are those of the text with that number, and no text is changed", async () => {
    const editor = await start();
    const before = await ask(editor);
    const { id } = leverOf(before, "house: capacity");
    const moved = await ask(editor, { move: { lever: id, value: 300 } });
    expect(editor.textOf("hut.ts")).toBe(energyPlan);
    expect(moved.shown!.months).not.toEqual(before.shown!.months);
    expect(moved.shown!.levers).toEqual(before.shown!.levers);
    const typed = await start(energyPlan.replace("capacityAh: 100", "capacityAh: 300"));
    expect((await ask(typed)).shown!.months).toEqual(moved.shown!.months);
    expect((await ask(editor)).shown!.months).toEqual(before.shown!.months);
  });

  test("can be cancelled, and the next request is answered", async () => {
    const editor = await start();
    const { id } = leverOf(await ask(editor), "house: capacity");
    const source = new CancellationTokenSource();
    const params = { textDocument: { uri: editor.uri("hut.ts") }, move: { lever: id, value: 200 } };
    const asked = editor.connection.sendRequest("loomwright/energy", params, source.token);
    source.cancel();
    await expect(asked).rejects.toMatchObject({ code: LSPErrorCodes.RequestCancelled });
    expect((await ask(editor, { move: params.move })).shown!.months).toHaveLength(12);
  });

  test("a lever that is not there, or a value beyond it, is refused", async () => {
    const editor = await start();
    const { id } = leverOf(await ask(editor), "house: capacity");
    for (const move of [
      { lever: "99 capacityAh", value: 100 },
      { lever: id, value: 1e9 },
    ])
      await expect(ask(editor, { move })).rejects.toMatchObject({ code: LSPErrorCodes.ContentModified });
  });
});

describe("the least single changes", () => {
  test("are worked out only if they are wanted, of the plan as it would be with a lever moved too", async () => {
    const editor = await start();
    const before = await ask(editor);
    expect(before.shown!.least).toBeUndefined();
    const { least } = (await ask(editor, { least: true })).shown!;
    expect(least!.rows.map(({ change, now }) => [change, now])).toEqual([
      ["Bank", "100 Ah"],
      ["Shore power", "2 h a day"],
      // Neither this one nor an array alone is enough: one row instead of two alike.
      ["Solar array with a controller to match", "200 W"],
    ]);
    const move = { lever: leverOf(before, "house: capacity").id, value: 300 };
    expect((await ask(editor, { move, least: true })).shown!.least!.rows[0]!.now).toBe("300 Ah");
  });

  test("can be cancelled while they are searched for", async () => {
    const editor = await start();
    await ask(editor);
    const source = new CancellationTokenSource();
    const params = { textDocument: { uri: editor.uri("hut.ts") }, least: true };
    const asked = editor.connection.sendRequest("loomwright/energy", params, source.token);
    setTimeout(() => source.cancel(), 1);
    await expect(asked).rejects.toMatchObject({ code: LSPErrorCodes.RequestCancelled });
    expect((await ask(editor, { least: true })).shown!.least!.rows).not.toEqual([]);
  });
});

describe("a lever that is let go", () => {
  const letGo = (editor: ScriptedEditor, view: EnergyView, move: { lever: string; value: number }) =>
    editor.ask<MoveAnswer>("loomwright/moveLever", "hut.ts", { versions: versionsOf(view), move });

  test("is an edit of its own literal, for the version that it was made for", async () => {
    const editor = await start();
    const view = await ask(editor);
    const answer = await letGo(editor, view, { lever: leverOf(view, "house").id, value: 260 });
    if (answer.state !== "edits") throw new Error(answer.message);
    const line = energyPlan.slice(0, energyPlan.indexOf("capacityAh")).split("\n").length - 1;
    expect(answer.edits).toEqual([
      {
        uri: editor.uri("hut.ts"),
        version: view.versions[editor.uri("hut.ts")],
        range: { start: { line, character: 14 }, end: { line, character: 17 } },
        newText: "260",
      },
    ]);
  });

  test("is dropped with a word if the text changed meanwhile", async () => {
    const editor = await start();
    const view = await ask(editor);
    editor.type("hut.ts", "loadW: 50", "loadW: 60");
    const answer = await letGo(editor, view, { lever: leverOf(view, "house").id, value: 260 });
    expect(answer).toEqual({
      state: "dropped",
      message: "The lever was not moved: the text changed meanwhile.",
    });
  });
});

describe("a number that cannot be moved says why", () => {
  const bank = (text: string) => energyPlan.replace("const house = battery({", text);
  test.each([
    ["computed", energyPlan.replace("capacityAh: 100", "capacityAh: 50 * 2"), "it is computed"],
    [
      "reassigned",
      energyPlan
        .replace("const house", "let ah = 50;\nah = 100;\nconst house")
        .replace("capacityAh: 100", "capacityAh: ah"),
      "it is a variable that may be assigned again (ah)",
    ],
    [
      "made in a factory",
      bank("const made = () => battery({").replace(
        "reservePercent: 20,\n});",
        "reservePercent: 20,\n});\nconst house = made();",
      ),
      "it is set in a function",
    ],
    [
      "made in a loop",
      bank("const [house] = [1].map(() => battery({").replace(
        "reservePercent: 20,\n});",
        "reservePercent: 20,\n})) as [any];",
      ),
      "it is set in a loop",
    ],
    [
      "spread",
      energyPlan
        .replace("const house", "const figures = { capacityAh: 100 };\nconst house")
        .replace("  capacityAh: 100,\n", "  ...figures,\n"),
      "it is from an object that is spread or shared",
    ],
    [
      "a shared constant",
      energyPlan
        .replace("const house", "const hundred = 100;\nconst house")
        .replace("capacityAh: 100", "capacityAh: hundred")
        .replace("maxInputV: 100", "maxInputV: hundred"),
      "it is a shared constant (hundred)",
    ],
  ])("%s", async (_, text, reason) => {
    const editor = await start(text);
    const lever = leverOf(await ask(editor), "house: capacity");
    expect(lever.value).toBe(100);
    expect(lever.fixed).toContain(`Cannot be moved here: ${reason}`);
  });

  test("a constant of its own can be moved, where it is written", async () => {
    const text = energyPlan
      .replace("const house", "const ah = 100;\nconst house")
      .replace("capacityAh: 100", "capacityAh: ah");
    const editor = await start(text);
    const view = await ask(editor);
    const lever = leverOf(view, "house: capacity");
    expect([lever.fixed, lever.hint]).toEqual([undefined, ""]);
    const move = { lever: lever.id, value: 120 };
    const answer = await editor.ask<MoveAnswer>("loomwright/moveLever", "hut.ts", {
      versions: versionsOf(view),
      move,
    });
    if (answer.state !== "edits") throw new Error(answer.message);
    expect(answer.edits[0]!.range.start.line).toBe(
      text.slice(0, text.indexOf("const ah")).split("\n").length - 1,
    );
  });
});

test("a constant that sets several batteries says how many before it is let go, and sets them all", async () => {
  const second = `const spare = battery({ name: "spare", chemistry: "LiFePO4", capacityAh: ah, reservePercent: 20 });
cable({ from: spare.positive, to: plus.stud, lengthM: 1, gauge: "1/0", protect: 200 });
cable({ from: spare.negative, to: minus.stud, lengthM: 1, gauge: "1/0" });
const on = {`;
  const text = energyPlan
    .replace("const house", "const ah = 100;\nconst house")
    .replace("capacityAh: 100", "capacityAh: ah")
    .replace("const on = {", second);
  const editor = await start(text);
  const view = await ask(editor);
  const lever = leverOf(view, "house: capacity");
  expect([lever.fixed, lever.hint]).toEqual([undefined, "This number sets 2 values of the plan."]);
  const move = { lever: lever.id, value: 150 };
  const versions = versionsOf(view);
  const answer = await editor.ask<MoveAnswer>("loomwright/moveLever", "hut.ts", { versions, move });
  if (answer.state !== "edits") throw new Error(answer.message);
  expect(answer.edits.map(({ newText }) => newText)).toEqual(["150"]);
  const moved = await ask(editor, { move });
  const typed = await ask(await start(text.replace("const ah = 100", "const ah = 150")));
  expect(moved.shown!.months).toEqual(typed.shown!.months);
});

test("without figures the view says why", async () => {
  const without = (text: string) => start(text).then((editor) => ask(editor));
  expect((await without(energyPlan.replace(/period\(\{.*\n/, ""))).notes[0]).toContain(
    "The plan has no period",
  );
  const unclear = await without(energyPlan.replace("Bergen, NO", "San Fernando"));
  expect(unclear.notes[0]).toContain("the place of this period is not clear");
  expect((await without(energyPlan.replace("capacityAh: 100", "capacityAh: -1"))).notes[0]).toContain(
    "the network could not be read",
  );
});
