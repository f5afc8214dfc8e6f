import { beforeEach, describe, expect, test } from "vitest";
import { judge } from "./judge.ts";
import { recordsOf } from "./model/sample-plan.tester.ts";
import { battery, busBar, cable, circuit } from "./plan/index.ts";
import { continueNumberingAt } from "./plan/numbering.ts";
import { messageOf } from "./rules/message-of.ts";

beforeEach(() => continueNumberingAt(0));

/** Two batteries side by side; a load of 120 A behind them; leads of 8 AWG, whose ampacity is below 120 A and above 75 A. */
function twoBatteries({ firstM, loadA = 120 }: { readonly firstM?: number; readonly loadA?: number }) {
  const facts = { chemistry: "AGM", capacityAh: 200, internalMilliohm: 4, maxDischargeA: 100 } as const;
  const one = battery({ name: "one", ...facts });
  const two = battery({ name: "two", ...facts });
  const plus = busBar({ name: "plus" });
  const minus = busBar({ name: "minus", side: "negative" });
  const lead = { gauge: 8, insulationC: 105 } as const;
  const fused = { ...lead, protect: 100 } as const;
  return judge(
    recordsOf([
      ...[one, two, plus, minus],
      cable({
        name: "first",
        from: one.positive,
        to: plus.stud,
        ...(firstM !== undefined && { lengthM: firstM }),
        ...fused,
      }),
      cable({ name: "second", from: two.positive, to: plus.stud, lengthM: 1, ...fused }),
      cable({ name: "first back", from: minus.stud, to: one.negative, lengthM: 1, ...lead }),
      cable({ name: "second back", from: minus.stud, to: two.negative, lengthM: 1, ...lead }),
      circuit({
        name: "winch",
        from: plus.stud,
        returnTo: minus.stud,
        load: loadA,
        oneWayM: 1,
        gauge: "2/0",
        insulationC: 105,
        protect: 400,
      }),
    ]),
    [],
  );
}

const ofShares = ["conductor/ampacity", "protection/below-load", "battery/discharge-current"];

function found(judgement: ReturnType<typeof judge>) {
  return judgement.findings.filter(({ rule }) => ofShares.includes(rule));
}

describe("a current that divides by an unknown length", () => {
  test("with every length stated, no lead carries too much", () => {
    expect(found(twoBatteries({ firstM: 1 }))).toEqual([]);
  });

  test("without a length, all of the current on one lead is information, not an error, and proposes no fix", () => {
    const findings = found(twoBatteries({}));
    expect(new Set(findings.map(({ rule }) => rule))).toEqual(new Set(ofShares));
    for (const finding of findings) {
      expect(finding).toMatchObject({
        severity: "info",
        isUndivided: true,
        fixes: [],
        followsFrom: { rule: "conductor/no-length", subject: "first" },
      });
      expect(messageOf(finding)).toMatch(/^Not judged, a length is not known; at most: /);
    }
  });

  test("that exceeds a limit however it divides is an error as before", () => {
    const findings = found(twoBatteries({ loadA: 400 })).filter(({ isUndivided }) => !isUndivided);
    expect(findings.map(({ rule }) => rule)).toEqual(expect.arrayContaining(ofShares));
    expect(findings.some(({ severity }) => severity === "error")).toBe(true);
  });
});
