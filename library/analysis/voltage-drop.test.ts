import { describe, expect, test } from "vitest";
import { dropLimitOf } from "../model/read-run.ts";
import type { CircuitRun, Measured } from "../model/run.ts";
import { analyseCircuit } from "./analyse-circuit.ts";
import { conductorTemperatureC } from "./conductor-temperature.ts";
import { resistanceAt, wireResistance } from "./resistance.ts";
import { sampleCircuit } from "./sample-circuit.tester.ts";

const drop = (change: Partial<Measured<CircuitRun>>) => analyseCircuit(sampleCircuit(change)).drop;

test("worked by hand: 40 A, 15 ft one way, 4 AWG, 75 °C insulation", () => {
  const result = drop({});
  // 30 + (75 − 30) · (40 / 125)² = 34.608 °C
  expect(result.conductorC).toBeCloseTo(34.608, 9);
  // 0.8152 Ω/km · 1.02 · (1 + 0.00393 · 14.608) · 9.144 m = 8.0398 mΩ
  expect(result.roundTripOhm).toBeCloseTo(0.0080398, 6);
  // · 40 A = 0.32159 V, of 12 V 2.680 %
  expect(result.dropV).toBeCloseTo(0.32159, 5);
  expect(result.dropPercent).toBeCloseTo(2.67992, 5);
  expect(result.arrivingV).toBeCloseTo(11.67841, 5);
  expect(result.overloaded).toBe(false);
});

test("worked by hand: 20 A over 5 m and 3 m of 6 mm², 24 V", () => {
  const result = drop({
    loadA: 20,
    systemV: 24,
    positiveM: 5,
    negativeM: 3,
    conductor: { parallel: 1, system: "metric", mm2: 6 },
  });
  // Column 70 °C, 45 A: 30 + 40 · (20 / 45)² = 37.901 °C; 3.30 Ω/km · (1 + 0.00393 · 17.901) · 8 m = 28.257 mΩ
  expect(result.conductorC).toBeCloseTo(37.901, 3);
  expect(result.roundTripM).toBe(8);
  expect(result.strandFactor).toBe(1);
  expect(result.dropV).toBeCloseTo(0.56515, 4);
  expect(result.dropPercent).toBeCloseTo(2.3548, 3);
});

describe("the temperature of the conductor", () => {
  test.each([
    [0, 30],
    [62.5, 41.25],
    [125, 75],
    [250, 210],
  ])("at %d A on an ampacity of 125 A", (currentA, conductorC) => {
    const temperature = conductorTemperatureC({ ambientC: 30, ratingC: 75, currentA, ampacityA: 125 });
    expect(temperature).toBe(conductorC);
  });

  test.each([
    ["at the ampacity", 125, 75, false],
    ["just over it", 125.1, 75, true],
    ["twice", 250, 75, true],
  ])(
    "%s the resistance is taken at the insulation's rating at most",
    (_, loadA, resistanceAtC, overloaded) => {
      const result = drop({ loadA });
      expect(result.resistanceAtC).toBe(resistanceAtC);
      expect(result.overloaded).toBe(overloaded);
    },
  );

  test("in a place that is too hot the drop is at least the one of wire as warm as the place", () => {
    const result = drop({ ambientC: 90, ambientStated: true });
    expect(result).toMatchObject({ conductorC: 90, resistanceAtC: 90, overloaded: true });
  });
});

test("copper's resistance rises by 0.393 % a kelvin from 20 °C", () => {
  expect(resistanceAt(2, 20)).toBe(2);
  expect(resistanceAt(2, 120)).toBeCloseTo(2.786, 12);
});

test("two wires in parallel halve the resistance of the round trip", () => {
  const one = drop({ loadA: 40 });
  const two = drop({ loadA: 80, conductor: { parallel: 2, system: "awg", awg: 4 } });
  expect(two.conductorC).toBeCloseTo(one.conductorC, 9);
  expect(two.roundTripOhm).toBeCloseTo(one.roundTripOhm / 2, 12);
  expect(two.dropV).toBeCloseTo(one.dropV, 12);
});

test("strands are allowed for where the table is for solid wire", () => {
  expect(wireResistance({ parallel: 1, system: "awg", awg: 10 })).toMatchObject({
    ohmPerM20C: (3.277 / 1000) * 1.02,
    strandFactor: 1.02,
  });
});

describe("where the limit comes from", () => {
  test.each([
    ["critical", { critical: true }, {}, "standard"],
    ["ordinary", {}, {}, "common practice"],
    ["stated", { dropLimitPercent: 5 }, {}, "stated in the plan"],
    ["stated, and the usual one", { dropLimitPercent: 10 }, {}, "stated in the plan"],
    ["stated by the build", {}, { dropPercent: 5 }, "stated in the plan"],
    ["critical, and the build states the other one", { critical: true }, { dropPercent: 5 }, "standard"],
  ])("%s", (_, values, build, authority) => {
    expect(drop(dropLimitOf(values, build)).dropLimitSource.authority).toBe(authority);
  });
});
