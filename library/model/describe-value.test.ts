import { expect, it } from "vitest";
import { describeValue } from "./describe-value.ts";

it.each<[unknown, string]>([
  ["12", '"12"'],
  ['say "4"', '"say \\"4\\""'],
  ["x".repeat(1_000), `"${"x".repeat(39)}…"`],
  ["a\u202eb\nc", '"ab c"'],
  [-4, "-4"],
  [1e308, "1e+308"],
  [Number.NaN, "NaN"],
  [true, "true"],
  [null, "null"],
  [[1, 2], "a list"],
  [{ ratingA: 50 }, "an object"],
  [{ $strange: "an object of class Date" }, "an object of class Date"],
  [{ $strange: `\u202e${"x".repeat(1_000)}` }, `${"x".repeat(59)}…`],
])("%j is written %s", (value, written) => {
  expect(describeValue(value)).toBe(written);
});
