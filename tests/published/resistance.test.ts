import { describe, expect, test } from "vitest";
import { resistanceAt, wireResistance } from "../../library/analysis/resistance.ts";
import type { Conductor } from "../../library/model/run.ts";
import { strandFactor, temperatureCoefficient } from "../../library/standards/copper.ts";
import { resistanceOfAwg } from "../../library/standards/resistance-awg.ts";
import { resistanceOfClass5 } from "../../library/standards/resistance-iec60228.ts";
import { asInAPlan, type Confirmed, expectSameCells, ohmPerM, published } from "./published-data.ts";

const awgData = published<AwgData>("awg.json");

describe("resistance of AWG sizes at 20 °C", () => {
  test("all 15 sizes are as in the reference data", () => {
    expectSameCells(
      new Map(resistanceOfAwg.rows.map(({ awg, solidOhmPerKm20C }) => [`${awg} AWG`, solidOhmPerKm20C])),
      new Map(
        awgData.rows.map(({ awg, solid_ohm_per_km_20C }) => [`${asInAPlan(awg)} AWG`, solid_ohm_per_km_20C]),
      ),
      15,
    );
    expect(awgData.rows.every(({ confirmed }) => confirmed === "computed")).toBe(true);
    expect(resistanceOfAwg.source.confirmed).toBe("computed");
  });

  // ASTM B258: d = 0.005 in · 92^((36 − n) / 39); annealed copper standard (IEC 60028): 1/58 Ω·mm²/m at 20 °C.
  // The table is rounded to four figures: half a unit in the fourth is at most 5 parts in 10,000.
  test.each(awgData.rows)("$awg AWG follows from its diameter", ({ awg, n }) => {
    const diameterMm = 0.005 * 25.4 * 92 ** ((36 - n) / 39);
    const ohmPerKm = 1000 / 58 / ((Math.PI / 4) * diameterMm ** 2);
    const row = resistanceOfAwg.rows.find((candidate) => candidate.awg === asInAPlan(awg));
    expect(Math.abs((row?.solidOhmPerKm20C ?? 0) / ohmPerKm - 1)).toBeLessThan(5e-4);
  });

  // A second table of wire sizes that was read, 4/0 to 6 AWG, Ω per 1000 ft at 20 °C, printed to three or four figures; 0.2 % is
  // the largest difference found between it and the formula, from its three-figure cells.
  const secondTable = awgData.rows.filter((row) => row.second_table_ohm_per_kft_20C?.confirmed === "read");
  test.each(secondTable)("$awg AWG agrees with a second table", ({ awg, second_table_ohm_per_kft_20C }) => {
    const row = resistanceOfAwg.rows.find((candidate) => candidate.awg === asInAPlan(awg));
    const printed = ohmPerM(second_table_ohm_per_kft_20C?.value ?? 0) * 1000;
    expect(Math.abs((row?.solidOhmPerKm20C ?? 0) / printed - 1)).toBeLessThan(0.002);
  });
  test("nine of its ten sizes are ours", () => expect(secondTable).toHaveLength(9));

  // NFPA 70, Chapter 9, Table 8, 75 °C, stranded uncoated, read in two transcriptions. The strand factor of 1.02 represents 1.018
  // to 1.026 in that table: 0.6 %.
  test.each(awgData.rows)("$awg AWG stranded at 75 °C agrees with NFPA 70, Chapter 9, Table 8", (row) => {
    const { awg, nec_ch9_table8: table8 } = row;
    expect(table8?.confirmed).toBe("read");
    const wire = wireResistance({ parallel: 1, system: "awg", awg: asInAPlan(awg) } as Conductor);
    const printed = ohmPerM(table8?.stranded_uncoated_ohm_per_kft_75C ?? 0);
    expect(Math.abs(resistanceAt(wire?.ohmPerM20C ?? 0, 75) / printed - 1)).toBeLessThan(0.006);
  });

  test("the strand factor is read", () => {
    expect(strandFactor).toMatchObject({ factor: 1.02, source: { confirmed: "read" } });
  });
});

