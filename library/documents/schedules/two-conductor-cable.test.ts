import { describe, expect, test } from "vitest";
import { ampacityOf } from "../../analysis/ampacity.ts";
import { judge } from "../../judge.ts";
import { runExample } from "../../rules/page.tester.ts";
import { conductorData } from "../diagram/conductor-words.ts";
import type { Table } from "../table.ts";
import { tableForPrograms, textOf } from "../table-for-people.ts";
import { benchDocuments } from "./bench-documents.ts";
import { numberWires } from "./wire-numbers.ts";
import { readWireNumbers } from "./wire-numbers-file.ts";
import { wiresOf } from "./wires.ts";

/** A lamp and a fan on two-conductor cable, a pump on single wires: all of 14 AWG. The functions are given: no import. */
const den = (spools = "") => `
  build({ name: "den", insulationC: 105, slackPercent: 0, endSlackIn: 0, ${spools} });
  const bank = battery({ name: "bank", chemistry: "AGM", capacityAh: 80 });
  const panel = fusePanel({ name: "panel", positions: 6 });
  cable({ name: "feeder", from: bank.positive, to: panel.feed, lengthFt: 3, gauge: 6, protect: 60 });
  cable({ name: "panel return", from: panel.negative, to: bank.negative, lengthFt: 3, gauge: 6 });
  circuit({ name: "lamp", from: panel.branch, load: 2, oneWayFt: 10, gauge: 14, sheathed: "flat duplex", protect: 5 });
  circuit({ name: "fan", from: panel.branch, load: 3, oneWayFt: 6, gauge: 14, sheathed: "flat duplex", returnColour: "yellow", protect: 5 });
  circuit({ name: "heater", from: panel.branch, load: 5, oneWayFt: 4, gauge: 14, sheathed: "round duplex", parallel: 2, protect: 10 });
  circuit({ name: "pump", from: panel.branch, load: 3, oneWayFt: 8, gauge: 14, sheathed: true, protect: 5 });
`;

function rowsIn(plan: string, id: string) {
  const table = tableForPrograms(tablesOf(plan).find((one) => one.id === id)!);
  return table.rows.map((row) =>
    Object.fromEntries(
      row.map((cell, index): [string, string] => [
        table.columns[index]!.id,
        textOf(cell).replaceAll("*", ""),
      ]),
    ),
  );
}

