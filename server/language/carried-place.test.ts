import { describe, expect, test } from "vitest";
import { carryBetween } from "./carried-place.ts";

describe("carrying places to a later text", () => {
  const older = "one two three";
  const cases = [
    { name: "nothing changed", newer: older, place: [4, 7], whole: [4, 7], spanning: [4, 7] },
    { name: "typed before it", newer: "one, two three", place: [4, 7], whole: [5, 8], spanning: [5, 8] },
    { name: "typed behind it", newer: "one two, three", place: [4, 7], whole: [4, 7], spanning: [4, 7] },
    { name: "typed inside it", newer: "one twxo three", place: [4, 7], whole: undefined, spanning: [4, 8] },
    {
      name: "another letter of the same length",
      newer: "one tXo three",
      place: [4, 7],
      whole: undefined,
      spanning: [4, 7],
    },
    { name: "it was deleted", newer: "one  three", place: [4, 7], whole: undefined, spanning: [4, 4] },
    { name: "everything was deleted", newer: "", place: [4, 7], whole: undefined, spanning: undefined },
  ] as const;
  test.each(cases)("$name", ({ newer, place: [start, end], whole, spanning }) => {
    const { whole: carryWhole, spanning: carrySpanning } = carryBetween(older, newer);
    const pair = (stretch: { start: number; end: number } | undefined) =>
      stretch && [stretch.start, stretch.end];
    expect(pair(carryWhole(start, end))).toEqual(whole);
    expect(pair(carrySpanning(start, end))).toEqual(spanning);
  });

  test("what is carried whole has the same text", () => {
    const texts = ["gauge: 4", "gauge: 44", "gauge: ", "", "x gauge: 4 gauge: 4", "gauge: 4 gauge: 6"];
    for (const before of texts) {
      for (const after of texts) {
        const { whole, back } = carryBetween(before, after);
        for (let start = 0; start <= before.length; start++) {
          for (let end = start; end <= before.length; end++) {
            const at = whole(start, end);
            if (at) expect(after.slice(at.start, at.end)).toBe(before.slice(start, end));
          }
        }
        for (let offset = 0; offset <= after.length; offset++) {
          const old = back(offset);
          if (old !== undefined) expect(old).toBeLessThanOrEqual(before.length);
        }
      }
    }
  });
});
