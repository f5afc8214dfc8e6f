import { describe, expect, test } from "vitest";
import type { InsulationC } from "../plan/sizes.ts";
import { faultWithstand, withstandOf } from "./fault-withstand.ts";

const metric = (mm2: 1 | 1.5 | 6 | 10, insulationC: InsulationC = 70, parallel = 1) =>
  ({ conductor: { parallel, system: "metric", mm2 }, insulationC }) as const;
const strip = { ratingA: 100, family: "ISO 8820-5 Type SF 51" } as const;

test.each<[InsulationC, number, number]>([
  [60, 160, 122.2],
  [70, 160, 115],
  [75, 160, 111.3],
  [90, 160, 99.9],
  [105, 160, 87.6],
  [125, 250, 123.5],
  [200, 250, 74.6],
])("insulation for %d °C may reach %d °C: k = %d", (insulationC, finalC, k) => {
  const withstand = withstandOf(metric(10, insulationC));
  expect(withstand).toMatchObject({ initialC: insulationC, finalC, crossSectionMm2: 10 });
  // Calculated independently, to one decimal.
  expect(Math.abs(withstand.k - k)).toBeLessThan(0.06);
});

test("AWG sizes by their copper: 4 AWG is 21.15 mm²", () => {
  const { crossSectionMm2 } = withstandOf({
    conductor: { parallel: 1, system: "awg", awg: 4 },
    insulationC: 75,
  });
  // ASTM B258: 21.15 mm². The area comes from a resistance of four figures: 5 parts in 10,000.
  expect(Math.abs(crossSectionMm2 / 21.15 - 1)).toBeLessThan(5e-4);
});

test("two wires in parallel stand four times the heat of one", () => {
  expect(withstandOf(metric(6, 70, 2)).withstandA2s).toBeCloseTo(4 * withstandOf(metric(6)).withstandA2s, 6);
});

describe("a strip fuse of 100 A, beyond its last gate: (600 A)² · 1 s = 360,000 A²s", () => {
  test.each([
    [1.5, 70, false],
    [6, 70, true],
    [6, 90, false],
    [10, 90, true],
  ] as const)("%d mm², insulation for %d °C", (mm2, insulationC, withstands) => {
    expect(faultWithstand(metric(mm2, insulationC), strip, 3000)).toMatchObject({
      judged: true,
      withstands,
      letThroughA2s: 360000,
    });
  });
});

describe("not judged", () => {
  test("a device that takes longer than 5 s and lets through more than the conductor stands", () => {
    // At 200 % within 15 s: 600,000 A²s; 6 mm² withstand 476,000.
    expect(faultWithstand(metric(6), strip, 200)).toMatchObject({ judged: false, why: "takes-too-long" });
    // 10 mm² withstand 1,320,000: heat that escapes is on the safe side.
    expect(faultWithstand(metric(10), strip, 200)).toMatchObject({ judged: true, withstands: true });
  });

  test.each([
    ["no-family", { ratingA: 100 }],
    ["no-gates", { ratingA: 100, family: "circuit breaker" as const }],
  ])("%s: the conductor's own figure is there all the same", (why, device) => {
    expect(faultWithstand(metric(6), device, 3000)).toMatchObject({ judged: false, why, finalC: 160 });
  });
});
