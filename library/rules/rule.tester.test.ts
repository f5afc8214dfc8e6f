import { describe, expect, it, test } from "vitest";
import { judge } from "../judge.ts";
import { ampacity } from "./conductor/ampacity.ts";
import type { Change, ProposedFix } from "./finding.ts";
import {
  applyFix,
  faultsOfCase,
  faultsOfFix,
  faultsOfTable,
  goodCircuit,
  type RuleCase,
  recordsOf,
} from "./rule.tester.ts";

const passes: RuleCase = { name: "passes", circuits: [{}], finds: "nothing" };
const speaks: RuleCase = {
  name: "speaks",
  circuits: [{ gauge: 12 }],
  finds: [
    {
      on: "gauge",
      message: "12 AWG may carry 25 A",
      fixes: [{ title: "Use 8 AWG", gives: { gauge: 8 } }],
    },
  ],
};
/** The one expected finding of {@link speaks}, changed. */
const speaksOf = (change: object): RuleCase => ({
  ...speaks,
  finds: speaks.finds === "nothing" ? [] : speaks.finds.map((finding) => ({ ...finding, ...change })),
});

describe("a table of cases", () => {
  test.each<[string, RuleCase[], string[]]>([
    ["is sound with both sides of a limit", [passes, speaks], []],
    ["shows the rule speaking", [passes], ["no case makes conductor/ampacity speak"]],
    ["shows the rule silent", [speaks], ["no case lets conductor/ampacity pass"]],
    [
      "says nothing twice",
      [passes, { ...passes, name: "passes again" }, speaks],
      ['"passes again" repeats the plan of "passes"'],
    ],
    ["repeats no name", [passes, { ...speaks, name: "passes" }], ['two cases are called "passes"']],
    [
      "asserts something in every case",
      [passes, speaks, { name: "empty", circuits: [{ gauge: 10 }], finds: [] }],
      ['"empty" asserts nothing'],
    ],
    [
      "expects no empty message",
      [passes, speaksOf({ message: " " })],
      ['"speaks" expects an empty message, which every message starts with'],
    ],
  ])("%s", (_, cases, faults) => {
    expect(faultsOfTable(ampacity, cases)).toEqual(faults);
  });
});

describe("a case", () => {
  test("in order", () => {
    expect(faultsOfCase(ampacity, passes)).toEqual([]);
    expect(faultsOfCase(ampacity, speaks)).toEqual([]);
  });

  test.each<[string, RuleCase, string]>([
    ["misses a finding", { ...passes, finds: speaks.finds }, 'missed: "12 AWG may carry 25 A"'],
    ["did not expect a finding", { ...speaks, finds: "nothing" }, 'not expected: "12 AWG may carry 25 A'],
    ["expects another place", speaksOf({ on: "load" }), 'place is "gauge", expected "load"'],
    ["expects another circuit", speaksOf({ subject: "Pump" }), 'subject is "Heater", expected "Pump"'],
    ["expects another severity", speaksOf({ severity: "hint" }), 'severity is "error", expected "hint"'],
    ["expects another message", speaksOf({ message: "14 AWG" }), 'message is "12 AWG may carry'],
    ["expects another value", speaksOf({ values: { ampacityA: 24 } }), "value ampacityA is 25, expected 24"],
    ["expects no fix", speaksOf({ fixes: "no fix" }), 'fixes is ["Use 8 AWG (repair)"], expected []'],
    [
      "expects another kind of fix",
      speaksOf({ fixes: [{ title: "Use 8 AWG", kind: "suggestion", gives: {} }] }),
      'expected ["Use 8 AWG (suggestion)"]',
    ],
    [
      "expects another value after the fix",
      speaksOf({ fixes: [{ title: "Use 8 AWG", gives: { gauge: 6 } }] }),
      'gauge after "Use 8 AWG" is 8, expected 6',
    ],
    ["expects it accepted", speaksOf({ accepted: "why not" }), 'accepted is absent, expected "why not"'],
  ])("that %s", (_, one, fault) => {
    expect(faultsOfCase(ampacity, one).join("\n")).toContain(fault);
  });
});

