import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { sampledRuns } from "../../tests/setup/sampled.ts";
import { type LegChoice, type LegChoices, leastCopper } from "./least-copper.ts";

const leg = (...choices: readonly (readonly [copperMm2M: number, dropV: number])[]): LegChoices => ({
  choices: choices.map(([copperMm2M, dropV]) => ({ copperMm2M, dropV })),
});

describe("worked out by hand", () => {
  test("a way that is within its limit as it is stays as it is", () => {
    expect(leastCopper([leg([1, 20], [2, 10]), leg([1, 10], [2, 5])], 30)).toEqual([0, 0]);
  });

  test("the leg in which the same copper saves more", () => {
    expect(leastCopper([leg([1, 20], [2, 10]), leg([1, 20], [2, 15])], 30)).toEqual([1, 0]);
  });

  test("two small steps are taken where they are cheaper than a great one", () => {
    expect(leastCopper([leg([1, 20], [2, 15], [8, 10]), leg([1, 20], [2, 15])], 30)).toEqual([1, 1]);
  });

  test("just within the limit is within", () => {
    expect(leastCopper([leg([1, 50], [2, 25])], 25)).toEqual([1]);
    expect(leastCopper([leg([1, 50], [2, 25])], 24)).toBeUndefined();
  });

  test("no legs lose nothing", () => {
    expect(leastCopper([], 0)).toEqual([]);
  });

  test("a leg that cannot be changed has one choice", () => {
    expect(leastCopper([leg([3, 20]), leg([1, 20], [2, 10])], 30)).toEqual([0, 1]);
    expect(leastCopper([leg([3, 40]), leg([1, 20], [2, 10])], 30)).toBeUndefined();
  });
});

/** Like made sizes: thicker has more copper and less drop. Whole numbers add up exactly, in any order. */
const anyLeg = fc
  .array(fc.tuple(fc.integer({ min: 1, max: 50 }), fc.integer({ min: 1, max: 100 })), {
    minLength: 1,
    maxLength: 4,
  })
  .map((steps) => {
    const choices: LegChoice[] = [];
    let [copperMm2M, dropV] = [0, steps.reduce((sum, [, lessV]) => sum + lessV, 0)];
    for (const [moreCopper, lessV] of steps) {
      copperMm2M += moreCopper;
      choices.push({ copperMm2M, dropV });
      dropV -= lessV;
    }
    return { choices };
  });
const anyWay = fc.tuple(fc.array(anyLeg, { minLength: 1, maxLength: 5 }), fc.integer({ min: 1, max: 900 }));

test("no combination that is enough has less copper: brute force finds the same", () => {
  let enough = 0;
  fc.assert(
    fc.property(anyWay, ([legs, allowedV]) => {
      const found = leastCopper(legs, allowedV);
      const best = bruteForce(legs, allowedV);
      if (found) enough++;
      expect(found && totalOf(legs, found)).toEqual(best);
    }),
    { numRuns: 2000 },
  );
  // Both kinds of paths occur: those with a solution and those without.
  expect(enough).toBeGreaterThan(200);
  expect(enough).toBeLessThan(1990);
});

test("every leg is needed: with any of them one size thinner it is no longer enough", () => {
  let thinned = 0;
  fc.assert(
    fc.property(anyWay, ([legs, allowedV]) => {
      const found = leastCopper(legs, allowedV);
      found?.forEach((choice, index) => {
        if (choice === 0) return;
        thinned++;
        expect(totalOf(legs, found.with(index, choice - 1)).dropV).toBeGreaterThan(allowedV);
      });
    }),
    { numRuns: 1000 },
  );
  expect(thinned, "legs that were made one size thinner").toBeGreaterThan(200);
});

test("a wider limit never asks for more copper", () => {
  let enough = 0;
  fc.assert(
    fc.property(anyWay, fc.integer({ min: 0, max: 200 }), ([legs, allowedV], moreV) => {
      const strict = leastCopper(legs, allowedV);
      if (!strict) return;
      enough++;
      const wide = leastCopper(legs, allowedV + moreV);
      expect(wide && totalOf(legs, wide).copperMm2M).toBeLessThanOrEqual(totalOf(legs, strict).copperMm2M);
    }),
  );
  expect(enough, "ways with an answer").toBeGreaterThan(sampledRuns(20));
});

test("twelve legs of fourteen sizes are searched, not tried out one by one", () => {
  const areas = [0.82, 1.31, 2.08, 3.31, 5.26, 8.37, 13.3, 21.2, 33.6, 42.4, 53.5, 67.4, 85, 107];
  const legs = Array.from({ length: 12 }, (_, index) => {
    const lengthM = 1 + 0.37 * index;
    return {
      choices: areas.map((mm2) => ({ copperMm2M: mm2 * lengthM, dropV: ((0.4 + index) * lengthM) / mm2 })),
    };
  });
  const found = leastCopper(legs, 20) ?? [];
  const total = totalOf(legs, found);
  expect(found).toHaveLength(12);
  expect(total.dropV).toBeLessThanOrEqual(20);
  // No exchange of one size up for one size down is cheaper and still enough.
  found.forEach((up, one) => {
    found.forEach((down, other) => {
      if (one === other || up + 1 >= areas.length || down === 0) return;
      const swapped = totalOf(legs, found.with(one, up + 1).with(other, down - 1));
      expect(swapped.dropV > 20 || swapped.copperMm2M >= total.copperMm2M).toBe(true);
    });
  });
});

function totalOf(legs: readonly LegChoices[], taken: readonly number[]): LegChoice {
  return legs.reduce(
    (sum, { choices }, index) => {
      const choice = choices[taken[index] ?? -1];
      if (!choice) throw new Error("a leg without a choice");
      return { copperMm2M: sum.copperMm2M + choice.copperMm2M, dropV: sum.dropV + choice.dropV };
    },
    { copperMm2M: 0, dropV: 0 },
  );
}

function bruteForce(legs: readonly LegChoices[], allowedV: number): LegChoice | undefined {
  let all: LegChoice[] = [{ copperMm2M: 0, dropV: 0 }];
  for (const { choices } of legs) {
    all = all.flatMap((sum) =>
      choices.map(({ copperMm2M, dropV }) => ({
        copperMm2M: sum.copperMm2M + copperMm2M,
        dropV: sum.dropV + dropV,
      })),
    );
  }
  return all
    .filter(({ dropV }) => dropV <= allowedV)
    .sort((one, other) => one.copperMm2M - other.copperMm2M || one.dropV - other.dropV)[0];
}
