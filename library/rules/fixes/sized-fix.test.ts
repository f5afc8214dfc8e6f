import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { madeSizes, sizesAbove } from "../../analysis/made-sizes.ts";
import { type RunSizing, repairSizing } from "../../analysis/repair-sizing.ts";
import { sampleCircuit } from "../../analysis/sample-circuit.tester.ts";
import type { Run } from "../../model/run.ts";
import { deviceInWords, sizedFixes, sizeInWords } from "./sized-fix.ts";

/** As for a plan with this circuit alone. */
function repairsOf(circuit: Run) {
  return sizedFixes(circuit, repairSizing({ circuits: [{ circuit }], network: undefined }).ofRun(circuit));
}

const awg = (size: 12 | 10 | 8 | 6 | 4 | 2 | "2/0", parallel = 1) =>
  ({ system: "awg", awg: size, parallel }) as const;

describe("the repair of a conductor that is too thin", () => {
  test("sets the size alone where the rating still fits", () => {
    expect(repairsOf(sampleCircuit({ conductor: awg(12) }))).toEqual([
      {
        title: "Use 8 AWG",
        noun: "8 AWG",
        kind: "repair",
        changes: [{ do: "set", record: 0, path: ["gauge"], value: 8 }],
      },
    ]);
  });

  test("sets size and rating together, in the form in which the plan states them", () => {
    const circuit = sampleCircuit({
      loadA: 70,
      conductor: awg(8),
      protection: { ratingA: 60, writtenAs: "object" },
      protectionFarEnd: { ratingA: 60, writtenAs: "number", family: "circuit breaker" },
      fedFromBothEnds: true,
    });
    expect(repairsOf(circuit)).toEqual([
      {
        title: "Use 6 AWG with a 90 A fuse and a 90 A breaker at the far end",
        noun: "6 AWG with a 90 A fuse and a 90 A breaker at the far end",
        kind: "repair",
        changes: [
          { do: "set", record: 0, path: ["gauge"], value: 6 },
          { do: "set", record: 0, path: ["protect", "ratingA"], value: 90 },
          { do: "set", record: 0, path: ["protectFarEnd"], value: 90 },
        ],
      },
    ]);
  });

  test("says that the place of its device permits no such rating", () => {
    const circuit = sampleCircuit({ conductor: awg(12), protection: { ratingA: 30, writtenAs: "number" } });
    const sizing = { conductor: awg(8), ratingA: 60, ratingFarEndA: undefined, run: circuit };
    const range = { minA: 40, aimA: 50, maxA: 70 } as RunSizing["range"];
    const fix = (placeA?: number) =>
      sizedFixes(circuit, { ...sizing, range, beyondNeed: false, placeA }).map(({ title }) => title);
    expect(fix()).toEqual(["Use 8 AWG with a 60 A fuse"]);
    expect(fix(40)).toEqual(["Use 8 AWG with a 60 A fuse (elsewhere: its place permits 40 A)"]);
  });

  test("adds no protection: another rule misses it", () => {
    expect(repairsOf(sampleCircuit({ conductor: awg(12), protection: null }))[0]?.title).toBe("Use 8 AWG");
  });

  test("proposes nothing where all is right, and nothing where no size is enough", () => {
    expect(repairsOf(sampleCircuit())).toEqual([]);
    expect(repairsOf(sampleCircuit({ loadA: 700 }))).toEqual([]);
  });

  test("never makes a conductor thinner, whatever sizing it is given", () => {
    const thinner = { conductor: awg(8), ratingA: 50, ratingFarEndA: undefined };
    expect(sizedFixes(sampleCircuit(), thinner)).toEqual([]);
    fc.assert(
      fc.property(
        fc.constantFrom(...madeSizes(awg(4))),
        fc.double({ min: 0.1, max: 400, noNaN: true }),
        fc.double({ min: 0.1, max: 60, noNaN: true }),
        (conductor, loadA, lengthM) => {
          const circuit = sampleCircuit({ conductor, loadA, positiveM: lengthM, negativeM: lengthM });
          for (const { changes } of repairsOf(circuit))
            for (const change of changes)
              if (change.do === "set" && change.path[0] === "gauge")
                expect(
                  sizesAbove({ ...conductor, awg: change.value } as typeof conductor, conductor),
                ).toBeGreaterThan(0);
        },
      ),
    );
  });
});

test.each([
  [null, 50, "a 50 A fuse"],
  [null, 7.5, "a 7.5 A fuse"],
  [null, 80, "an 80 A fuse"],
  [{ ratingA: 8, writtenAs: "object", family: "circuit breaker" }, 8, "an 8 A breaker"],
] as const)("a device in words: %o, %d A: %s", (protection, ratingA, words) => {
  expect(deviceInWords(protection, ratingA)).toBe(words);
});

test("wires side by side are counted", () => {
  expect(sizeInWords(awg("2/0", 2))).toBe("2 × 2/0 AWG");
});
