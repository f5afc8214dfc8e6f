import { describe, expect, test } from "vitest";
import { judge } from "../../judge.ts";
import { runExample } from "../../rules/page.tester.ts";
import { tableForPeople, tableForPrograms, textOf } from "../table-for-people.ts";
import { benchDocuments } from "./bench-documents.ts";
import { fittingInShort, fittingInWords, fittingToBuy, usualFittingAt } from "./fittings.ts";
import { numberWires } from "./wire-numbers.ts";
import { readWireNumbers } from "./wire-numbers-file.ts";
import { wiresOf } from "./wires.ts";

const awg14 = { parallel: 1, system: "awg", awg: 14 } as const;
const awg4 = { parallel: 1, system: "awg", awg: 4 } as const;
const mm6 = { parallel: 1, system: "metric", mm2: 6 } as const;
const mm10 = { parallel: 1, system: "metric", mm2: 10 } as const;

test.each([
  ["battery", awg4, "ring terminal"],
  ["fusePanel", awg14, "ring terminal"],
  ["solarController", awg4, "ferrule"],
  ["load", awg14, "receptacle"],
  ["load", mm6, "receptacle"],
  ["load", mm10, "ring terminal"],
  ["load", { ...awg14, parallel: 4 }, "receptacle"],
  ["part", awg14, undefined],
  ["solarArray", awg14, undefined],
] as const)("the usual fitting at %s", (kind, size, usual) => {
  expect(usualFittingAt(kind, size)).toBe(usual);
});

test.each([
  [
    { termination: "M8", usualFitting: "ferrule" },
    "ring terminal, stud M8",
    "M8 ring",
    "ring terminal, stud M8",
  ],
  [{ termination: "screw clamp", usualFitting: "ring terminal" }, "ferrule", "ferrule", "ferrule"],
  [
    { termination: undefined, usualFitting: "ring terminal" },
    ...["usual: ring terminal, stud not stated", "usual: ring", "ring terminal, stud not stated"],
  ],
  [
    { termination: undefined, usualFitting: "receptacle" },
    ...["usual: receptacle, 6.3 mm", "usual: receptacle", "receptacle, 6.3 mm"],
  ],
  [{ termination: undefined, usualFitting: undefined }, "not stated", null, undefined],
] as const)("%j in words, in short and in the shop", (end, inWords, inShort, toBuy) => {
  expect([fittingInWords(end), fittingInShort(end), fittingToBuy(end)]).toEqual([inWords, inShort, toBuy]);
});

describe("in the lists of a plan", () => {
  const den = (panel: string) => `
    build({ name: "den", insulationC: 105 });
    const bank = battery({ name: "bank", chemistry: "AGM", capacityAh: 80, termination: "M8" });
    const panel = fusePanel({ name: "panel", positions: 6${panel} });
    cable({ name: "feeder", from: bank.positive, to: panel.feed, lengthFt: 3, gauge: 6, protect: 60 });
    cable({ name: "panel return", from: panel.negative, to: bank.negative, lengthFt: 3, gauge: 6 });
    circuit({ name: "lamp", from: panel.branch, load: 2, oneWayFt: 10, gauge: 14, protect: 5 });
  `;
  const tables = (panel = "") => {
    const { records, problems } = runExample(den(panel));
    const plan = judge(records, problems);
    return benchDocuments(plan, numberWires(wiresOf(plan), readWireNumbers(undefined)));
  };
  const rows = (id: string, panel = "", shown = tableForPrograms) => {
    const { columns, rows } = shown(tables(panel).find((one) => one.id === id)!);
    return rows.map((row) =>
      Object.fromEntries(row.map((cell, index): [string, string] => [columns[index]!.id, textOf(cell)])),
    );
  };
  const notes = (id: string, panel = "") =>
    tables(panel)
      .find((one) => one.id === id)!
      .notes.join(" ");
  const fittings = (panel = "") =>
    rows("parts-list", panel)
      .filter(({ group }) => group === "fittings")
      .map(({ item, details, quantity }) => `${quantity} ${item}, ${details}`);

  test("a fitting that is only usual is marked in each list, with its standing below", () => {
    expect(fittings()).toEqual([
      "2 ring terminal, stud not stated, for 14 AWG, usual, not stated",
      "2 receptacle, 6.3 mm, for 14 AWG, usual, not stated",
      "2 ring terminal, stud M8, for 6 AWG, hole 8.4 mm (unconfirmed figure)",
      "2 ring terminal, stud not stated, for 6 AWG, usual, not stated",
    ]);
    expect(rows("labels").map(({ at, fitting }) => `${at}: ${fitting}`)).toEqual([
      "bank · positive: ring terminal, stud M8",
      "panel · feed: usual: ring terminal, stud not stated",
      "panel · negative: usual: ring terminal, stud not stated",
      "bank · negative: ring terminal, stud M8",
      "panel · branch: usual: ring terminal, stud not stated",
      "lamp · positive: usual: receptacle, 6.3 mm",
      "lamp · negative: usual: receptacle, 6.3 mm",
      "panel · negative: usual: ring terminal, stud not stated",
    ]);
    expect(
      rows("wire-schedule", "", tableForPeople).map(({ ringFrom, ringTo }) => [ringFrom, ringTo]),
    ).toEqual([
      ["M8 ring", "usual: ring"],
      ["usual: ring", "M8 ring"],
      ["usual: ring", "usual: receptacle"],
      ["usual: receptacle", "usual: ring"],
    ]);
    for (const id of ["wire-schedule", "parts-list", "labels"])
      expect(notes(id)).toContain("A usual fitting is common practice, no source");
  });

  test("the part's statement takes its place", () => {
    const stated = ', termination: "M6", branchTermination: "#8"';
    expect(fittings(stated)).toEqual([
      "2 ring terminal, stud #8, for 14 AWG, hole 4.3 mm (unconfirmed figure)",
      "2 receptacle, 6.3 mm, for 14 AWG, usual, not stated",
      "2 ring terminal, stud M8, for 6 AWG, hole 8.4 mm (unconfirmed figure)",
      "2 ring terminal, stud M6, for 6 AWG, hole 6.5 mm (unconfirmed figure)",
    ]);
  });
});
