import { describe, expect, test } from "vitest";
import type { CircuitRun } from "../model/run.ts";
import { analyseCircuit } from "./analyse-circuit.ts";
import {
  isMadeRating,
  madeRatings,
  nearestRatingAbove,
  nearestRatingBelow,
  smallestRatingBetween,
} from "./made-ratings.ts";
import { protectionDistanceLimit } from "./protection-distance.ts";
import { sampleCircuit } from "./sample-circuit.tester.ts";

const range = (change: Partial<CircuitRun>) => analyseCircuit(sampleCircuit(change)).protection;

describe("ratings between load and conductor", () => {
  test.each([
    ["continuous load", {}, { minA: 40, maxA: 125, aimA: 50, bestRatingA: 50 }],
    ["not continuous", { continuous: false }, { minA: 40, maxA: 125, aimA: 40, bestRatingA: 40 }],
    ["aim just above a rating", { loadA: 40.01 }, { bestRatingA: 60 }],
    // 10 AWG, 75 °C: 40 A.
    ["aim at the conductor", { loadA: 32, conductor: awg(10) }, { aimA: 40, maxA: 40, bestRatingA: 40 }],
    ["aim above the conductor", { loadA: 32.1, conductor: awg(10) }, { bestRatingA: undefined }],
    // 18 AWG in an engine space: 7.5 A.
    [
      "rating at a derated ampacity",
      { loadA: 6, conductor: awg(18), engineSpace: true },
      { aimA: 7.5, maxA: 7.5, bestRatingA: 7.5 },
    ],
    ["no dust in the aim", { loadA: 5.6 }, { aimA: 7, bestRatingA: 7.5 }],
    // 151.2 W at 12.6 V, as a binary fraction.
    [
      "no dust in the load",
      { loadA: 12.000000000000002, continuous: false },
      { minA: 12, aimA: 12, bestRatingA: 15 },
    ],
    ["place too hot", { ambientC: 80, ambientStated: true }, { maxA: undefined, bestRatingA: undefined }],
    [
      "of the stated family",
      { protection: { ratingA: 60, writtenAs: "object", family: "ISO 8820-5 Type SF 51" } },
      { bestRatingA: 60 },
    ],
    [
      "none of the stated family",
      { protection: { ratingA: 30, writtenAs: "object", family: "ISO 8820-3 Type F" } },
      { bestRatingA: undefined },
    ],
  ] as const)("%s", (_, change, expected) => {
    expect(range(change as Partial<CircuitRun>)).toMatchObject(expected);
  });
});

describe("made ratings", () => {
  test("all families together: each rating once, from the least to the greatest", () => {
    const ratings = madeRatings();
    expect(ratings).toEqual([...new Set(ratings)].sort((one, other) => one - other));
    expect(ratings).toContain(7.5);
    expect(ratings).toContain(110);
  });

  test.each([
    [29.9, 25, 30],
    [30, 30, 30],
    [30.1, 30, 35],
    [0.5, undefined, 1],
    [40.1, 40, undefined],
  ])("nearest to %d A of ISO 8820-3 Type C", (currentA, below, above) => {
    expect(nearestRatingBelow(currentA, "ISO 8820-3 Type C")).toBe(below);
    expect(nearestRatingAbove(currentA, "ISO 8820-3 Type C")).toBe(above);
  });

  test.each([
    [31, 34.9, undefined],
    [31, 35, 35],
    [30, 35, 30],
    [36, 39, undefined],
  ])("the smallest of Type C from %d to %d A", (fromA, toA, ratingA) => {
    expect(smallestRatingBetween(fromA, toA, "ISO 8820-3 Type C")).toBe(ratingA);
  });

  test.each([
    [7.5, undefined, true],
    [7, undefined, false],
    [35, "ISO 8820-3 Type C", true],
    [35, "ISO 8820-3 Type F", false],
    [5, "circuit breaker", true],
    [601, "circuit breaker", false],
  ] as const)("%d A of %s", (ratingA, family, made) => {
    expect(isMadeRating(ratingA, family)).toBe(made);
  });
});

describe("how far the device may be from its source", () => {
  test.each([
    [{}, "near", 7],
    [{ sheathed: true }, "near", 40],
    [{ fromBattery: true }, "near", 72],
    [{ fromBattery: true, sheathed: true }, "near", 72],
    [{ fromBattery: true }, "far", 7],
    [{ fromBattery: true, sheathed: true }, "far", 40],
    [{ toBattery: true }, "near", 7],
    [{ toBattery: true }, "far", 72],
  ] as const)("%o, %s end", (change, end, maxIn) => {
    const limit = protectionDistanceLimit(sampleCircuit(change), end);
    expect(limit.maxIn).toBe(maxIn);
  });

  test("practice advises less for a bare conductor from a battery", () => {
    const advisedIn = (change: Parameters<typeof sampleCircuit>[0]) =>
      protectionDistanceLimit(sampleCircuit(change), "near").advised?.maxIn;
    expect(advisedIn({ fromBattery: true })).toBe(7);
    expect(advisedIn({ fromBattery: true, sheathed: true })).toBeUndefined();
    expect(advisedIn({})).toBeUndefined();
  });
});

function awg(size: 18 | 10) {
  return { parallel: 1, system: "awg", awg: size } as const;
}
