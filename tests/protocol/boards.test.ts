import { afterAll, afterEach, beforeAll, describe, expect, test } from "vitest";
import { CancellationTokenSource, LSPErrorCodes } from "vscode-languageserver/node";
import type { BoardPart, BoardsView, MoveAnswer, TriedPlace } from "../../server/language/messages.ts";
import { boardsPlan } from "../editor/harness/boards-plan.ts";
import { type ScriptedEditor, startEditor } from "./scripted-editor.ts";

let editor: ScriptedEditor;
const file = "cabin.ts";
beforeAll(async () => {
  editor = await startEditor({ files: { [file]: boardsPlan } });
  editor.open(file);
});
afterEach(() => {
  if (editor.textOf(file) !== boardsPlan) editor.retype(file, boardsPlan);
});
afterAll(async () => {
  expect(await editor.quit()).toBe(0);
});

const ask = () => editor.ask<BoardsView>("loomwright/boards", file);
/** The view of another text. */
const viewOf = (text: string) => {
  editor.retype(file, text);
  return ask();
};
const versionsOf = ({ versions }: BoardsView) =>
  Object.entries(versions).map(([uri, version]) => ({ uri, version }));
const partOf = ({ parts }: BoardsView, name: string): BoardPart => {
  const found = parts.find((part) => part.name === name);
  if (!found) throw new Error(`no part is called ${name}`);
  return found;
};
const boardOf = ({ surfaces }: BoardsView, name = "Main board") =>
  surfaces.find((surface) => surface.name === name)!.record;
type Put = Omit<TriedPlace, "record" | "on" | "turnedDeg"> & {
  readonly part: string;
  readonly on?: string;
  readonly turnedDeg?: TriedPlace["turnedDeg"];
};
const tried = (view: BoardsView, { part, on, turnedDeg = 0, left, top }: Put) => ({
  tried: {
    versions: versionsOf(view),
    places: [{ record: partOf(view, part).record, on: boardOf(view, on), turnedDeg, left, top }],
  },
});
const tryAt = (view: BoardsView, put: Put) =>
  editor.ask<BoardsView>("loomwright/boards", file, tried(view, put));
const put = (view: BoardsView, place: Put) =>
  editor.ask<MoveAnswer>("loomwright/placeParts", file, tried(view, place));

/** The text after an answer's edits. */
function edited(answer: MoveAnswer, text = boardsPlan): string {
  if (answer.state !== "edits") throw new Error(answer.message);
  const offsetOf = ({ line, character }: { line: number; character: number }) =>
    text.split("\n").slice(0, line).join("\n").length + (line > 0 ? 1 : 0) + character;
  return [...answer.edits]
    .sort((one, other) => offsetOf(other.range.start) - offsetOf(one.range.start))
    .reduce(
      (made, { range, newText }) =>
        made.slice(0, offsetOf(range.start)) + newText + made.slice(offsetOf(range.end)),
      text,
    );
}

test("the view shows each surface with its parts, those without a place, and the lengths along their ways", async () => {
  const view = await ask();
  expect(view.surfaces.map(({ name, size }) => [name, size])).toEqual([
    ["Main board", "1,200 × 800 mm"],
    ["Side wall", "600 × 800 mm"],
  ]);
  expect(view.parts.map(({ name, place }) => [name, place?.words])).toEqual([
    ["house", "60 mm from the left, 560 mm from the top, upright"],
    ["plus", "600 mm from the left, 300 mm from the top, upright"],
    ["minus", "800 mm from the left, 300 mm from the top, upright"],
    ["Fridge", undefined],
  ]);
  expect(view.conductors[0]).toMatchObject({ length: "0.864 m" });
  expect(view.conductors.at(-1)).toMatchObject({ name: "Fridge, return", length: /on no surface/ });
});

