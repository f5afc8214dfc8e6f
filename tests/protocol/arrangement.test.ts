import { afterAll, afterEach, beforeAll, describe, expect, test } from "vitest";
import { CancellationTokenSource, LSPErrorCodes, ProgressType } from "vscode-languageserver/node";
import type { ArrangementAnswer, BoardsView, MoveAnswer } from "../../server/language/messages.ts";
import { boardsPlan } from "../editor/harness/boards-plan.ts";
import { type ScriptedEditor, startEditor } from "./scripted-editor.ts";

/** The positive bar and the fridge have no place yet; the negative one has a computed place. */
const plan = boardsPlan.replace("  at: { on: board, leftMm: 600, topMm: 300 },\n", "");
const file = "cabin.ts";
/** A surface, and a part without a place, in files of their own. */
const others = {
  "boards.ts": `import { surface } from "loomwright";
export const board = surface({ name: "Main board", size: { widthMm: 1_200, heightMm: 800 } });
export const place = { on: board } as const;
`,
  "hidden.ts": `import { surface } from "loomwright";
const board = surface({ name: "Main board", size: { widthMm: 1_200, heightMm: 800 } });
export const place = { on: board } as const;
`,
  "lights.ts": `import { busBar } from "loomwright";
import { board } from "./boards.ts";
export const spare = busBar({ name: "spare", side: "positive", size: { widthMm: 60, heightMm: 40 } });
export const at = board;
`,
};

let editor: ScriptedEditor;
beforeAll(async () => {
  editor = await startEditor({ files: { [file]: plan, ...others } });
  editor.open(file);
});
afterEach(() => {
  if (editor.textOf(file) !== plan) editor.retype(file, plan);
});
afterAll(async () => {
  expect(await editor.quit()).toBe(0);
});

const boards = (text = plan) => {
  if (editor.textOf(file) !== text) editor.retype(file, text);
  return editor.ask<BoardsView>("loomwright/boards", file);
};
const versionsOf = ({ versions }: BoardsView) =>
  Object.entries(versions).map(([uri, version]) => ({ uri, version }));
const params = (view: BoardsView, surface = "Main board") => ({
  textDocument: { uri: editor.uri(file) },
  versions: versionsOf(view),
  on: view.surfaces.find(({ name }) => name === surface)!.record,
});
const suggest = async (text = plan, surface?: string) =>
  editor.request<ArrangementAnswer>("loomwright/arrangement", params(await boards(text), surface));
const suggested = async (text?: string) => {
  const answer = await suggest(text);
  if (answer.state === "none") throw new Error(answer.message);
  return answer;
};
const reason = async (text: string, surface?: string) => {
  const answer = await suggest(text, surface);
  return answer.state === "none" ? answer.message : "places";
};
const take = async ({ places }: { readonly places: unknown }): Promise<MoveAnswer> => {
  const tried = { versions: versionsOf(await editor.ask<BoardsView>("loomwright/boards", file)), places };
  return editor.ask("loomwright/placeParts", file, { tried });
};
/** Writes an answer's edits into the editor, as one change. */
const write = (answer: MoveAnswer): string => {
  if (answer.state !== "edits") throw new Error(answer.message);
  const lines = editor.textOf(file).split("\n");
  const ends = answer.edits.map(({ range }) => range.start.line);
  expect(new Set(answer.edits.map(({ uri }) => uri))).toEqual(new Set([editor.uri(file)]));
  expect(new Set(ends).size).toBe(ends.length);
  for (const { range, newText } of answer.edits.toSorted(
    (one, other) => other.range.start.line - one.range.start.line,
  )) {
    const [first, last] = [lines[range.start.line]!, lines[range.end.line]!];
    lines.splice(
      range.start.line,
      range.end.line - range.start.line + 1,
      first.slice(0, range.start.character) + newText + last.slice(range.end.character),
    );
  }
  const text = lines.join("\n");
  editor.retype(file, text);
  return text;
};

