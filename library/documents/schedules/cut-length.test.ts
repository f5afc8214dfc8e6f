import fc from "fast-check";
import { expect, test } from "vitest";
import { cutLengthM } from "./cut-length.ts";
import { feetAndInches } from "./lengths.ts";

test.each<[number, "ft" | "m", number, number, number]>([
  // 1 m and 10 % are 1.1 m; 100 mm at each end: 1.3 m, which is whole.
  [1, "m", 10, 0.1, 1.3],
  [1.001, "m", 10, 0.1, 1.31],
  [2, "m", 0, 0, 2],
  [0.3, "m", 10, 0.05, 0.43],
  // 10 ft are 120 in; 132 in with slack; 2 in at each end: 136 in.
  [3.048, "ft", 10, 0.0508, 3.4544],
  [3.05, "ft", 10, 0.0508, 3.4798],
])(
  "%d m in %s with %d % and %d m at each end is cut to %d m",
  (lengthM, unit, slackPercent, endSlackM, cutM) => {
    expect(cutLengthM(lengthM, unit, { slackPercent, endSlackM })).toBeCloseTo(cutM, 9);
  },
);

test("never shorter than what is needed, and less than one step longer", () => {
  const length = fc.double({ min: 0.01, max: 300, noNaN: true });
  fc.assert(
    fc.property(length, fc.nat(50), fc.nat(500), fc.boolean(), (lengthM, slackPercent, endMm, inInches) => {
      const endSlackM = endMm / 1000;
      const neededM = lengthM * (1 + slackPercent / 100) + 2 * endSlackM;
      const stepM = inInches ? 0.0254 : 0.01;
      const cutM = cutLengthM(lengthM, inInches ? "ft" : "m", { slackPercent, endSlackM });
      expect(cutM).toBeGreaterThan(neededM - 1e-6);
      expect(cutM).toBeLessThan(neededM + stepM + 1e-6);
      expect(Math.abs(cutM / stepM - Math.round(cutM / stepM))).toBeLessThan(1e-6);
    }),
  );
});

test.each([
  [0.0254, "1 in"],
  [0.3048, "1 ft"],
  [4.7498, "15 ft 7 in"],
  [4.75, "15 ft 8 in"],
  [0, "0 in"],
])("%d m is %s", (lengthM, words) => {
  expect(feetAndInches(lengthM)).toBe(words);
});
