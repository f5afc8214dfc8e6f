import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { ampacityOf } from "../../library/analysis/ampacity.ts";
import { analyseCircuit } from "../../library/analysis/analyse-circuit.ts";
import { isMadeRating, nearestRatingAbove } from "../../library/analysis/made-ratings.ts";
import { madeSizes, sizesAbove } from "../../library/analysis/made-sizes.ts";
import { meetsMinimumSize } from "../../library/analysis/minimum-size.ts";
import { type Sizing, thinnestNeeded, thinnestSufficient } from "../../library/analysis/sizing.ts";
import type { Measured, Protection } from "../../library/model/run.ts";
import { circuits, decimal } from "./arbitrary-circuit.ts";

/** For two computations of the same number that may differ in the last bits of a binary fraction. */
const bits = 1 + 1e-12;

describe("thicker", () => {
  test("never carries less, is never hotter, never drops more", () => {
    fc.assert(
      fc.property(circuits, (circuit) => {
        let before = analyseCircuit({ ...circuit, conductor: madeSizes(circuit.conductor)[0]! });
        for (const conductor of madeSizes(circuit.conductor).slice(1)) {
          const after = analyseCircuit({ ...circuit, conductor });
          expect(ampereA(after)).toBeGreaterThanOrEqual(ampereA(before));
          expect(after.drop.conductorC).toBeLessThanOrEqual(before.drop.conductorC);
          expect(after.drop.resistanceAtC).toBeLessThanOrEqual(before.drop.resistanceAtC);
          expect(after.drop.dropV).toBeLessThan(before.drop.dropV);
          before = after;
        }
      }),
    );
  });

  test("insulation for hotter places never carries less", () => {
    const ratings = [60, 70, 75, 80, 85, 90, 105, 125, 200] as const;
    fc.assert(
      fc.property(circuits, (circuit) => {
        let beforeA = 0;
        for (const insulationC of ratings) {
          const ampacity = ampacityOf({ ...circuit, insulationC });
          const carriedA = ampacity.judged ? ampacity.ampacityA : 0;
          expect(carriedA).toBeGreaterThanOrEqual(beforeA);
          beforeA = carriedA;
        }
      }),
    );
  });
});

describe("more", () => {
  test("length never drops less, and goes with the drop in proportion", () => {
    fc.assert(
      fc.property(circuits, decimal(1, 5), (circuit, times) => {
        const { drop } = analyseCircuit(circuit);
        const { positiveM, negativeM } = circuit;
        const longer = analyseCircuit({
          ...circuit,
          positiveM: times * positiveM,
          negativeM: times * negativeM,
        });
        expectClose(longer.drop.dropV, times * drop.dropV);
        expect(longer.ampacity).toEqual(analyseCircuit(circuit).ampacity);
      }),
    );
  });

  test("load drops more, at least in proportion, and is never cooler", () => {
    fc.assert(
      fc.property(circuits, decimal(1, 5), (circuit, times) => {
        const { drop } = analyseCircuit(circuit);
        const more = analyseCircuit({ ...circuit, loadA: times * circuit.loadA }).drop;
        expect(more.dropV * bits).toBeGreaterThanOrEqual(times * drop.dropV);
        expect(more.conductorC).toBeGreaterThanOrEqual(drop.conductorC);
      }),
    );
  });

  test("conductors together, or a hotter place, never carry more", () => {
    fc.assert(
      fc.property(circuits, fc.nat(20), decimal(0, 40), (circuit, others, warmerC) => {
        const { ampacity } = analyseCircuit(circuit);
        const fuller = ampacityOf({ ...circuit, bundledWith: circuit.bundledWith + others });
        const warmer = ampacityOf({
          ...circuit,
          ambientStated: true,
          ambientC: circuit.ambientC + warmerC,
        });
        const beforeA = ampacity.judged ? ampacity.ampacityA : 0;
        expect(fuller.judged ? fuller.ampacityA : 0).toBeLessThanOrEqual(beforeA);
        expect(warmer.judged ? warmer.ampacityA : 0).toBeLessThanOrEqual(beforeA);
      }),
    );
  });
});

