import { expect, test } from "vitest";
import { linearScale, roundSteps, stacked } from "./chart-scale.ts";

test.each([
  [0, 4, [0]],
  [1, 4, [0, 0.5, 1]],
  [3, 4, [0, 1, 2, 3]],
  [950, 5, [0, 200, 400, 600, 800, 1000]],
  [1000, 5, [0, 200, 400, 600, 800, 1000]],
  [1001, 5, [0, 500, 1000, 1500]],
  [0.003, 3, [0, 0.001, 0.002, 0.003]],
])("round steps up to %d", (most, count, steps) => {
  expect(roundSteps(most, count)).toEqual(steps);
});

test("a scale keeps proportions, and a greatest value of nothing is the beginning", () => {
  expect([0, 5, 10].map(linearScale(10, 100, 0))).toEqual([100, 50, 0]);
  expect(linearScale(0, 100, 0)(0)).toBe(100);
});

test("series lie on one another", () => {
  expect(
    stacked([
      [1, 2],
      [3, 0],
    ]),
  ).toEqual([
    { lower: [0, 0], upper: [1, 2] },
    { lower: [1, 2], upper: [4, 2] },
  ]);
});
