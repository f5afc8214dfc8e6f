import { describe, expect, test } from "vitest";
import type { Cell, Table } from "../../library/documents/table.ts";
import { paintFor } from "./terminal.ts";
import { textTable } from "./text-table.ts";

const plain = paintFor({ colour: false, progress: false });

test("columns aligned, empty ones left out, those for a pen underlined", () => {
  expect(
    textTable(
      {
        ...table([
          ["lamp", { value: 2.5, text: "2.5" }, null, null],
          ["long lamp", { value: 10, text: "10" }, null, null],
        ]),
        columns: [
          { id: "name", title: "Name", align: "start" },
          { id: "loadA", title: "Load, A", align: "end" },
          { id: "empty", title: "Empty", align: "start" },
          { id: "seen", title: "Seen", align: "start", toFillIn: true },
        ],
        notes: ["A note."],
      },
      plain,
    ),
  ).toBe(`Some table
  Name       Load, A  Seen
  lamp           2.5  ________
  long lamp       10  ________
  A note.
`);
});

test("one without rows says so", () => {
  expect(textTable({ ...table([["x"]]), rows: [] }, plain)).toBe("Some table\n  no entries\n");
});

test("a long cell goes on below, broken behind a comma", () => {
  const text = textTable(
    table([["1", "house bank to main disconnect, and from there to the bus bar"]]),
    plain,
  );
  expect(text).toContain(
    "\n  1         house bank to main disconnect,\n            and from there to the bus bar\n",
  );
});

describe("a table that is wider than a screen", () => {
  const wide = table(
    [1, 2].map((row) => [
      `${row}`,
      "same name",
      ...Array.from({ length: 6 }, (_, index) => "x".repeat(28 + index)),
    ]),
  );
  const lines = textTable(wide, plain).split("\n");
  test("is set in parts, each beginning with what tells its rows apart", () => {
    expect(lines.filter((line) => line.startsWith("  1 ")).length).toBeGreaterThan(1);
    for (const line of lines) expect(line.length).toBeLessThanOrEqual(142);
  });
  test("and shows every column once", () => {
    for (let index = 2; index < 8; index++)
      expect(lines.filter((line) => new RegExp(`\\bColumn ${index}\\b`).test(line))).toHaveLength(1);
  });
});

test("letters of East Asia take two places, marks none", () => {
  const lines = textTable(
    table([
      ["灯", "a"],
      ["e\u0301", "b"],
      ["lamp", "c"],
    ]),
    plain,
  ).split("\n");
  expect(lines.slice(2, 5)).toEqual(["  灯        a", "  e\u0301         b", "  lamp      c"]);
});

test("what would repaint the screen is shown as what it is", () => {
  const text = textTable(
    { ...table([["\u001b[31mred\u202e"]]), notes: ["\u001b[2J"], title: "\u0007" },
    plain,
  );
  for (const mark of ["\u001b", "\u202e", "\u0007"]) expect(text).not.toContain(mark);
  expect(text).toContain("⟨U+001B⟩[31mred⟨U+202E⟩");
});

function table(rows: readonly (readonly Cell[])[]): Table {
  const columns = rows[0]!.map((_, index) => ({
    id: `c${index}`,
    title: `Column ${index}`,
    align: "start" as const,
  }));
  return { id: "some-table", title: "Some table", notes: [], columns, rows };
}
