import { expect, test } from "vitest";
import { worstDrop, worstDropInWords } from "./worst-drop.ts";

const drop = (dropPercent: number, dropLimitPercent: number, atLeast = false) => ({
  dropPercent,
  dropLimitPercent,
  atLeast,
});

test.each([
  ["5 % of 3 % is worse than 9 % of 10 %", [drop(9, 10), drop(5, 3)], 1],
  ["nearest to its limit, where none is over it", [drop(2.9, 3), drop(9, 10)], 0],
  ["furthest over its limit, where several are", [drop(11, 10), drop(4, 3), drop(12, 10)], 1],
  ["the first of equals", [drop(1, 10), drop(0.3, 3)], 0],
])("%s", (_what, drops, worst) => {
  expect(worstDrop(drops)).toBe(drops[worst]);
});

test("none where there are no circuits", () => {
  expect(worstDrop([])).toBeUndefined();
});

test.each([
  [drop(14.14, 10), "worst drop 14.1 %, limit 10 % (heater)"],
  [drop(14.14, 10, true), "worst drop at least 14.1 %, limit 10 % (heater)"],
  [drop(10.004, 10), "worst drop 10.004 %, limit 10 % (heater)"],
])("in words", (worst, words) => {
  expect(worstDropInWords(worst, "heater")).toBe(words);
});
