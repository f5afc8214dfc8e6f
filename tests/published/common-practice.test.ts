import { expect, test } from "vitest";
import { analyseCircuit } from "../../library/analysis/analyse-circuit.ts";
import { sampleCircuit } from "../../library/analysis/sample-circuit.tester.ts";
import { ordinaryDropLimit } from "../../library/standards/drop-limits.ts";
import { metresPerFoot } from "./published-data.ts";

// Common practice, no source: builders' charts agree on this, so a first plan must give the same.

test("40 A over 15 ft one way on 4 AWG with 50 A is within 3 %", () => {
  const circuit = sampleCircuit({ critical: true, dropLimitPercent: 3 });
  const { ampacity, drop, protection } = analyseCircuit(circuit);
  expect(circuit).toMatchObject({
    loadA: 40,
    systemV: 12,
    conductor: { awg: 4 },
    protection: { ratingA: 50 },
  });
  expect(circuit.positiveM).toBe(15 * metresPerFoot);
  expect(drop.dropPercent).toBeLessThan(3);
  expect(drop.overloaded).toBe(false);
  expect(ampacity.judged && ampacity.ampacityA).toBe(125);
  expect(protection.bestRatingA).toBe(50);
});

test("the same on 6 AWG is not within 3 %", () => {
  const circuit = sampleCircuit({ conductor: { parallel: 1, system: "awg", awg: 6 } });
  expect(analyseCircuit(circuit).drop.dropPercent).toBeGreaterThan(3);
});

test("12 AWG carries 20 A over 30 ft of total length within 10 %", () => {
  const circuit = sampleCircuit({
    loadA: 20,
    positiveM: 15 * metresPerFoot,
    negativeM: 15 * metresPerFoot,
    conductor: { parallel: 1, system: "awg", awg: 12 },
    protection: { ratingA: 25, writtenAs: "number" },
  });
  const { ampacity, drop, protection } = analyseCircuit(circuit);
  expect(drop.dropPercent).toBeLessThan(10);
  expect(ampacity.judged && ampacity.ampacityA).toBe(25);
  expect(protection).toMatchObject({ aimA: 25, maxA: 25, bestRatingA: 25 });
});

test("protection is never above what the conductor may carry, and aims at 125 % of the load", () => {
  for (let loadA = 1; loadA <= 130; loadA += 0.5) {
    const { protection } = analyseCircuit(sampleCircuit({ loadA, protection: null }));
    expect(protection.aimA).toBeCloseTo(1.25 * loadA, 9);
    expect(protection.maxA).toBe(125);
    const { bestRatingA } = protection;
    if (loadA <= 100) expect(bestRatingA).toBeGreaterThanOrEqual(protection.aimA);
    else expect(bestRatingA).toBeUndefined();
    if (bestRatingA !== undefined) expect(bestRatingA).toBeLessThanOrEqual(125);
  }
});

test("10 % elsewhere says that it is common practice", () => {
  expect(ordinaryDropLimit).toMatchObject({
    percentOfNominal: 10,
    source: { authority: "common practice", document: "Common practice, no source" },
  });
});