describe("a suggested arrangement", () => {
  test("puts the parts without a place on the surface, and says what changes; the text stays", async () => {
    const { places, facts, boards: view } = await suggested();
    expect(editor.textOf(file)).toBe(plan);
    const named = new Map(view.parts.map((part) => [part.record, part]));
    expect(places.map(({ record }) => named.get(record)!.name)).toEqual(["plus", "Fridge"]);
    for (const { record, left, top } of places) {
      expect(named.get(record)!.place).toMatchObject({ left, top, overlaps: [] });
      expect(Number.isInteger(left) && Number.isInteger(top)).toBe(true);
    }
    expect(view.parts.find(({ name }) => name === "minus")!.place).toMatchObject({ left: 800, top: 300 });
    expect(facts[0]).toBe("Places for 2 parts; every other part keeps its own.");
    expect(facts[1]).toMatch(
      /^2 runs with both lengths: 9\.5 m of conductor today, [\d.]+ m suggested; copper [\d.]+ kg today, [\d.]+ kg suggested\.$/,
    );
    expect(facts).toContain("Lengths that the plan states stay in the text.");
    expect(facts.at(-1)).toContain("not proved to be the best");
  });

  test("is the same each time, and the plan is then as it was shown", async () => {
    const [first, second] = [await suggested(), await suggested()];
    expect(second).toEqual(first);
    const text = write(await take(first));
    expect(text.match(/\bat: \{ on: board, leftMm/g)).toHaveLength(4);
    expect(text.replaceAll(/\n {2}at: .*/g, "")).toBe(plan.replaceAll(/\n {2}at: .*/g, ""));
    const taken = await editor.ask<BoardsView>("loomwright/boards", file);
    expect(taken.parts.map(({ place }) => place)).toEqual(first.boards.parts.map(({ place }) => place));
    expect(taken.conductors.map(({ length }) => length)).toEqual(
      first.boards.conductors.map(({ length }) => length),
    );
    const count = (view: BoardsView) => view.parts.flatMap(({ findings }) => findings);
    expect(count(taken)).toEqual(count(first.boards));
  });

  test("names new findings, and counts those of today", async () => {
    const { facts, boards: view } = await suggested();
    const fact = facts.find((one) => one.startsWith("Findings today"))!;
    expect(fact).toMatch(/^Findings today: \d.* notes?\. With these places: \d.* notes?\.$/);
    const [today, then] = fact
      .split("With")
      .map((side) => [...side.matchAll(/\d+/g)].reduce((sum, [count]) => sum + Number(count), 0));
    const { newFindings, goneFindings } = view.tried!;
    expect(newFindings.some((finding) => finding.includes("stated"))).toBe(true);
    expect(Number(then) - Number(today)).toBe(newFindings.length - goneFindings.length);
  });

  test("is none if each brings an error or a warning that is new, and says which", async () => {
    const short = plan.replaceAll("lengthM: 1.5", "lengthM: 0.1");
    expect(await reason(short)).toMatch(
      /^No places on Main board: no arrangement was found that brings no new finding: each of the \d that were found brings at least one, the best of them "Stated length does not fit the way" \(cabin\.ts line 26\)\.$/,
    );
  });

  test("has the conductor of runs that had no length", async () => {
    const { facts } = await suggested(
      plan.replace(' lengthM: 1.5, gauge: "1/0", protect', ' gauge: "1/0", protect'),
    );
    expect(facts.join(" ")).toMatch(
      /1 run with both lengths: .* 1 run without a length today: [\d.]+ m of conductor with these places\./,
    );
  });

  test("says so if it takes no less copper than today's lengths", async () => {
    // As long as the ways, without the slack that the suggestion counts.
    const short = plan
      .replace("insulationC: 105", "insulationC: 105, slackPercent: 100")
      .replaceAll("lengthM: 1.5", "lengthM: 0.4")
      .replace("oneWayM: 4", "oneWayM: 0.5");
    const { facts } = await suggested(short);
    expect(facts).toContain(
      "That is no less copper than today: the suggestion only gives the parts a place.",
    );
    expect((await suggested()).facts.join(" ")).not.toContain("no less copper");
  });

  test("is in eighths of an inch on a surface in inches", async () => {
    const inches = plan
      .replace("size: { widthMm: 1_200, heightMm: 800 } });", "size: { widthIn: 48, heightIn: 32 } });")
      .replace(
        "path: [{ leftMm: 0, topMm: 500 }, { leftMm: 1_200, topMm: 500 }]",
        "path: [{ leftIn: 0, topIn: 20 }, { leftIn: 48, topIn: 20 }]",
      );
    const answer = await suggested(inches);
    for (const { left, top } of answer.places)
      expect([left, top].map((one) => Math.abs(8 * one - Math.round(8 * one)))).toEqual([
        expect.closeTo(0, 6),
        expect.closeTo(0, 6),
      ]);
    const text = write(await take(answer));
    expect(text).toMatch(
      /at: \{ on: board, leftIn: \d+(\.125|\.25|\.375|\.5|\.625|\.75|\.875)?, topIn: [\d.]+/,
    );
    const { parts } = await editor.ask<BoardsView>("loomwright/boards", file);
    expect(parts.filter(({ place }) => !place || place.overlaps.length > 0)).toEqual([]);
  });

  test("reports its progress in words", async () => {
    const said: string[] = [];
    const type = new ProgressType<{ readonly kind: string; readonly message?: string }>();
    const listening = editor.connection.onProgress(
      type,
      "places",
      ({ message }) => void said.push(message ?? ""),
    );
    await editor.request("loomwright/arrangement", { ...params(await boards()), workDoneToken: "places" });
    listening.dispose();
    expect(said).toContain("Looking for places: search 1 of 5.");
    expect(said).toContain("Looking for places: search 5 of 5.");
  });
});

describe("while it is looked for", () => {
  test("other requests are answered, and it can be cancelled", async () => {
    const source = new CancellationTokenSource();
    let isDone = false;
    const asked = editor.connection
      .sendRequest("loomwright/arrangement", params(await boards()), source.token)
      .finally(() => {
        isDone = true;
      });
    asked.catch(() => {});
    await boards();
    expect(isDone).toBe(false);
    source.cancel();
    await expect(asked).rejects.toMatchObject({ code: LSPErrorCodes.RequestCancelled });
  });

  test("an edit ends it, and is named as the reason", async () => {
    const begun = params(await boards());
    const asked = editor.request<ArrangementAnswer>("loomwright/arrangement", begun);
    editor.type(file, "loadW: 60", "loadW: 70");
    expect(await asked).toEqual({
      state: "none",
      message: "No arrangement is suggested: the text changed meanwhile.",
    });
    expect(await editor.request<ArrangementAnswer>("loomwright/arrangement", begun)).toMatchObject({
      state: "none",
      message: expect.stringContaining("the text changed meanwhile"),
    });
  });
});

describe("there is none, with the reason,", () => {
  test("if every part has a place", async () => {
    const placed = boardsPlan.replace(/, loadW: 60| {2}size: \{ widthMm: 100, heightMm: 60 \},\n/g, "");
    const all = `${placed}`.replace(
      "  protect: 15,\n",
      "  protect: 15,\n  size: { widthMm: 100, heightMm: 60 },\n  at: { on: board, leftMm: 10, topMm: 10 },\n",
    );
    expect(await reason(all)).toContain("Every part of the plan has a place, and keeps it");
  });

  test("if the parts state no size", async () => {
    const unsized = plan
      .replace("  size: { widthMm: 100, heightMm: 60 },\n", "")
      .replace("  size: { widthMm: 120, heightMm: 40 },\n", "");
    const said = await reason(unsized);
    expect(said).toContain("No part without a place can be put on Main board.");
    expect(said).toContain("the plan states no size (size) for");
  });

  test("if there is no room", async () => {
    const large = plan.replace("widthMm: 120, heightMm: 40", "widthMm: 2_000, heightMm: 400");
    expect(await reason(large)).toMatch(/^No places on Main board: .*plus is larger than the surface\.$/);
  });

  test("if a value is refused", async () => {
    editor.retype(file, plan.replace("loadW: 60", "loadW: -60"));
    editor.save(file);
    expect(await reason(editor.textOf(file))).toContain("while a value of the plan is refused");
  });

  test("if the text is half typed", async () => {
    await boards();
    expect(await reason(plan.replace("loadW: 60,", "loadW: 60, nam"))).toBe(
      "No arrangement is suggested: the text is half typed.",
    );
  });

  test("if the surface has no name at the parts", async () => {
    const unnamed = plan.replace(
      "const side = surface({",
      'surface({ name: "Lid", size: { widthMm: 900, heightMm: 900 } });\nconst side = surface({',
    );
    expect(await reason(unnamed, "Lid")).toContain("the surface has no name above it in the text");
  });
});

describe("a part whose place cannot be written", () => {
  test("is left out, with the reason", async () => {
    const looped = plan.replace(
      'circuit({\n  name: "Fridge"',
      'for (const name of ["Fridge", "Heater"]) circuit({\n  name',
    );
    const { places, facts } = await suggested(looped);
    expect(places).toHaveLength(1);
    expect(facts.filter((fact) => fact.startsWith("Left out: "))).toEqual([
      expect.stringMatching(/^Left out: Fridge and Heater\. Cannot be put here: it is set in a loop/),
    ]);
  });

  const imported = (surface: string, more = "") =>
    plan
      .replace(/^const board = .*\n/m, "")
      .replace(
        'from "loomwright";\n',
        `from "loomwright";\nimport { ${surface} } from "./boards.ts";\n${more ? 'import { spare } from "./lights.ts";\n' : ""}`,
      )
      .concat(more);
  const withSpare = imported(
    "board",
    "cable({ from: spare.stud, to: plus.stud, lengthM: 1, gauge: 4, protect: 60 });\n",
  );

  test("because its file is not open, is left out: the surface may be in any file", async () => {
    const { places, facts } = await suggested(withSpare);
    expect(places).toHaveLength(2);
    expect(facts.join(" ")).toMatch(
      /Left out: .*spare\. Their places are written in lights\.ts, which is not open: open it, and suggest again\./,
    );
  });

  test("because it is in another file, is left out: a step changes one file", async () => {
    editor.open("lights.ts");
    try {
      const { places, facts } = await suggested(withSpare);
      expect(places).toHaveLength(2);
      expect(facts.join(" ")).toMatch(
        /Left out, because one step changes one file: .*spare, in lights\.ts\. Suggest again/,
      );
    } finally {
      editor.close("lights.ts");
    }
  });

  const spreadFrom = (other: string) =>
    imported("place").replaceAll("on: board", "...place").replace("./boards.ts", other);

  test("because its file cannot have a name for the surface, is left out, with the way out", async () => {
    expect(await reason(spreadFrom("./hidden.ts"))).toContain(
      "Cannot be put here: Main board is described in hidden.ts, and cabin.ts has no name for it: export it there, and import it here.",
    );
  });

  test("is not left out where its file can import the name: the step writes the import too", async () => {
    const answer = await suggested(spreadFrom("./boards.ts"));
    expect(answer.places).toHaveLength(2);
    const text = write(await take(answer));
    expect(text).toContain('import { place, board } from "./boards.ts";');
    expect(text).toMatch(/name: "plus"[^;]*at: \{ on: board, leftMm: /);
  });
});
