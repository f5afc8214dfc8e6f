import { describe, expect, it } from "vitest";
import { oneWayM } from "../../library/analysis/copper-area.ts";
import { judge } from "../../library/judge.ts";
import { published } from "./published-data.ts";

/**
 * The engine against a second one: written separately, in another language, from the reference data in this folder and the
 * formulas on the rules' pages. Neither proves the other right; a slip in one of them shows.
 */
const { cases } = published<{ readonly cases: readonly Case[] }>("oracle-circuits.json");

interface Case {
  readonly build: object;
  readonly circuit: object;
  readonly answers: {
    readonly loadA: number;
    /** For ampacity and ratings: a load in watts at the lowest voltage at which it works. */
    readonly designA: number;
    readonly systemV: number;
    readonly lengthOneWayM: number;
    /** null: the place is too hot for the insulation. */
    readonly ampacityA: number | null;
    readonly dropV: number;
    readonly dropPercent: number;
    readonly dropLimitPercent: number;
    readonly conductorC: number;
    /** "conductor/ampacity error", sorted. Doubts about units are left out. */
    readonly findings: readonly string[];
  };
}

describe("circuits worked out twice", () => {
  it("are many, and faulty in every way", () => {
    expect(cases).toHaveLength(160);
    expect(new Set(cases.flatMap(({ answers }) => answers.findings)).size).toBe(22);
  });

  for (const [index, { build, circuit, answers }] of cases.entries()) {
    it(`${index + 1}: ${JSON.stringify({ ...build, ...circuit })}`, () => {
      const plan = judge(
        [
          { word: "build", input: build, fallbackName: "the build" },
          { word: "circuit", input: circuit, fallbackName: "the circuit" },
        ],
        [],
      );
      const [judged] = plan.circuits;
      if (!judged) throw new Error("The circuit was not judged.");
      const { ampacity, drop, protection } = judged.result;
      expectSame(judged.circuit.loadA, answers.loadA);
      expectSame(judged.circuit.systemV, answers.systemV);
      expectSame(oneWayM(judged.circuit) ?? null, answers.lengthOneWayM);
      expectSame(ampacity.judged ? ampacity.ampacityA : null, answers.ampacityA);
      expectSame(protection.minA, answers.designA);
      expectSame(protection.maxA ?? null, answers.ampacityA);
      expectSame(drop.judged ? drop.dropV : null, answers.dropV);
      expectSame(drop.judged ? drop.dropPercent : null, answers.dropPercent);
      expectSame(drop.dropLimitPercent, answers.dropLimitPercent);
      expectSame(drop.conductorC, answers.conductorC);
      const findings = plan.findings.map(({ rule, severity }) => `${rule} ${severity}`);
      expect(findings.filter((found) => !found.startsWith("plan/")).sort()).toEqual(answers.findings);
    });
  }
});

/** Equal except for the order of the operations, and for the 1e-9 A to which the engine rounds currents. */
function expectSame(actual: number | null, expected: number | null): void {
  if (actual === null || expected === null) expect(actual).toBe(expected);
  else expect(Math.abs(actual - expected)).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(expected)));
}
