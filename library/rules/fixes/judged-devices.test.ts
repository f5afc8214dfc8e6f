import fc from "fast-check";
import { expect, it, test } from "vitest";
import { sampledRuns } from "../../../tests/setup/sampled.ts";
import { judge } from "../../judge.ts";
import type { Finding } from "../finding.ts";
import { applyFix, recordsOf } from "../rule.tester.ts";
import { statedWithUnit } from "./judged-devices.ts";

test.each([
  [50, "50 A"],
  [7.5, "7.5 A"],
  [130.5, "130.5 A"],
  [5999, "5,999 A"],
  [50.0001, "50.0001 A"],
  [0.1 + 0.2, "0.3 A"],
])("a rating given as %d is shown as %s", (given, text) => {
  expect(statedWithUnit(given, "A")).toBe(text);
});

const rating = fc.oneof(
  fc.constantFrom(1, 5, 7.5, 10, 15, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 100, 125, 150, 200, 300, 500),
  fc.integer({ min: 1, max: 6000 }),
);

/** Without a family, of families that end early and late, and of one that begins late. */
const family = fc.constantFrom(
  undefined,
  "ISO 8820-3 Type F",
  "ISO 8820-3 Type E",
  "ISO 8820-5 Type SF 51",
  "UL 248-15 Class T",
  "circuit breaker",
);

const protection = fc.oneof(
  fc.constant(undefined),
  rating,
  fc.record({ ratingA: rating, family, distanceIn: fc.integer({ min: 0, max: 90 }) }),
);

const circuit = fc.record({
  load: fc.oneof(fc.integer({ min: 1, max: 300 }), fc.double({ min: 0.1, max: 120, noNaN: true })),
  oneWayFt: fc.integer({ min: 1, max: 30 }),
  gauge: fc.constantFrom(18, 16, 14, 12, 10, 8, 6, 4, 2, 1, "1/0", "4/0"),
  insulationC: fc.constantFrom(60, 75, 90, 105),
  protect: protection,
  protectFarEnd: protection,
  fedFromBothEnds: fc.boolean(),
  continuous: fc.boolean(),
  engineSpace: fc.boolean(),
  critical: fc.boolean(),
  sheathed: fc.boolean(),
  parallel: fc.constantFrom(1, 1, 2),
  ambientC: fc.constantFrom(undefined, 20, 45, 60, 80),
});

it("proposes only repairs that take the finding away and bring nothing new, whatever else is wrong", () => {
  let proved = 0;
  fc.assert(
    fc.property(circuit, (input) => {
      const records = recordsOf({ circuits: [input] });
      const findings = judge(records, []).findings;
      const before = findings.map(complaint);
      for (const finding of findings.filter(({ rule }) => rule.startsWith("protection/"))) {
        for (const fix of finding.fixes.filter(({ kind }) => kind === "repair")) {
          const after = judge(applyFix(records, fix), []).findings.map(complaint);
          expect(after, fix.title).not.toContain(complaint(finding));
          expect(
            after.filter((now) => !before.includes(now)),
            fix.title,
          ).toEqual([]);
          proved++;
        }
      }
    }),
    { numRuns: sampledRuns(500) },
  );
  expect(proved, "repairs proved").toBeGreaterThan(100);
});

function complaint({ rule, severity, at }: Finding): string {
  return `${rule} (${severity}) on ${JSON.stringify(at)}`;
}