describe("a part at another place", () => {
  test("is judged there, with lengths and overlaps that follow, and no text is changed", async () => {
    const view = await ask();
    const moved = await tryAt(view, { part: "plus", left: 650, top: 300 });
    expect(editor.textOf(file)).toBe(boardsPlan);
    const plus = partOf(moved, "plus");
    expect(plus.place).toMatchObject({ left: 650, overlaps: [] });
    expect(moved.tried!.lengths).toEqual(["cabin.ts line 26: 0.864 → 0.919 m"]);
    const over = await tryAt(view, { part: "plus", left: 750, top: 310 });
    expect(partOf(over, "plus").place!.overlaps).toEqual([partOf(over, "minus").record]);
    const typed = await viewOf(boardsPlan.replace("leftMm: 600, topMm: 300", "leftMm: 650, topMm: 300"));
    expect(moved.parts.map(({ place }) => place)).toEqual(typed.parts.map(({ place }) => place));
    expect(moved.conductors.map(({ length }) => length)).toEqual(
      typed.conductors.map(({ length }) => length),
    );
  });

  test("that had no place yet is shown there", async () => {
    const view = await ask();
    const moved = await tryAt(view, { part: "Fridge", left: 900, top: 100 });
    expect(partOf(moved, "Fridge").place).toMatchObject({ left: 900, top: 100, width: 100, height: 60 });
    expect(moved.conductors.at(-1)!.length).toMatch(/ m$/);
    expect(moved.tried!.lengths).toEqual([
      "Fridge: positive not known: 1 end on no surface → 0.924 m, return not known: 1 end on no surface → 0.308 m",
    ]);
  });

  test("can be cancelled, and the next request is answered", async () => {
    const view = await ask();
    const source = new CancellationTokenSource();
    const params = {
      textDocument: { uri: editor.uri(file) },
      ...tried(view, { part: "plus", left: 650, top: 300 }),
    };
    const asked = editor.connection.sendRequest("loomwright/boards", params, source.token);
    source.cancel();
    await expect(asked).rejects.toMatchObject({ code: LSPErrorCodes.RequestCancelled });
    expect((await tryAt(view, { part: "plus", left: 650, top: 300 })).tried).toBeDefined();
  });

  test.each([
    ["beyond every plan", { part: "plus", left: 1e9, top: 0 }],
    ["left of the surface", { part: "plus", left: -1, top: 0 }],
    ["of a part with a computed place", { part: "minus", left: 100, top: 100 }],
  ])("%s is refused", async (_, place) => {
    const view = await ask();
    await expect(tryAt(view, place)).rejects.toMatchObject({ code: LSPErrorCodes.ContentModified });
  });

  test("of an older text is refused", async () => {
    const view = await ask();
    editor.type(file, "loadW: 60", "loadW: 70");
    await expect(tryAt(view, { part: "plus", left: 650, top: 300 })).rejects.toMatchObject({
      code: LSPErrorCodes.ContentModified,
    });
    expect(await put(view, { part: "plus", left: 650, top: 300 })).toEqual({
      state: "dropped",
      message: "The part was not moved: the text changed meanwhile.",
    });
  });
});

describe("a part that is let go", () => {
  test.each([
    [
      "changes the literals of its place, and only those that differ",
      { part: "plus", left: 645, top: 300 },
      ["leftMm: 600, topMm: 300 }", "leftMm: 645, topMm: 300 }"],
    ],
    [
      "that was turned gets the property, in the same literal",
      { part: "plus", left: 600, top: 310, turnedDeg: 90 },
      ["leftMm: 600, topMm: 300 }", "leftMm: 600, topMm: 310, turnedDeg: 90 }"],
    ],
    [
      "on another surface gets its name, and the surface stays as it is",
      { part: "plus", on: "Side wall", left: 100, top: 120 },
      ["on: board, leftMm: 600, topMm: 300 }", "on: side, leftMm: 100, topMm: 120 }"],
    ],
    [
      "and had no place gets the property",
      { part: "Fridge", left: 900, top: 100 },
      [
        "  size: { widthMm: 100, heightMm: 60 },\n",
        "  size: { widthMm: 100, heightMm: 60 },\n  at: { on: board, leftMm: 900, topMm: 100 },\n",
      ],
    ],
  ] as const)("%s", async (_, place, [from, to]) => {
    const view = await ask();
    expect(edited(await put(view, place as Put))).toBe(boardsPlan.replace(from, to));
  });

  test("is written in inches if its place is", async () => {
    const text = boardsPlan.replace("leftMm: 600, topMm: 300 }", "leftIn: 24, topIn: 12 }");
    const view = await viewOf(text);
    expect(partOf(view, "plus")).toMatchObject({
      unit: "in",
      place: { left: expect.closeTo(609.6), words: "24 in from the left, 12 in from the top, upright" },
    });
    expect(edited(await put(view, { part: "plus", left: 24.25, top: 12 }), text)).toBe(
      text.replace("leftIn: 24", "leftIn: 24.25"),
    );
  });
});