// IEC 60228:2004, Table 3, as three cable suppliers' pages quote it.
describe("IEC 60228 class 5, plain copper", () => {
  const iec60228 = published<Iec60228>("iec60228.json");

  test("15 sizes", () => {
    expectSameCells(
      new Map(resistanceOfClass5.rows.map(({ mm2, maxOhmPerKm20C }) => [`${mm2} mm²`, maxOhmPerKm20C])),
      new Map(iec60228.rows.map((row) => [`${row.mm2} mm²`, row.class5_plain_max_ohm_per_km_20C])),
      15,
    );
    expect(iec60228.rows.every((row) => row.confirmed_by_column.class5_plain === "read")).toBe(true);
    expect(resistanceOfClass5.source.confirmed).toBe("read");
  });

  // No standard conductor can be better than solid annealed copper of its whole nominal area, 1/58 Ω·mm²/m.
  test.each(resistanceOfClass5.rows)(
    "$mm2 mm² is above ideal copper, by at most a sixth",
    ({ mm2, maxOhmPerKm20C }) => {
      const ratio = (maxOhmPerKm20C * mm2 * 58) / 1000;
      expect(ratio).toBeGreaterThan(1);
      expect(ratio).toBeLessThan(7 / 6);
    },
  );

  // 50 mm² is the one size with class 5 (0.386) below class 2 (0.387); it is no misprint.
  test("only 50 mm² lies below its class 2 value", () => {
    const below = iec60228.rows.filter(
      (row) => row.class5_plain_max_ohm_per_km_20C < row.class2_plain_max_ohm_per_km_20C,
    );
    expect(below.map(({ mm2 }) => mm2)).toEqual([50]);
  });
});

describe("copper's resistance with temperature", () => {
  test("the coefficient is as read", () => {
    const read = awgData.constants.find(({ name }) => name === "copper_temperature_coefficient_20C");
    expect(read).toMatchObject({ value: temperatureCoefficient.perK, confirmed: "read" });
  });

  // FAA AC 43.13-1B CHG 1, 11-66d(4): lengths at temperature vary with 254.5 / (234.5 + T). 0.00393 is 1/254.5 rounded to three
  // figures, 2 parts in 10,000: over 180 K of rise that is under 0.1 %.
  test.each([-20, 0, 20, 50, 75, 105, 150, 200])(
    "at %i °C it agrees with the inferred zero at −234.5 °C",
    (degC) => {
      expect(Math.abs(resistanceAt(1, degC) / ((234.5 + degC) / 254.5) - 1)).toBeLessThan(0.001);
    },
  );
});

test("every size that a plan may state has a resistance", () => {
  const conductors = [
    ...resistanceOfAwg.rows.map(({ awg }) => ({ parallel: 1, system: "awg", awg })),
    ...resistanceOfClass5.rows.map(({ mm2 }) => ({ parallel: 1, system: "metric", mm2 })),
  ];
  for (const conductor of conductors) expect(wireResistance(conductor as Conductor)).toBeDefined();
});

interface AwgData {
  rows: {
    awg: string;
    n: number;
    solid_ohm_per_km_20C: number;
    confirmed: Confirmed;
    second_table_ohm_per_kft_20C?: { value: number; confirmed: Confirmed };
    nec_ch9_table8?: { stranded_uncoated_ohm_per_kft_75C: number; confirmed: Confirmed };
  }[];
  constants: { name: string; value: number; confirmed: Confirmed }[];
}

interface Iec60228 {
  rows: {
    mm2: number;
    class2_plain_max_ohm_per_km_20C: number;
    class5_plain_max_ohm_per_km_20C: number;
    confirmed_by_column: { class5_plain: Confirmed };
  }[];
}
