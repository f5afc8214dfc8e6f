import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type JointProblem, leastCopperTogether } from "../../library/analysis/joint-sizing.ts";
import { leastCopperByHighs } from "./highs.ts";

// The search of this project against HiGHS 1.15.3, a solver of mixed-integer linear programmes (MIT), on the same problems.

const sizesMm2 = [0.75, 1, 1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95];
/** Copper at 20 °C: 1/58 Ω·mm²/m (IEC 60028). */
const ohmMm2PerM = 1 / 58;

const ownRun = fc.record({
  lengthM: fc.double({ min: 0.5, max: 15, noNaN: true }),
  currentA: fc.double({ min: 0.5, max: 20, noNaN: true }),
  from: fc.integer({ min: 1, max: 6 }),
});

/** Feeders in line, each with devices behind it: a device's path is its own run and all feeders up to its own. */
const trees = fc
  .tuple(
    fc.array(
      fc.record({
        lengthM: fc.double({ min: 0.3, max: 8, noNaN: true }),
        from: fc.integer({ min: 3, max: 8 }),
      }),
      { minLength: 1, maxLength: 6 },
    ),
    fc.array(fc.tuple(ownRun, fc.nat(), fc.constantFrom(3, 3, 5, 10)), { minLength: 2, maxLength: 14 }),
  )
  .map(([feeders, devices]): JointProblem => {
    const at = devices.map(([, place]) => place % feeders.length);
    const feederA = feeders.map((_, feeder) =>
      devices.reduce((sumA, [{ currentA }], device) => sumA + (at[device]! >= feeder ? currentA : 0), 0),
    );
    const made = (from: number) => sizesMm2.slice(from);
    const copper = ({ lengthM, from }: { lengthM: number; from: number }, conductors: number) =>
      made(from).map((mm2) => mm2 * lengthM * conductors);
    const drop = (
      { lengthM, from }: { lengthM: number; from: number },
      currentA: number,
      conductors: number,
    ) => made(from).map((mm2) => (currentA * ohmMm2PerM * lengthM * conductors) / mm2);
    return {
      runs: [
        ...feeders.flatMap((feeder) =>
          [feeder, feeder].map((one) => ({ copperMm2M: copper(one, 1), last: 4 })),
        ),
        ...devices.map(([own]) => ({ copperMm2M: copper(own, 2), last: 4 })),
      ],
      paths: devices.map(([own, , limitPercent], device) => ({
        device,
        allowedV: (12 * limitPercent) / 100,
        legs: [
          ...feeders
            .slice(0, at[device]! + 1)
            .flatMap((feeder, index) =>
              [0, 1].map((side) => ({ run: 2 * index + side, dropV: drop(feeder, feederA[index]!, 1) })),
            ),
          { run: 2 * feeders.length + device, dropV: drop(own, own.currentA, 2) },
        ],
      })),
    };
  });

function copperOf({ runs }: JointProblem, choices: readonly number[]): number {
  return runs.reduce((sum, { copperMm2M }, run) => sum + copperMm2M[choices[run]!]!, 0);
}

describe("the least copper of several runs together", () => {
  const problems = fc.sample(trees, { numRuns: 60, seed: 11 });
  const optima = leastCopperByHighs(problems);
  const found = problems.map((problem) => leastCopperTogether(problem));

  test("is at most 5 % above the optimum that HiGHS proves, and mostly is that optimum", () => {
    const excess = problems.flatMap((problem, index) => {
      const [optimum, { choices, met }] = [optima[index], found[index]!];
      if (optimum === undefined) return [];
      expect(met).not.toContain(false);
      problem.runs.forEach(({ last }, run) => {
        expect(choices[run]).toBeLessThanOrEqual(last);
      });
      return [copperOf(problem, choices) / optimum - 1];
    });
    expect(excess.length, "problems that can be solved within the caps").toBeGreaterThan(15);
    expect(Math.min(...excess)).toBeGreaterThan(-1e-6);
    expect(Math.max(...excess)).toBeLessThan(0.05);
    expect(excess.filter((share) => share < 1e-6).length / excess.length).toBeGreaterThan(0.7);
  });

  test("keeps every limit that can be met; where the caps are too narrow, they are lifted", () => {
    let lifted = 0;
    problems.forEach((problem, index) => {
      const { choices, met } = found[index]!;
      problem.paths.forEach(({ allowedV, legs }, path) => {
        const dropV = legs.reduce((sumV, leg) => sumV + leg.dropV[choices[leg.run]!]!, 0);
        if (met[path]) expect(dropV).toBeLessThanOrEqual(allowedV + 1e-9);
      });
      if (optima[index] === undefined && met.some(Boolean)) lifted++;
    });
    expect(lifted).toBeGreaterThan(3);
  });

  test("does not depend on the order of the paths", () => {
    problems.slice(0, 30).forEach((problem, index) => {
      const turned = { ...problem, paths: problem.paths.toReversed() };
      expect(leastCopperTogether(turned).choices).toEqual(found[index]!.choices);
    });
  });
});