describe("the same run said otherwise", () => {
  test("positive and negative conductor may be exchanged", () => {
    fc.assert(
      fc.property(circuits, (circuit) => {
        const { positiveM, negativeM } = circuit;
        const exchanged = { ...circuit, positiveM: negativeM, negativeM: positiveM };
        expect(analyseCircuit(exchanged)).toEqual(analyseCircuit(circuit));
        expect(thinnestSufficient(exchanged)).toEqual(thinnestSufficient(circuit));
      }),
    );
  });

  test("one way there and back is the round trip", () => {
    fc.assert(
      fc.property(circuits, (circuit) => {
        const halfM = (circuit.positiveM + circuit.negativeM) / 2;
        const oneWay = analyseCircuit({ ...circuit, positiveM: halfM, negativeM: halfM });
        expectClose(oneWay.drop.dropV, analyseCircuit(circuit).drop.dropV);
      }),
    );
  });

  test("n wires for n times the load are n runs of one, where as many are bundled", () => {
    fc.assert(
      fc.property(circuits, fc.integer({ min: 2, max: 4 }), (circuit, n) => {
        const one = { ...circuit, conductor: { ...circuit.conductor, parallel: 1 } };
        const many = {
          ...one,
          loadA: n * one.loadA,
          conductor: { ...one.conductor, parallel: n },
        };
        const [single, together] = [analyseCircuit(one), analyseCircuit(many)];
        if (single.ampacity.judged) expectClose(ampereA(together), n * ampereA(single));
        expectClose(together.drop.dropV, single.drop.dropV);
        expectClose(together.drop.conductorC, single.drop.conductorC);
      }),
    );
  });

  test("twice the voltage is half the percentage", () => {
    fc.assert(
      fc.property(circuits, (circuit) => {
        const half = analyseCircuit({ ...circuit, systemV: 2 * circuit.systemV }).drop.dropPercent;
        expectClose(2 * half, analyseCircuit(circuit).drop.dropPercent);
      }),
    );
  });

  test("circuits judged in any order, and twice, come out the same", () => {
    fc.assert(
      fc.property(fc.array(circuits, { maxLength: 8 }), (plan) => {
        const forward = plan.map((circuit) => [analyseCircuit(circuit), thinnestSufficient(circuit)]);
        const backward = [...plan]
          .reverse()
          .map((circuit) => [analyseCircuit(circuit), thinnestSufficient(circuit)]);
        expect(backward.reverse()).toEqual(forward);
      }),
    );
  });
});

describe("results hold together", () => {
  test("every number is finite, arriving voltage and drop make the system's", () => {
    let rated = 0;
    fc.assert(
      fc.property(circuits, (circuit) => {
        const { ampacity, drop, protection } = analyseCircuit(circuit);
        expect(Number.isFinite(drop.dropV) && drop.dropV > 0).toBe(true);
        expect(Number.isFinite(drop.conductorC)).toBe(true);
        expectClose(drop.arrivingV + drop.dropV, circuit.systemV);
        expect(drop.resistanceAtC).toBeLessThanOrEqual(
          ampacity.judged ? ampacity.columnC : ampacity.ambientC,
        );
        expect(ampacity.columnC).toBeLessThanOrEqual(circuit.insulationC);
        expect(drop.overloaded).toBe(!(ampereA({ ampacity }) >= circuit.loadA));
        const { aimA, bestRatingA, maxA } = protection;
        if (bestRatingA === undefined) return;
        rated++;
        expect(isMadeRating(bestRatingA, circuit.protection?.family)).toBe(true);
        expect(bestRatingA).toBeGreaterThanOrEqual(aimA);
        expect(bestRatingA).toBeLessThanOrEqual(maxA ?? 0);
      }),
      { numRuns: 300 },
    );
    expect(rated, "circuits that a rating protects").toBeGreaterThan(30);
  });
});

