import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { sampledRuns } from "../../tests/setup/sampled.ts";
import { firstFree, inUnit, snapped, stepOf } from "./snapping.ts";

const surface = { width: 1200, height: 800 };
const other = { left: 400, top: 203, width: 111, height: 90 };
const around = { surface, others: [other], step: 5 };

describe("a dragged outline", () => {
  test.each([
    ["at whole steps", { left: 101, top: 63 }, { left: 100, top: 65 }],
    ["with its left edge at a neighbour's right one", { left: 513, top: 63 }, { left: 511, top: 65 }],
    ["with its right edge at a neighbour's left one", { left: 318, top: 63 }, { left: 320, top: 65 }],
    ["with its top at a neighbour's top", { left: 101, top: 205 }, { left: 100, top: 203 }],
    ["with its middle at a neighbour's middle", { left: 417, top: 63 }, { left: 415.5, top: 65 }],
    ["with its bottom at that of the surface", { left: 101, top: 742 }, { left: 100, top: 740 }],
    ["never left of the surface or above it", { left: -30, top: -12 }, { left: 0, top: 0 }],
  ])("is placed %s", (_, at, wanted) => {
    expect(snapped({ ...at, width: 80, height: 60 }, around, 4)).toMatchObject(wanted);
  });

  test("in inches, is at quarters of an inch", () => {
    const there = snapped(
      { left: 100, top: 63, width: 80, height: 60 },
      { ...around, others: [], step: stepOf("in") },
      0,
    );
    expect([inUnit(there.left, "in"), inUnit(there.top, "in")]).toEqual([4, 2.5]);
  });
});

test("a free place is on the surface and overlaps none, wherever the others are", () => {
  const outline = fc.record({
    left: fc.integer({ min: 0, max: 1200 }),
    top: fc.integer({ min: 0, max: 800 }),
    width: fc.integer({ min: 1, max: 500 }),
    height: fc.integer({ min: 1, max: 500 }),
  });
  fc.assert(
    fc.property(fc.array(outline, { maxLength: 8 }), (others) => {
      const found = firstFree({ width: 105, height: 60 }, { surface, others, step: 5 });
      const isFree = (left: number, top: number) =>
        others.every(
          (one) =>
            left >= one.left + one.width ||
            one.left >= left + 105 ||
            top >= one.top + one.height ||
            one.top >= top + 60,
        );
      if (isFree(found.left, found.top)) return;
      for (let top = 0; top + 60 <= 800; top += 5)
        for (let left = 0; left + 105 <= 1200; left += 5) expect(isFree(left, top)).toBe(false);
    }),
    { numRuns: sampledRuns(60) },
  );
});
