import fc from "fast-check";
import { expect, test } from "vitest";
import { sampledRuns } from "../../tests/setup/sampled.ts";
import { judge } from "../judge.ts";
import { awgSizes, fuseFamilies, insulationRatingsC, mm2Sizes } from "../model/allowed-values.ts";
import { ruleById } from "./registry.ts";
import { faultsOfFix } from "./rule.tester.ts";

/** Any circuit that can be read, sensible or not. */
const anyInput = fc
  .record({
    load: tenths(1, 3000),
    length: tenths(3, 600),
    inFeet: fc.boolean(),
    size: fc.oneof(
      fc.record({ gauge: fc.constantFrom(...awgSizes) }),
      fc.record({ mm2: fc.constantFrom(...mm2Sizes) }),
    ),
    protect: rating(),
    protectFarEnd: rating(),
    rest: fc.record(
      {
        voltage: fc.constantFrom(12, 24, 48),
        insulationC: fc.constantFrom(...insulationRatingsC),
        engineSpace: fc.boolean(),
        ambientC: fc.integer({ min: -10, max: 110 }),
        bundledWith: fc.integer({ min: 0, max: 30 }),
        parallel: fc.integer({ min: 1, max: 3 }),
        sheathed: fc.boolean(),
        continuous: fc.boolean(),
        critical: fc.boolean(),
        fromBattery: fc.boolean(),
        fedFromBothEnds: fc.boolean(),
        minimumV: tenths(90, 119),
      },
      { requiredKeys: [] },
    ),
  })
  .map(({ load, length, inFeet, size, protect, protectFarEnd, rest }) => ({
    load,
    ...(inFeet ? { oneWayFt: length * 3 } : { oneWayM: length }),
    ...size,
    ...(protect === undefined ? {} : { protect }),
    ...(protectFarEnd === undefined ? {} : { protectFarEnd }),
    ...rest,
  }));

/** Numbers as people write them: tenths, not doubles that differ in the twelfth figure. */
function tenths(min: number, max: number) {
  return fc.integer({ min, max }).map((count) => count / 10);
}

function rating() {
  const ampere = fc.constantFrom(3, 5, 10, 13, 15, 20, 30, 40, 50, 60, 80, 100, 150, 200, 300, 400);
  return fc.option(
    fc.oneof(
      ampere,
      fc.record(
        {
          ratingA: ampere,
          family: fc.constantFrom(...fuseFamilies),
          distanceIn: fc.integer({ min: 0, max: 80 }),
        },
        { requiredKeys: ["ratingA"] },
      ),
    ),
    { nil: undefined },
  );
}

test("every repair of every rule, on any circuit: the finding is gone and nothing new has come", () => {
  const circuits = sampledRuns(1500);
  let repairs = 0;
  fc.assert(
    fc.property(anyInput, (input) => {
      const records = [{ word: "circuit" as const, input, fallbackName: "plan.ts line 1" }];
      const before = judge(records, []).findings;
      for (const finding of before) {
        for (const fix of finding.fixes) {
          if (fix.kind === "repair") repairs += 1;
          expect(faultsOfFix(fix, finding, { records, problems: [], before })).toEqual([]);
        }
      }
    }),
    { numRuns: circuits },
  );
  expect(repairs).toBeGreaterThan(circuits);
});

test("every message, on any circuit, is one plain sentence or two of numbers that mean something", () => {
  fc.assert(
    fc.property(anyInput, (input) => {
      const { findings } = judge([{ word: "circuit", input, fallbackName: "plan.ts line 1" }], []);
      for (const finding of findings) {
        const message = ruleById(finding.rule)!.message(finding.values);
        expect(message).not.toMatch(/undefined|NaN|Infinity|∞|\[object|\d\.\d{10,}/);
        expect(message).toMatch(/^[A-Za-z0-9].*[.?]$/);
        expect(message.length).toBeLessThan(250);
      }
    }),
    { numRuns: sampledRuns(2000) },
  );
});
