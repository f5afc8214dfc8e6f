import { describe, expect, test } from "vitest";
import { analyseCircuit } from "../../library/analysis/analyse-circuit.ts";
import { resistanceAt, wireResistance } from "../../library/analysis/resistance.ts";
import { roundTripResistance, voltageDropV } from "../../library/analysis/voltage-drop.ts";
import type { Conductor } from "../../library/model/run.ts";
import { chosenAwg, circuitOf, sameOrOneLarger } from "./chosen-size.ts";
import { asInAPlan, type Confirmed, metresPerFoot, ohmPerM, published } from "./published-data.ts";

/*
 * Worked examples from books, lessons and a table of losses. Each uses its own resistance or constant, so the arithmetic must
 * give the printed result, to half a unit of the last figure printed. If the library's own tables choose a size, it must be the
 * book's or the next one up.
 */
const { cases } = published<{ cases: Example[] }>("voltage-drop-examples.json");

const checks: Readonly<Record<string, (example: Example) => void>> = {
  // Treatise on Architecture and Building Construction, vol. 3, Electric-Light Wiring, art. 61. Printed to 3 figures.
  "COL-61": ({ input, expected }) => {
    const { current_A: currentA, one_way_ft: oneWayFt, allowed_drop_V: allowedDropV } = input;
    const ohm = roundTrip(ohmPerM(expected.max_ohm_per_kft), 2 * oneWayFt);
    expect(currentA).toBe(input.lamps * input.amps_per_lamp);
    expect(Math.abs(voltageDropV(currentA, ohm) - allowedDropV)).toBeLessThan(
      (allowedDropV * 0.00005) / 0.0813,
    );
    expectSize({ systemV: 110, currentA, roundTripFt: 2 * oneWayFt, allowedDropV }, expected.wire_awg);
  },
  // The same, art. 62. 3 AWG is not commonly made: the library takes 2.
  "COL-62": ({ input, expected }) => {
    const { current_A: currentA, one_way_ft: oneWayFt, allowed_drop_V: allowedDropV } = input;
    const ohm = roundTrip(ohmPerM(expected.max_ohm_per_kft), 2 * oneWayFt);
    expect(Math.abs(voltageDropV(currentA, ohm) - allowedDropV)).toBeLessThan(
      (allowedDropV * 0.0005) / 0.202,
    );
    expectSize({ systemV: 110, currentA, roundTripFt: 2 * oneWayFt, allowedDropV }, expected.wire_awg);
  },
  // The same, The Ohm, before art. 11: 0.396 Ω. The book's 0.259 is for copper warmer than 20 °C: only its arithmetic.
  "COL-10": ({ input, expected }) => {
    const ohm = roundTripResistance({
      ohmPerM: ohmPerM(input.ohm_per_kft),
      roundTripM: input.length_ft * metresPerFoot,
      parallel: 1,
    });
    expect(Math.abs(ohm - expected.ohm)).toBeLessThan(0.0005);
  },
  // The same, art. 11: three times the area, a third of the resistance; three wires side by side are just that.
  "COL-11": ({ input, expected }) => {
    const ohm = roundTripResistance({
      ohmPerM: input.ohm_per_kft,
      roundTripM: 1,
      parallel: input.area_factor,
    });
    expect(Math.abs(ohm - expected.ohm_per_kft)).toBeLessThan(0.0005);
  },
  // Bluebook of Projection, 1935, p. 67, item 19: K = 10.5 Ω·cmil/ft, area printed cut off after the point (1 in 38,181).
  "RBB-19": ({ input, expected }) => {
    const { system_V: systemV, current_A: currentA, one_way_ft: oneWayFt } = input;
    const allowedDropV = (input.allowed_drop_percent / 100) * systemV;
    const ohm = roundTrip(10.5 / expected.area_cmil / metresPerFoot, 2 * oneWayFt);
    expect(Math.abs(voltageDropV(currentA, ohm) / allowedDropV - 1)).toBeLessThan(1 / expected.area_cmil);
    expectSize({ systemV, currentA, roundTripFt: 2 * oneWayFt, allowedDropV }, expected.wire_awg);
  },
  // The same, p. 66, item 17: out and back, 21 for the pair. Exact except for the last bits of a binary fraction.
  "RBB-17": ({ expected }) => {
    expect(roundTrip(10.5 / metresPerFoot, 2)).toBeCloseTo(expected.K_pair, 12);
  },
  // OpenStax, College Physics for AP Courses, ch. 20: 20 m of 2.053 mm, ρ = 1.72e-8 Ω·m; printed 0.104 Ω. 2.053 mm is
  // 12 AWG, whose row in the library's table must give the same.
  "OSX-3": ({ input, expected }) => {
    const areaM2 = (Math.PI / 4) * (input.diameter_mm / 1000) ** 2;
    const book = { ohmPerM: 1.72e-8 / areaM2, roundTripM: input.length_m, parallel: 1 };
    expect(Math.abs(roundTripResistance(book) - expected.ohm)).toBeLessThan(0.0005);
    const wire = wireAt(12);
    const own = { ohmPerM: wire.ohmPerM20C / wire.strandFactor, roundTripM: input.length_m, parallel: 1 };
    expect(Math.abs(roundTripResistance(own) - expected.ohm)).toBeLessThan(0.0005);
  },
  // The same: at −17 °C a copper and an iron resistor are equal. The book takes 3.9e-3 for copper and prints whole
  // degrees; with 3.93e-3 the two differ by less than iron does over one degree (0.0026 Ω).
  "OSX-3T": ({ input, expected }) => {
    const copper = resistanceAt(input.copper_ohm_20C, expected.degC);
    const ironAt = (degC: number) => input.iron_ohm_20C * (1 + 0.005 * (degC - 20));
    expect(Math.abs(copper - ironAt(expected.degC))).toBeLessThan(ironAt(1) - ironAt(0));
  },
  // The same, a starter motor: 11.0 V, 150 A, printed 0.0733 Ω; 0.00005 Ω at 150 A are 0.0075 V.
  "OSX-2a": ({ input, expected }) => {
    expect(Math.abs(voltageDropV(input.current_A, expected.ohm) - input.voltage_V)).toBeLessThan(0.0075);
  },
  // The same, an extension cord (a) and (b): exact products.
  "OSX-2b": ({ input, expected }) => {
    expect(voltageDropV(input.current_A, input.ohm)).toBeCloseTo(expected.drop_V, 12);
  },
  "OSX-2c": ({ input, expected }) => {
    expect(voltageDropV(input.current_A, input.ohm)).toBeCloseTo(expected.drop_V, 12);
  },
  // Training lesson on NEC Chapter 9, Table 8: 16 AWG, 4 A, 100 ft one way, 24 V. It rounds 3.992 V to 4.0 before it
  // takes the percentage (16.7; unrounded 16.6), so the percentage may be off by 0.05 V of 24 V.
  "EL2-16": ({ input, expected }) => {
    const dropV = voltageDropV(
      input.current_A,
      roundTrip(ohmPerM(input.ohm_per_kft), 2 * input.length_one_way_ft),
    );
    expect(Math.abs(dropV - expected.drop_V)).toBeLessThan(0.05);
    expect(Math.abs((100 * dropV) / input.system_V - expected.drop_percent)).toBeLessThan((100 * 0.05) / 24);
    // The library's own wire at 75 °C: the strand factor 1.02 represents 1.022 in that row.
    const own = voltageDropV(input.current_A, roundTrip(resistanceAt(wireAt(16).ohmPerM20C, 75), 200));
    expect(Math.abs(own / dropV - 1)).toBeLessThan(0.005);
  },
  // Hawkins Electrical Guide, vol. 4, formula (5): 21.6 Ω·cmil/ft for the pair gives 201,600 cmil, hence 4/0. There is
  // no larger made size: stranded and warm, 4/0 misses the book's 7.5 V by a few per cent, and 3/0 by far more.
  "HAW-5": ({ input, expected }) => {
    const { system_V: systemV, current_A: currentA, one_way_ft: oneWayFt } = input;
    const ohm = roundTrip(21.6 / 2 / expected.area_cmil / metresPerFoot, 2 * oneWayFt);
    expect(voltageDropV(currentA, ohm)).toBeCloseTo(expected.drop_V, 9);
    expect(expected.drop_V).toBe((input.allowed_drop_percent / 100) * systemV);
    const run = { systemV, currentA, roundTripFt: 2 * oneWayFt, allowedDropV: expected.drop_V };
    const dropWith = (awg: "3/0" | "4/0") =>
      analyseCircuit({ ...circuitOf(run), conductor: { parallel: 1, system: "awg", awg } }).drop.dropV;
    expect(chosenAwg(run)).toBeUndefined();
    expect(dropWith("4/0") / expected.drop_V).toBeLessThan(1.03);
    expect(dropWith("3/0") / expected.drop_V).toBeGreaterThan(1.25);
  },
  "REW-12": lossCase,
  "REW-10": lossCase,
  "REW-8": lossCase,
  "REW-6": lossCase,
  "REW-4": lossCase,
};

