import { parse } from "csv-parse/sync";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Cell, Table } from "./table.ts";
import { tableCsv } from "./table-csv.ts";

describe("read by an independent parser", () => {
  test("columns by their ids, numbers unrounded, nothing as nothing", () => {
    const csv = tableCsv(table([["a", { value: 2.6789, text: "2.68" }, null]]));
    expect(parsed(csv)).toEqual([
      ["c0", "c1", "c2"],
      ["a", "2.6789", ""],
    ]);
  });

  test("records end in CRLF, the last one too (RFC 4180, 2.1 and 2.2)", () => {
    const csv = tableCsv(table([["a"], ["b"]]));
    expect(csv).toBe("\uFEFFc0\r\na\r\nb\r\n");
  });

  test.each([
    ["a comma", "bus, left", '"bus, left"'],
    ["a quote", 'the "big" one', '"the ""big"" one"'],
    ["a line break", "one\r\ntwo", '"one\r\ntwo"'],
    ["a separator of other countries", "one;two", '"one;two"'],
    ["spaces at its ends", " lamp ", '" lamp "'],
  ])("%s is quoted (RFC 4180, 2.5 to 2.7)", (_, text, written) => {
    expect(tableCsv(table([[text]]))).toBe(`\uFEFFc0\r\n${written}\r\n`);
    expect(parsed(tableCsv(table([[text]])))[1]).toEqual([text]);
  });

  test("any text comes back as it was, but for the apostrophe before what could be a formula", () => {
    const text = fc.oneof(fc.string({ unit: "binary" }), fc.stringMatching(/^[\s"',;=+\-@\r\n]{0,6}[a-z]?$/));
    const rows = fc
      .integer({ min: 1, max: 4 })
      .chain((columns) =>
        fc.array(fc.array(text, { minLength: columns, maxLength: columns }), { minLength: 1, maxLength: 5 }),
      );
    fc.assert(
      fc.property(rows, (cells) => {
        const [, ...back] = parsed(tableCsv(table(cells)));
        const withoutMark = back.map((row, at) =>
          row.map((cell, index) => (cell === `'${cells[at]![index]}` ? cell.slice(1) : cell)),
        );
        expect(withoutMark).toEqual(cells);
        for (const cell of back.flat()) expect(cell).not.toMatch(dangerous);
      }),
    );
  });

  test("any number comes back as that number, to ten figures", () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e9, max: 1e9 }), (value) => {
        fc.pre(value === 0 || Math.abs(value) > 1e-9);
        const [, [cell]] = parsed(tableCsv(table([[{ value, text: "as people read it" }]]))) as [
          string[],
          string[],
        ];
        expect(cell).toMatch(/^-?\d+(\.\d+)?$/);
        expect(Math.abs(Number(cell) - value)).toBeLessThanOrEqual(5.1e-10 * Math.abs(value));
      }),
    );
  });
});

describe("what a spreadsheet could take for a formula", () => {
  test.each([
    "=1+1",
    "=cmd|' /C calc'!A0",
    '=HYPERLINK("http://example.com","click")',
    "+1+1",
    "-1+1",
    "@SUM(A1)",
    "\t=1+1",
    "\r=1+1",
    "\n=1+1",
    "   =1+1",
    "\u00a0=1+1",
    "\u200b=1+1",
    "\u0000=1+1",
    "\uFEFF=1+1",
    "＝1+1",
    "＋1",
    "－1",
    "＠SUM(A1)",
    "−1",
    "|calc",
    "%0A=1",
    '"=1+1"'.slice(1),
    "-",
  ])("%j is text", (text) => {
    expect(parsed(tableCsv(table([[text]])))[1]).toEqual([`'${text}`]);
  });

  test.each(["lamp", "2 × 35 mm²", "a=b", "12*", "Ω", "'quoted'", "1-2", "house bank · positive"])(
    "%j stays as it is",
    (text) => {
      expect(parsed(tableCsv(table([[text]])))[1]).toEqual([text]);
    },
  );

  test("a number below nothing stays a number", () => {
    expect(parsed(tableCsv(table([[{ value: -0.5, text: "-0.5" }]])))[1]).toEqual(["-0.5"]);
  });

  test.each([";", "\t"])("a field is not taken apart where %j separates", (delimiter) => {
    const text = `lamp${delimiter}=1+1`;
    expect(parsed(tableCsv(table([[text]])), delimiter)[1]).toEqual([text]);
  });
});

const dangerous = /^(?:[\t\r\n]|[\s\p{Cf}\p{Cc}]*[=+\-@＝＋－＠−|%])/u;

function table(rows: readonly (readonly Cell[])[]): Table {
  const columns = rows[0]!.map((_, index) => ({
    id: `c${index}`,
    title: `Column ${index}`,
    align: "start" as const,
  }));
  return { id: "some-table", title: "Some table", notes: ["A note."], columns, rows };
}

function parsed(csv: string, delimiter = ","): string[][] {
  return parse(csv, { bom: true, delimiter });
}
