import { expect, test } from "vitest";
import { judge } from "../../judge.ts";
import { runExample } from "../../rules/page.tester.ts";
import { tableForPrograms, textOf } from "../table-for-people.ts";
import { benchDocuments } from "./bench-documents.ts";
import { numberWires } from "./wire-numbers.ts";
import { readWireNumbers } from "./wire-numbers-file.ts";
import { wiresOf } from "./wires.ts";

const boardWith = (channel: string) => `
  const board = surface({ size: { widthMm: 2_000, heightMm: 800 } });
  ${channel}
  const bank = battery({ name: "bank", chemistry: "AGM", capacityAh: 80, at: { on: board, leftMm: 100, topMm: 300 } });
  circuit({ name: "lamp", from: bank.positive, returnTo: bank.negative, load: 2, oneWayM: 2, gauge: 14, protect: 5,
    at: { on: board, leftMm: 1_900, topMm: 300 } });`;

const alongTheBoard = (more: string) =>
  `channel({ name: "beam", on: board, path: [{ leftMm: 100, topMm: 400 }, { leftMm: 1_900, topMm: 400 }]${more} });`;

test.each([
  ["trunking holds its conductors", alongTheBoard(""), []],
  [
    "a bundle of 1.8 m, with one at each end",
    alongTheBoard(', way: "bundle"'),
    [["support", "for conductors, at least every 450 mm (ISO 10133:2012, 7.3)", "5", "beam"]],
  ],
  [
    "a bundle with nearer supports",
    alongTheBoard(', way: "bundle", supportsEveryMm: 300'),
    [["support", "for conductors, every 300 mm as stated", "7", "beam"]],
  ],
  [
    "both conductors along one path of 1.8 m in the open",
    "",
    [["support", "for conductors, at least every 450 mm (ISO 10133:2012, 7.3)", "3", "lamp"]],
  ],
])("supports to buy: %s", (_, channel, expected) => {
  const plan = judge(runExample(boardWith(channel)).records, []);
  const numbered = numberWires(wiresOf(plan), readWireNumbers(undefined));
  const parts = tableForPrograms(benchDocuments(plan, numbered).find(({ id }) => id === "parts-list")!);
  const [item, details, quantity, usedAs] = ["item", "details", "quantity", "usedAs"].map((id) =>
    parts.columns.findIndex((column) => column.id === id),
  ) as [number, number, number, number];
  const rows = parts.rows
    .filter((row) => textOf(row[item]!) === "support")
    .map((row) => [item, details, quantity, usedAs].map((column) => textOf(row[column]!)));
  expect(rows).toEqual(expected);
});
