import { expect, test } from "vitest";
import type { Layout } from "./placement/layout.ts";
import { boardUnitOf, lengthUnitOf } from "./unit-of-plan.ts";

const run = (input: object, word: "cable" | "circuit" = "cable") => ({ word, input, fallbackName: "" });
const boards = (...units: readonly ("in" | "mm")[]) =>
  ({ surfaces: units.map((writtenIn) => ({ writtenIn })) }) as unknown as Layout;

test.each([
  ["nothing stated, no board", [], undefined, "m"],
  ["stated in feet", [run({ lengthFt: 3 })], undefined, "ft"],
  [
    "as many in metres",
    [run({ lengthFt: 3 }), run({ positiveM: 1, negativeM: 2 }, "circuit")],
    undefined,
    "ft",
  ],
  ["most in metres, boards in inches", [run({ oneWayM: 3 }, "circuit")], boards("in"), "m"],
  ["most in feet, boards in millimetres", [run({ oneWayFt: 3 }, "circuit")], boards("mm"), "ft"],
  ["none stated, boards in inches", [run({ gauge: 4 })], boards("in", "in"), "ft"],
  ["none stated, boards in both", [run({})], boards("in", "mm"), "m"],
  ["channels alone", [run({})], boards(), "m"],
  ["no object", [{ word: "cable", input: null, fallbackName: "" } as const], boards("in"), "ft"],
] as const)("%s", (_, records, layout, unit) => {
  expect(lengthUnitOf(records, layout)).toBe(unit);
});

test("boards are in inches if all of them are", () => {
  expect([boards("in"), boards("in", "mm"), boards("mm"), boards()].map(boardUnitOf)).toEqual([
    ...["in", "mm", "mm", "mm"],
  ]);
});