describe.each(cases)("$id: $source", (example) => {
  test("comes out as printed", () => {
    expect(["read", "computed"]).toContain(example.confirmed);
    const check = checks[example.id];
    if (!check) throw new Error(`No check is written for ${example.id}.`);
    check(example);
  });
});

test("every check has its example", () => {
  expect(Object.keys(checks).sort()).toEqual(cases.map(({ id }) => id).sort());
});

// Professional installers' mailing list, 8 April 2010, table of losses: I² · R over the pair at 75 °C, percent of 3500 W. Losses
// are printed in whole watts (4 AWG: 32 W, ±1.6 %) and follow NEC Chapter 9, Table 8, whose solid and stranded figures differ: 4
// % in all.
function lossCase({ input, expected }: Example): void {
  const awg = Number(input.awg) as 12 | 10 | 8 | 6 | 4;
  const ohm = roundTrip(resistanceAt(wireAt(awg).ohmPerM20C, 75), 2 * input.one_way_ft);
  const dropV = voltageDropV(input.current_A, ohm);
  expect(Math.abs((dropV * input.current_A) / expected.loss_W - 1)).toBeLessThan(0.04);
  // The percentage is that of the loss, rounded once more to 0.1.
  expect(Math.abs((100 * dropV) / input.system_V - expected.drop_percent)).toBeLessThan(
    0.04 * expected.drop_percent + 0.05,
  );
}

