import { describe, expect, test } from "vitest";
import type { CircuitRun } from "../model/run.ts";
import { ambientFactor, ampacityOf, deratedA } from "./ampacity.ts";
import { sampleCircuit } from "./sample-circuit.tester.ts";

const awg4 = { parallel: 1, system: "awg", awg: 4 } as const;
const mm16 = { parallel: 1, system: "metric", mm2: 16 } as const;

describe("the column is the stated insulation's, or the next cooler one", () => {
  test.each([
    [awg4, 60, 60, 105],
    [awg4, 70, 60, 105],
    [awg4, 75, 75, 125],
    [awg4, 80, 80, 130],
    [awg4, 85, 80, 130],
    [awg4, 90, 90, 135],
    [awg4, 105, 105, 160],
    [awg4, 125, 125, 170],
    [awg4, 200, 200, 180],
    [mm16, 60, 60, 54],
    [mm16, 70, 70, 90],
    [mm16, 75, 70, 90],
    [mm16, 80, 70, 90],
    [mm16, 85, 85, 100],
    [mm16, 90, 85, 100],
    [mm16, 105, 105, 130],
    [mm16, 125, 125, 150],
    [mm16, 200, 200, 170],
  ] as const)("%o with insulation of %i °C", (conductor, insulationC, columnC, tableA) => {
    const ampacity = ampacityOf(sampleCircuit({ conductor, insulationC }));
    expect(ampacity).toMatchObject({ judged: true, columnC, tableA, ampacityA: tableA, factors: [] });
  });
});

describe("the coolest terminal decides", () => {
  // NFPA 70, 110.14(C): factors start from the column of the insulation, and the result is at most the terminal's column.
  // 33 CFR 183.425 Table 5: 4 AWG carries 105 A at 60 °C, 125 A at 75 °C, 135 A at 90 °C, 160 A at 105 °C.
  test.each([
    ["no rating stated", awg4, {}, 160, undefined],
    ["75 °C", awg4, { coolestTerminal: { ratedC: 75 } }, 125, 75],
    ["60 °C", awg4, { coolestTerminal: { ratedC: 60 } }, 105, 60],
    ["as hot as the insulation", awg4, { coolestTerminal: { ratedC: 105 } }, 160, undefined],
    ["two wires", { ...awg4, parallel: 2 }, { coolestTerminal: { ratedC: 75 } }, 250, 75],
    // 160 A · √((105 − 60) / (105 − 30)) = 123.9 A by the insulation is the lesser.
    [
      "a place so hot that the insulation decides",
      awg4,
      { coolestTerminal: { ratedC: 75 }, ambientC: 60, ambientStated: true },
      160 * Math.sqrt(45 / 75),
      undefined,
    ],
    // A warm place lowers the ampacity of the insulation, not that of the terminal: 160 A · √(65 / 75) = 149 A.
    [
      "a place not hot enough for that",
      awg4,
      { coolestTerminal: { ratedC: 75 }, ambientC: 40, ambientStated: true },
      125,
      75,
    ],
    // The metric table has no column of 75 °C.
    ["metric", mm16, { coolestTerminal: { ratedC: 75 } }, 90, 70],
  ] as const)("%s", (_, conductor, change, ampacityA, columnC) => {
    const run = { conductor, insulationC: 105, ...change } as Partial<CircuitRun>;
    const ampacity = ampacityOf(sampleCircuit(run));
    if (!ampacity.judged) throw new Error("not judged");
    expect(ampacity.ampacityA).toBeCloseTo(ampacityA, 9);
    expect(ampacity.terminal?.columnC).toBe(columnC);
    // The insulation alone determines how hot the conductor gets.
    expect(ampacity.columnC).toBe(105);
  });
});