describe("in the lists", () => {
  test("one piece of a kind of its own for both conductors, apart from single wire of the same size", () => {
    const of14 = rowsIn(den(), "cut-list").filter(({ size }) => size?.includes("14 AWG"));
    expect(
      of14.map(({ size, colour, pieces, longestFtIn, wires }) => [size, colour, pieces, longestFtIn, wires]),
    ).toEqual([
      ["14 AWG", "black", "1", "8 ft", "10"],
      ["14 AWG", "red", "1", "8 ft", "9"],
      ["2 × 14 AWG, flat duplex", "red/black", "1", "10 ft", "3 + 4"],
      ["2 × 14 AWG, flat duplex", "red/yellow", "1", "6 ft", "5 + 6"],
      ["2 × 14 AWG, round duplex", "red/black", "2", "4 ft", "7 + 8 (2 pieces)"],
    ]);
  });

  test("spools of it are bought apart; a stated spool of single wire is not used for it", () => {
    const single = "{ gauge: 14, lengthFt: 50, price: 20 }";
    const duplex = '{ gauge: 14, lengthFt: 30, sheathed: "flat duplex", price: 35 }';
    const spools = rowsIn(den(`spools: [${single}, ${duplex}]`), "spools").filter(({ size }) =>
      size?.includes("14"),
    );
    expect(spools.map(({ size, colour, spool, cuts }) => [size, colour, spool, cuts])).toEqual([
      ["14 AWG", "black", "50 ft", "10: 8 ft"],
      ["14 AWG", "red", "50 ft", "9: 8 ft"],
      ["2 × 14 AWG, flat duplex", "red/black", "30 ft", "3 + 4: 10 ft"],
      ["2 × 14 AWG, flat duplex", "red/yellow", "30 ft", "5 + 6: 6 ft"],
      ["2 × 14 AWG, round duplex", "red/black", "25 ft", "7 + 8: 4 ft, 7 + 8: 4 ft"],
    ]);
  });

  test("a metric one is 2 × 2.5 mm²", () => {
    const metric = den().replaceAll("gauge: 14", "mm2: 2.5");
    expect(rowsIn(metric, "cut-list").map(({ size }) => size)).toContain("2 × 2.5 mm², flat duplex");
  });

  test("the schedule has a row for each conductor, which names the other one", () => {
    const rows = rowsIn(den(), "wire-schedule");
    const cables = rows.map(({ name, side, size, cable }) => `${name} ${side}: ${size}, ${cable}`);
    expect(cables).toContain("lamp positive: 14 AWG, flat duplex with 4");
    expect(cables).toContain("lamp return: 14 AWG, flat duplex with 3");
    expect(cables).toContain("pump positive: 14 AWG, ");
  });

  test("both conductors have their labels at both ends", () => {
    const ofLamp = rowsIn(den(), "labels").filter(({ name }) => name?.startsWith("lamp"));
    expect(ofLamp.map(({ number, at }) => `${number} at ${at}`)).toEqual([
      "3 at panel · branch",
      "3 at lamp · positive",
      "4 at lamp · negative",
      "4 at panel · negative",
    ]);
    expect(noteOf(den(), "labels")).toContain("where they leave the sheath");
  });

  test("a plan without any has neither the column nor the notes", () => {
    const plain = den().replaceAll(/sheathed: "\w+ duplex"/g, "sheathed: true");
    expect(Object.keys(rowsIn(plain, "wire-schedule")[0]!)).not.toContain("cable");
    for (const id of ["wire-schedule", "cut-list", "labels"])
      expect(noteOf(plain, id)).not.toContain("two-conductor");
  });
});

describe("in the checks", () => {
  const [one] = judged(den()).circuits.filter(({ circuit }) => circuit.name === "lamp");

  // 33 CFR 183.425, Table 5, note 2 begins with three conductors, so each of two in one sheath carries as much as alone: 14 AWG of
  // 105 °C insulation 35 A. NFPA 70, 310.15(C)(1) begins with four.
  test("it carries as two conductors in one sheath, and is sheathed", () => {
    expect(one!.circuit).toMatchObject({ sheathed: true, duplex: "flat duplex", bundledWith: 1 });
    expect(ampacityOf(one!.circuit)).toMatchObject({ ampacityA: 35, factors: [] });
    expect(conductorData(one!.circuit, one!.circuit.positiveM, undefined)).toBe(
      "14 AWG, flat duplex · 10 ft",
    );
  });

  test.each([
    [
      "positiveFt: 10, negativeFt: 4",
      'sheathed: "flat duplex" cannot be one cable, because its conductors have two lengths',
    ],
    ["oneWayFt: 10, bundledWith: 0", "bundledWith: 0 leaves out the other conductor of its own cable"],
  ])("%s contradicts it", (given, said) => {
    const { model } = judged(
      `circuit({ name: "lamp", load: 2, ${given}, gauge: 14, sheathed: "flat duplex", protect: 5 });`,
    );
    expect(
      model.invalid.map(({ path, given: value, wrong }) => `${path.join(".")}: ${value} ${wrong}`),
    ).toEqual([said]);
  });

  test("a cable is one conductor, and cannot be one", () => {
    const wrong = den().replace('name: "feeder",', 'name: "feeder", sheathed: "flat duplex",');
    expect(judged(wrong).model.invalid).toMatchObject([{ path: ["sheathed"], given: '"flat duplex"' }]);
  });
});

function judged(plan: string) {
  const { records, problems } = runExample(plan);
  return judge(records, problems);
}

function tablesOf(plan: string): readonly Table[] {
  const judgement = judged(plan);
  return benchDocuments(judgement, numberWires(wiresOf(judgement), readWireNumbers(undefined)));
}

function noteOf(plan: string, id: string): string {
  return tablesOf(plan)
    .find((one) => one.id === id)!
    .notes.join(" ");
}