function roundTrip(ohmPerMetre: number, roundTripFt: number): number {
  return roundTripResistance({ ohmPerM: ohmPerMetre, roundTripM: roundTripFt * metresPerFoot, parallel: 1 });
}

function wireAt(awg: Extract<Conductor, { system: "awg" }>["awg"]) {
  const wire = wireResistance({ parallel: 1, system: "awg", awg });
  if (!wire) throw new Error(`No resistance for ${awg} AWG.`);
  return wire;
}

function expectSize(run: Parameters<typeof chosenAwg>[0], bookAwg: string): void {
  expect(sameOrOneLarger(asInAPlan(bookAwg))).toContain(chosenAwg(run));
}

interface Example {
  id: string;
  source: string;
  confirmed: Confirmed;
  input: Record<InputNumber, number> & { awg: string };
  expected: Record<ExpectedNumber, number> & { wire_awg: string };
}

type InputNumber =
  | "system_V"
  | "voltage_V"
  | "current_A"
  | "lamps"
  | "amps_per_lamp"
  | "one_way_ft"
  | "length_one_way_ft"
  | "length_ft"
  | "length_m"
  | "diameter_mm"
  | "allowed_drop_V"
  | "allowed_drop_percent"
  | "ohm"
  | "ohm_per_kft"
  | "area_factor"
  | "copper_ohm_20C"
  | "iron_ohm_20C";

type ExpectedNumber =
  | "max_ohm_per_kft"
  | "ohm_per_kft"
  | "ohm"
  | "area_cmil"
  | "K_pair"
  | "degC"
  | "drop_V"
  | "drop_percent"
  | "loss_W";