describe("the place", () => {
  const hotter = (ambientC: number): Partial<CircuitRun> => ({ ambientC, ambientStated: true });
  const engineSpace = { engineSpace: true };
  test.each([
    ["nothing stated", awg4, {}, 125, 30, []],
    // 33 CFR 183.425, Table 5, note 1: 0.75 for 75 °C insulation.
    ["engine space, AWG", awg4, engineSpace, 93.75, 50, ["engine-space"]],
    // The recalled 0.75 is not trusted alone: 90 A · √((70 − 60) / (70 − 30)) = 45 A is less than 67.5 A.
    ["engine space, metric", mm16, engineSpace, 45, 60, ["ambient"]],
    ["engine space, metric, stated cooler", mm16, { ...engineSpace, ...hotter(35) }, 45, 60, ["ambient"]],
    // √((75 − 40) / (75 − 30))
    ["40 °C", awg4, hotter(40), 125 * Math.sqrt(35 / 45), 40, ["ambient"]],
    ["just under the base", awg4, hotter(29.9), 125, 29.9, ["ambient"]],
    ["at the base", awg4, hotter(30), 125, 30, ["ambient"]],
    ["just above the base", awg4, hotter(30.1), 125 * Math.sqrt(44.9 / 45), 30.1, ["ambient"]],
    // In an engine space the smaller factor counts, and never their product.
    ["engine space, cooler", awg4, { ...engineSpace, ...hotter(40) }, 93.75, 50, ["engine-space"]],
    [
      "engine space, hotter",
      awg4,
      { ...engineSpace, ...hotter(60) },
      125 * Math.sqrt(15 / 45),
      60,
      ["ambient"],
    ],
    // The equation for the stated 40 °C is below the note's 1.00; the engine space stays as warm as the note takes it.
    [
      "engine space, 200 °C insulation, a stated ambient cooler than the space",
      awg4,
      { ...engineSpace, insulationC: 200, ...hotter(40) },
      180 * Math.sqrt(160 / 170),
      50,
      ["ambient"],
    ],
    // The note's factor for 200 °C insulation is 1: the plan states engine space, so it is listed.
    [
      "engine space, 200 °C insulation",
      awg4,
      { ...engineSpace, insulationC: 200 },
      180,
      50,
      ["engine-space"],
    ],
  ] as const)("%s", (_, conductor, change, ampacityA, ambientC, factors) => {
    const ampacity = ampacityOf(sampleCircuit({ conductor, ...change } as Partial<CircuitRun>));
    if (!ampacity.judged) throw new Error("not judged");
    expect(ampacity.ampacityA).toBeCloseTo(ampacityA, 8);
    expect(ampacity.ambientC).toBe(ambientC);
    expect(ampacity.factors.map(({ what }) => what)).toEqual(factors);
  });

  test.each([
    ["just cooler than the insulation", { ...hotter(74.9) }, true],
    ["as hot as the insulation", { ...hotter(75) }, false],
    ["hotter than the insulation", { ...hotter(75.1) }, false],
    ["as hot as the column, cooler than the insulation", { insulationC: 70, ...hotter(60) }, false],
    ["metric of 60 °C in an engine space", { insulationC: 60, conductor: mm16, ...engineSpace }, false],
    ["AWG of 60 °C in an engine space", { insulationC: 60, ...engineSpace }, true],
  ] as const)("%s", (_, change, judged) => {
    const ampacity = ampacityOf(sampleCircuit(change as Partial<CircuitRun>));
    expect(ampacity.judged).toBe(judged);
    if (!ampacity.judged) expect(ampacity.why).toBe("place-too-hot");
  });
});

describe("conductors bundled together, this one included", () => {
  test.each([
    // 33 CFR 183.425, Table 5, note 2.
    [awg4, 1, 1],
    [awg4, 2, 1],
    [awg4, 3, 0.7],
    [awg4, 4, 0.6],
    [awg4, 6, 0.6],
    [awg4, 7, 0.5],
    [awg4, 24, 0.5],
    [awg4, 25, 0.4],
    [awg4, 100, 0.4],
    [mm16, 3, 1],
    [mm16, 4, 0.7],
    [mm16, 6, 0.7],
    [mm16, 7, 0.6],
    [mm16, 24, 0.6],
    [mm16, 25, 0.5],
  ] as const)("%o, %i together", (conductor, together, factor) => {
    const ampacity = ampacityOf(sampleCircuit({ conductor, bundledWith: together - 1 }));
    if (!ampacity.judged) throw new Error("not judged");
    expect(ampacity.ampacityA).toBeCloseTo(ampacity.tableA * factor, 9);
    expect(ampacity.factors.map(({ input }) => input)).toEqual(factor === 1 ? [] : [together]);
  });
});

test("parallel wires count together", () => {
  const ampacity = ampacityOf(sampleCircuit({ conductor: { ...awg4, parallel: 3 }, bundledWith: 5 }));
  // Three wires each way are six conductors together: 33 CFR 183.425, Table 5, note 2 has 0.60.
  expect(ampacity).toMatchObject({ parallel: 3, tableA: 125, ampacityA: 3 * 125 * 0.6 });
});

test("factors leave no dust of binary fractions behind", () => {
  expect(25 * 0.58).not.toBe(14.5);
  expect(deratedA({ tableA: 25, parallel: 1, factors: [{ factor: 0.58 }] })).toBe(14.5);
});

test("the ambient factor is never above 1", () => {
  expect(ambientFactor(75, -20)).toBe(1);
});

test("an unconfirmed figure says so", () => {
  const of = (change: Partial<CircuitRun>) => ampacityOf(sampleCircuit(change));
  expect(of({ conductor: awg4 }).source.confirmed).toBe("read");
  expect(of({ conductor: mm16 }).source.confirmed).toBe("memory");
  const warm = of({ ambientC: 40, ambientStated: true });
  if (!warm.judged) throw new Error("not judged");
  expect(warm.factors[0]?.source.confirmed).toBe("read");
  const hot = of({ conductor: mm16, engineSpace: true });
  if (!hot.judged) throw new Error("not judged");
  expect(hot.source.confirmed).toBe("memory");
});
