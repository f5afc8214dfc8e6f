import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import {
  exceeds,
  formatDistinct,
  formatDistinctWithUnit,
  formatExact,
  formatRounded,
  timesApart,
  withUnit,
} from "./format-number.ts";

describe("figure", () => {
  test.each([
    [2.6789, "2.68"],
    [2.675, "2.68"],
    [0.012349, "0.0123"],
    [40, "40"],
    [39.96, "40"],
    [0, "0"],
    [-0, "0"],
    [-4.5678, "-4.57"],
    [999.4, "999"],
    [999.6, "1,000"],
    [12345, "12,300"],
    [1e21, "1,000,000,000,000,000,000,000"],
    [0.0000001234, "0.000000123"],
  ])("%d is written %s", (value, text) => {
    expect(formatRounded(value)).toBe(text);
  });

  it("never uses an exponent", () => {
    fc.assert(
      fc.property(
        fc.double({ noNaN: true, noDefaultInfinity: true }),
        (value) => !/e/i.test(formatRounded(value)),
      ),
    );
  });

  it("puts a space before every unit", () => {
    expect(withUnit(2.6789, "V")).toBe("2.68 V");
    expect(withUnit(3, "%")).toBe("3 %");
  });
});

test.each([
  [4567, "4,567"],
  [1234567.5, "1,234,567.5"],
  [100 / 3, "33.333"],
  [0.35, "0.35"],
  [1 / 3, "0.333"],
  [0, "0"],
])("%d as it was given: %s", (value, text) => {
  expect(formatExact(value)).toBe(text);
});

describe("tellApart", () => {
  test.each([
    [10.02, 10, "10.02", "10"],
    [10.000001, 10, "10.000001", "10"],
    [12, 10, "12", "10"],
    [10, 10, "10", "10"],
    [4, 3.9999, "4", "3.9999"],
    // 0.58 · 125 differs from 72.5 only in the last bits, if at all: they count as equal.
    [0.1 + 0.2, 0.3, "0.3", "0.3"],
  ])("%d and %d are written %s and %s", (first, second, one, other) => {
    expect(formatDistinct(first, second)).toEqual([one, other]);
  });

  it("gives different texts to any two numbers of which one exceeds the other", () => {
    const ordinary = fc.double({ min: 1e-6, max: 1e6, noNaN: true });
    fc.assert(
      fc.property(ordinary, ordinary, (first, second) => {
        const [one, other] = formatDistinct(first, second);
        return exceeds(first, second) ? one !== other : true;
      }),
    );
  });

  it("carries the unit", () => {
    expect(formatDistinctWithUnit(10.02, 10, "%")).toEqual(["10.02 %", "10 %"]);
  });
});

describe("exceeds", () => {
  test.each([
    [40, 40, false],
    [40.0001, 40, true],
    [39.9, 40, false],
    [0.1 + 0.2, 0.3, false],
  ])("%d above %d: %s", (value, limit, answer) => {
    expect(exceeds(value, limit)).toBe(answer);
  });
});

describe("timesApart", () => {
  it.each([
    [0.00247, 0.0018, ["2.47 ms", "1.8 ms"]],
    [0.9996, 0.5, ["1,000 ms", "500 ms"]],
    [5, 4.984, ["5 s", "4.98 s"]],
    [1, 0.00247, ["1 s", "0.00247 s"]],
  ])("%s s and %s s", (first, second, texts) => {
    expect(timesApart(first, second)).toEqual(texts);
  });
});
