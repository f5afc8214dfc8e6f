import ts from "typescript";
import { describe, expect, test } from "vitest";
import { writtenInput } from "./written-input.ts";

function inputOf(expression: string): object | undefined {
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
    expect(inputOf(text)).toEqual(input);
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
    "circuit({ load: NaN })",
    "circuit({ load: 1e999 })",
    "circuit({ load: 1n })",
    "circuit({ load: undefined })",
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
    expect(inputOf(text)).toBeUndefined();
  });
});
