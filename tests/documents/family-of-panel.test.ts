import { describe, expect, test } from "vitest";
import { planDifference } from "../../library/documents/difference/plan-difference.ts";
import { benchDocuments } from "../../library/documents/schedules/bench-documents.ts";
import { numberWires } from "../../library/documents/schedules/wire-numbers.ts";
import { readWireNumbers } from "../../library/documents/schedules/wire-numbers-file.ts";
import { wiresOf } from "../../library/documents/schedules/wires.ts";
import { tableForPrograms, textOf } from "../../library/documents/table-for-people.ts";
import { judge } from "../../library/judge.ts";
import { runExample } from "../../library/rules/page.tester.ts";

/** The functions are given: no import. */
const den = (family: string) => `
  build({ name: "den", insulationC: 105 });
  const bank = battery({ name: "bank", chemistry: "AGM", capacityAh: 80 });
  const panel = fusePanel({ name: "fuse box", positions: 6${family} });
  cable({ name: "feeder", from: bank.positive, to: panel.feed, lengthFt: 3, gauge: 6, protect: 60 });
  cable({ name: "panel return", from: panel.negative, to: bank.negative, lengthFt: 3, gauge: 6 });
  circuit({ name: "lamp", from: panel.branch, load: 2, oneWayFt: 10, gauge: 14, protect: 5 });
  circuit({ name: "fan", from: panel.branch, load: 3, oneWayFt: 6, gauge: 14, protect: { ratingA: 7.5, family: "ISO 8820-3 Type F" } });
  const holder = fuseHolder({ name: "holder", on: panel.branch, ratingA: 10 });
  circuit({ name: "pump", from: holder.load, returnTo: panel.negative, load: 4, oneWayFt: 6, gauge: 14 });
`;
const typeC = ', branchFamily: "ISO 8820-3 Type C"';
const judged = (family: string) => {
  const { records, problems } = runExample(den(family));
  return judge(records, problems);
};

test("a fuse without a family takes that of its panel; its own wins; a device elsewhere has neither", () => {
  const { network } = judged(typeC).network!;
  const families = network.devices.map(({ family, familyStatedAt }) => [family, familyStatedAt]);
  expect(families).toEqual([
    [undefined, undefined],
    ["ISO 8820-3 Type C", "fuse box"],
    ["ISO 8820-3 Type F", undefined],
    ["ISO 8820-3 Type C", "fuse box"],
  ]);
  expect(judged("").network!.network.devices.map(({ family }) => family)).toEqual([
    ...[undefined, undefined, "ISO 8820-3 Type F", undefined],
  ]);
});

test("it is judged by that family: a rating that it is not made in is reported", () => {
  const rules = (family: string) => judged(family).findings.map(({ rule, subject }) => `${rule} ${subject}`);
  // ISO 8820-4 Type A is made from 20 A on (tests/published/fuses.json, from memory), so there is no 5 A one.
  const typeA = ', branchFamily: "ISO 8820-4 Type A"';
  expect(rules(typeA)).toContain("protection/standard-rating lamp");
  expect(rules(typeC)).not.toContain("protection/standard-rating lamp");
});

describe("lists", () => {
  const plan = judged(typeC);
  const rows = (id: string) => {
    const all = benchDocuments(plan, numberWires(wiresOf(plan), readWireNumbers(undefined)));
    const { columns, rows } = tableForPrograms(all.find((one) => one.id === id)!);
    return rows.map((row) =>
      Object.fromEntries(row.map((cell, index): [string, string] => [columns[index]!.id, textOf(cell)])),
    );
  };

  test("the fuse map and the wire schedule show it as stated at the panel", () => {
    const families = Object.fromEntries(rows("fuse-map").map(({ circuit, family }) => [circuit, family]));
    expect(families).toMatchObject({
      lamp: "ISO 8820-3 Type C, as stated at fuse box",
      fan: "ISO 8820-3 Type F",
      pump: "ISO 8820-3 Type C, as stated at fuse box",
    });
    const protection = rows("wire-schedule").map(({ protectionFrom }) => protectionFrom);
    expect(protection).toContain("5 A ISO 8820-3 Type C, as stated at fuse box");
    expect(protection).toContain("7.5 A ISO 8820-3 Type F");
  });

  test("the parts list buys it by its family", () => {
    const fuses = rows("parts-list").filter(({ group, item }) => group === "protection" && item === "fuse");
    expect(fuses.map(({ details, standard }) => `${details}: ${standard}`)).toContain(
      "5 A, blade, medium: ISO 8820-3 Type C",
    );
  });
});

test("another family of the panel is one change, at the panel", () => {
  const changed = planDifference(judged(typeC), judged(', branchFamily: "ISO 8820-3 Type F"'));
  expect(JSON.stringify(changed)).toContain("family of its fuses");
  expect(JSON.stringify(changed)).not.toContain("protection, family");
});