describe("a case that is written as a plan", () => {
  const feed = "circuit({ name: 'Heater', load: 40, oneWayFt: 15, gauge: 4, protect: 50, insulationC: 75 });";
  const pump = (gauge: number) =>
    `const pump = circuit({ load: 40, oneWayFt: 15, gauge: ${gauge}, protect: 50, insulationC: 75 });`;
  const plan = `${feed}\n${pump(12)}`;
  const finds = [
    {
      record: "pump",
      on: "gauge",
      message: "12 AWG may carry 25 A",
      fixes: [{ title: "Use 8 AWG", gives: { gauge: 8, pump: { gauge: 8 }, Heater: { gauge: 4 } } }],
    },
  ];
  const speaksOnPump: RuleCase = { name: "speaks", plan, finds };

  test("finds its records by name", () => {
    expect(faultsOfCase(ampacity, speaksOnPump)).toEqual([]);
    expect(faultsOfCase(ampacity, { name: "passes", plan: feed, finds: "nothing" })).toEqual([]);
  });

  test.each<[string, RuleCase, string]>([
    [
      "expects it on another record",
      { ...speaksOnPump, finds: [{ ...finds[0]!, record: "Heater" }] },
      'record is "pump", expected "Heater"',
    ],
    ["expects another number", { ...speaksOnPump, finds: [{ ...finds[0]!, record: 0 }] }, "record is 1"],
    [
      "expects another value of a record it names",
      {
        ...speaksOnPump,
        finds: [{ ...finds[0]!, fixes: [{ title: "Use 8 AWG", gives: { pump: { gauge: 6 } } }] }],
      },
      'pump: gauge after "Use 8 AWG" is 8, expected 6',
    ],
    [
      "names a record that appears twice",
      { ...speaksOnPump, plan: `${plan}\n{ ${pump(4)} }` },
      '"pump" names 2 records of the plan',
    ],
    [
      "has a plan that stops",
      { ...speaksOnPump, plan: `${plan}\nbroken;` },
      'the plan stopped: {"rule":"plan/cannot-run","reason":"error-thrown","detail":"broken is not defined"}',
    ],
  ])("and %s", (_, one, fault) => {
    expect(faultsOfCase(ampacity, one).join("\n")).toContain(fault);
  });
});

describe("a fix", () => {
  const records = recordsOf({ circuits: [{ gauge: 12 }] });
  const before = judge(records, []).findings;
  const finding = before.find(({ rule }) => rule === "conductor/ampacity")!;
  const faultsAfter = (kind: ProposedFix["kind"], ...changes: Change[]) =>
    faultsOfFix({ title: "Change it", kind, changes }, finding, { records, problems: [], before });
  const setGauge = (value: number): Change => ({ do: "set", record: 0, path: ["gauge"], value });

  it("is a repair when the finding is gone and nothing new has come", () => {
    expect(faultsAfter("repair", setGauge(8))).toEqual([]);
  });

  it("is no repair when the finding is still there", () => {
    expect(faultsAfter("repair", setGauge(14))).toEqual(['the finding is still there after "Change it"']);
  });

  it("is no repair when another finding comes, of any rule", () => {
    expect(faultsAfter("repair", setGauge(8), { do: "remove", record: 0, path: ["protect"] })).toEqual([
      '"Change it" brings protection/missing (error) on ',
    ]);
  });

  it("may be a suggestion that leaves findings, but not one that nobody can judge", () => {
    expect(faultsAfter("suggestion", setGauge(14))).toEqual([]);
    expect(faultsAfter("suggestion", setGauge(5))).toEqual(['after "Change it" the plan cannot be judged']);
  });

  it("is applied to a copy: sets, renames, removes and adds", () => {
    const changes: Change[] = [
      setGauge(8),
      { do: "rename", record: 0, path: ["oneWayFt"], to: "oneWayM" },
      { do: "remove", record: 0, path: ["insulationC"] },
      { do: "set", record: 0, path: ["critical"], value: true },
    ];
    const [after] = applyFix(records, { title: "Change much", kind: "suggestion", changes });
    expect(after?.input).toEqual({
      name: "Heater",
      load: 40,
      oneWayM: 15,
      gauge: 8,
      protect: 50,
      critical: true,
    });
    expect(records[0]?.input).toEqual({ ...goodCircuit, gauge: 12 });
  });
});