describe("a sizing, put into the plan, satisfies the analysis", () => {
  const runs = { numRuns: 1000 };

  test("the thinnest sufficient: never thinner than the plan's, and no thinner one would do", () => {
    fc.assert(
      fc.property(circuits, (circuit) => {
        const sizing = thinnestSufficient(circuit);
        if (!sizing) return;
        expect(sizesAbove(sizing.conductor, circuit.conductor)).toBeGreaterThanOrEqual(0);
        expectSatisfied(circuit, sizing);
        // Once applied, it requires no further change.
        expect(thinnestSufficient(sized(circuit, sizing))).toEqual(sizing);
      }),
      runs,
    );
  });

  test("with headroom: every rating reaches the aim, where its family does", () => {
    let reached = 0;
    fc.assert(
      fc.property(circuits, (circuit) => {
        const sizing = thinnestSufficient(circuit);
        if (!sizing) return;
        expectSatisfied(circuit, sizing);
        const { aimA } = analyseCircuit(circuit).protection;
        const family = (circuit.protection ?? circuit.protectionFarEnd)?.family;
        if (nearestRatingAbove(aimA, family) === undefined) return;
        reached++;
        expect(sizing.ratingA).toBeGreaterThanOrEqual(aimA);
      }),
      runs,
    );
    expect(reached, "circuits whose family reaches the aim").toBeGreaterThan(200);
  });

  test("what is needed does not hang on the size in the plan, and is never above what is sufficient", () => {
    fc.assert(
      fc.property(circuits, (circuit) => {
        const needed = thinnestNeeded(circuit);
        for (const conductor of madeSizes(circuit.conductor)) {
          expect(thinnestNeeded({ ...circuit, conductor })).toEqual(needed);
        }
        if (needed) expectSatisfied(circuit, needed);
      }),
      runs,
    );
  });

  test("a rating that is changed never has less than its headroom", () => {
    let changed = 0;
    fc.assert(
      fc.property(circuits, (circuit) => {
        const sizing = thinnestSufficient(circuit);
        if (!sizing || sizing.ratingA === circuit.protection?.ratingA) return;
        changed++;
        expect(sizing.ratingA).toBeGreaterThanOrEqual(analyseCircuit(circuit).protection.aimA);
      }),
      runs,
    );
    expect(changed, "circuits whose rating is changed").toBeGreaterThan(100);
  });

  test("most circuits of the test can be sized, so the properties above say something", () => {
    const sample = fc.sample(circuits, { numRuns: 500, seed: 1 });
    expect(sample.filter((circuit) => thinnestNeeded(circuit)).length).toBeGreaterThan(100);
    expect(sample.filter((circuit) => thinnestSufficient(circuit)).length).toBeGreaterThan(100);
  });
});

function expectSatisfied(circuit: Measured, sizing: Sizing): void {
  const after = sized(circuit, sizing);
  const { ampacity, drop, protection } = analyseCircuit(after);
  expect(meetsMinimumSize(after)).toBe(true);
  expect(ampacity.judged && ampacity.ampacityA).toBeGreaterThanOrEqual(circuit.loadA);
  expect(drop.dropPercent).toBeLessThanOrEqual(circuit.dropLimitPercent + 0.05);
  expect(drop.arrivingV).toBeGreaterThanOrEqual(circuit.minimumV ?? 0);
  expect(after.conductor.system).toBe(circuit.conductor.system);
  expect(after.conductor.parallel).toBe(circuit.conductor.parallel);
  for (const device of [after.protection, after.protectionFarEnd]) {
    if (!device) continue;
    expect(device.ratingA).toBeLessThanOrEqual(protection.maxA ?? 0);
    // A family not made in so high a rating is left alone: no size of conductor could help.
    if (nearestRatingAbove(protection.aimA, device.family) === undefined) continue;
    expect(device.ratingA).toBeGreaterThanOrEqual(protection.minA);
    expect(isMadeRating(device.ratingA, device.family)).toBe(true);
  }
}

/** The circuit with the sizing in it; a missing device takes the other end's family. */
function sized(circuit: Measured, { conductor, ratingA, ratingFarEndA }: Sizing): Measured {
  const { protection, protectionFarEnd } = circuit;
  const near = ratingA === undefined ? protection : withRating(protection, ratingA, protectionFarEnd);
  const far =
    ratingFarEndA === undefined ? protectionFarEnd : withRating(protectionFarEnd, ratingFarEndA, protection);
  return { ...circuit, conductor, protection: near, protectionFarEnd: far };
}

function withRating(stated: Protection | null, ratingA: number, other: Protection | null): Protection {
  const family = (stated ?? other)?.family;
  return { ...(stated ?? { writtenAs: "object" }), ratingA, ...(family ? { family } : {}) };
}

function ampereA({ ampacity }: Pick<ReturnType<typeof analyseCircuit>, "ampacity">): number {
  return ampacity.judged ? ampacity.ampacityA : 0;
}

/** Equal except for rounding: ampacities are rounded to 1e-9 A, of at least 0.1 A. */
function expectClose(actual: number, expected: number): void {
  expect(Math.abs(actual - expected)).toBeLessThanOrEqual(1e-7 * Math.abs(expected));
}