describe("a part that cannot be moved says why", () => {
  const plus = "leftMm: 600, topMm: 300 }";
  test.each([
    ["a computed distance", boardsPlan, "minus", "its distance from the left is computed"],
    [
      "a variable",
      boardsPlan
        .replace("const plus", "let down = 0;\ndown = 300;\nconst plus")
        .replace(plus, "leftMm: 600, topMm: down }"),
      "plus",
      "its distance from the top is a variable that may be assigned again (down)",
    ],
    [
      "a shared constant",
      boardsPlan
        .replace("const plus", "const down = 300;\nconst plus")
        .replaceAll("topMm: 300 }", "topMm: down }"),
      "plus",
      "its distance from the top is a shared constant",
    ],
    [
      "a shared object",
      boardsPlan
        .replace(plus, "...spot }")
        .replace("const plus", "const spot = { leftMm: 600, topMm: 300 };\nconst plus"),
      "plus",
      "from an object that is spread or shared",
    ],
    [
      "a loop",
      boardsPlan
        .replace("const plus = busBar({", "const [plus] = [1].map(() => busBar({")
        .replace(`${plus},\n});`, `${plus},\n})) as [any];`),
      "plus",
      "set in a loop",
    ],
    [
      "a surface further down",
      boardsPlan
        .replace(/^const (board|side) .*\n/gm, "")
        .replace(/^channel.*\n/m, "")
        .replace(/ {2}at: .*\n/g, "")
        .concat("const board = surface({ size: { widthMm: 1_200, heightMm: 800 } });\n"),
      "plus",
      "the surface has no name above it",
    ],
  ])("%s", async (_, text, part, reason) => {
    expect(partOf(await viewOf(text), part).fixed).toContain(reason);
  });

  test("and a constant of its own can be moved, where it is written", async () => {
    const text = boardsPlan
      .replace("const plus", "const across = 600;\nconst plus")
      .replace(plus, "leftMm: across, topMm: 300 }");
    const view = await viewOf(text);
    expect(partOf(view, "plus").fixed).toBeUndefined();
    expect(edited(await put(view, { part: "plus", left: 500, top: 300 }), text)).toBe(
      text.replace("const across = 600", "const across = 500"),
    );
  });
});

describe("a surface that was not read is never taken for one that the plan does not have", () => {
  const size = "size: { widthMm: 1_200, heightMm: 800 }";
  test.each([
    [
      "if the plan ends before it",
      boardsPlan.replace("const board", 'throw new Error("no");\nconst board'),
      "The plan was not run to its end: its surfaces are not known.",
      0,
    ],
    [
      "if the plan ends after it",
      boardsPlan.replace("const side", 'throw new Error("no");\nconst side'),
      "The plan was not run to its end: later parts are not shown.",
      1,
    ],
    [
      "if its size has a mistake",
      boardsPlan.replace(size, "size: { widthMm: -1, heightMm: 800 }"),
      "Not shown, because of a mistake in the text: Main board.",
      1,
    ],
    [
      "if all have a mistake",
      boardsPlan.replaceAll("heightMm: 800 } });", "heightMm: -1 } });"),
      "Not shown, because of a mistake in the text: Main board and Side wall.",
      0,
    ],
  ])("%s", async (_, text, note, surfaces) => {
    const view = await viewOf(text);
    expect(view.notes).toEqual([note]);
    expect(view.surfaces).toHaveLength(surfaces);
  });
});

test("without a surface the view says how to describe one", async () => {
  const view = await viewOf(
    boardsPlan.replace(/^(const (board|side)|channel).*\n/gm, "").replace(/ {2}at: .*\n/g, ""),
  );
  expect(view.notes[0]).toContain("The plan has no surface");
  expect(view.surfaces).toEqual([]);
});
