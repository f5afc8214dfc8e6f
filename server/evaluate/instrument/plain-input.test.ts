import ts from "typescript";
import { describe, expect, test } from "vitest";
import { inputWith, writtenInput } from "./plain-input.ts";

function readOf(expression: string) {
  const source = ts.createSourceFile("plan.ts", expression, ts.ScriptTarget.ESNext, true);
  const statement = source.statements[0] as ts.ExpressionStatement;
  return writtenInput(statement.expression as ts.CallExpression);
}

describe("what the text alone tells", () => {
  test.each<[string, object]>([
    ["circuit({ load: 4, gauge: '1/0', critical: true })", { load: 4, gauge: "1/0", critical: true }],
    [
      "circuit({ 'load': -0x10, oneWayFt: +1_000.5, name: `lamp` })",
      { load: -16, oneWayFt: 1000.5, name: "lamp" },
    ],
    [
      "circuit({ protect: { ratingA: 50 }, accept: { 'a/b': '' } })",
      { protect: { ratingA: 50 }, accept: { "a/b": "" } },
    ],
    ["circuit({ gauge: (4 as never), mm2: null! } as const)", { gauge: 4, mm2: null }],
    ["circuit({ load: 1, load: 2 })", { load: 2 }],
    ["circuit({})", {}],
  ])("%s", (text, input) => {
    expect(readOf(text)).toEqual({ object: input, named: [] });
  });
});

describe("what the text tells but for what names mean", () => {
  test.each<[string, string[], object]>([
    [
      "cable({ from: a.positive, lengthM: 1, to: b.stud })",
      ["a from a.positive", "b to b.stud"],
      { from: 1, lengthM: 1, to: 2 },
    ],
    [
      "circuit({ to: inverter, from: (panel.feed) })",
      ["inverter to inverter", "panel from panel.feed"],
      { to: 1, from: 2 },
    ],
    ["circuit({ from: a.b.positive })", ["a from a.b.positive"], { from: 1 }],
    [
      "inverter({ continuousW: 500, at: { on: board, leftMm: 10, topMm: 20 }, keepCool: true })",
      ["board at.on board"],
      { continuousW: 500, at: { on: 1, leftMm: 10, topMm: 20 }, keepCool: true },
    ],
  ])("%s", (text, named, input) => {
    const read = readOf(text)!;
    expect(
      read.named.map(({ name, path, expression }) => `${name} ${path.join(".")} ${expression.getText()}`),
    ).toEqual(named);
    const whole = inputWith(read, [1, 2].slice(0, named.length))!;
    expect(whole).toEqual(input);
    expect(Object.keys(whole)).toEqual(Object.keys(input));
    expect(inputWith(read, [])).toBeUndefined();
  });
});

describe("what only the run can tell", () => {
  test.each([
    "circuit()",
    "circuit?.({ load: 1 })",
    "circuit({ load: 1 }, 2)",
    "circuit({ ...base })",
    "circuit({ load })",
    "circuit({ load: 1 + 2 })",
    "circuit({ load: 1e999 })",
    "circuit({ load: 1n })",
    "circuit({ from: a?.positive })",
    "circuit({ load: NaN })",
    "circuit({ load: undefined })",
    "circuit({ protect: house.fuse })",
    "circuit({ from: a.#positive })",
    "circuit({ from: f().positive })",
    "circuit({ protect: { ratingA: a.rating } })",
    "circuit({ from: a.positive, load: 1, load: 2 })",
    "circuit({ ['load']: 1 })",
    "circuit({ 1: 1 })",
    "circuit({ get load() { return 1; } })",
    "circuit({ __proto__: { load: 1 } })",
    "circuit({ list: [1] })",
    "circuit({ name: `lamp ${1}` })",
    "circuit({ a: { b: { c: { d: 1 } } } })",
    `circuit({ name: "${"x".repeat(501)}" })`,
    "circuit(...[{ load: 1 }])",
    "circuit(options)",
  ])("%s", (text) => {
    expect(readOf(text)).toBeUndefined();
  });
});

describe("the input of a record, when the plan ran again", () => {
  const terminal = (part: number) => ({ kind: "terminal", part, of: "battery", terminal: "positive" });
  const read = readOf("cable({ from: a.positive, lengthM: 1, to: b.stud })")!;

  test("is the same object where the same was given", () => {
    expect(inputWith(read, [terminal(1), terminal(2)])).toBe(inputWith(read, [terminal(1), terminal(2)]));
  });

  test.each<[string, unknown[]]>([
    ["another part", [terminal(1), terminal(3)]],
    ["a property less", [terminal(1), { kind: "terminal", part: 2, of: "battery" }]],
    ["nothing", [terminal(1), undefined]],
    ["something strange", [terminal(1), { $strange: "NaN" }]],
  ])("is another one for %s", (_, given) => {
    const before = inputWith(read, [terminal(1), terminal(2)]);
    expect(inputWith(read, given)).toEqual({ from: given[0], lengthM: 1, to: given[1] });
    expect(before).toEqual({ from: terminal(1), lengthM: 1, to: terminal(2) });
  });
});
