import { describe, expect, test } from "vitest";
import { ambientFactor, ampacityOf, deratedA } from "../../library/analysis/ampacity.ts";
import { analyseCircuit } from "../../library/analysis/analyse-circuit.ts";
import { sampleCircuit } from "../../library/analysis/sample-circuit.tester.ts";
import type { Conductor } from "../../library/model/run.ts";
import { ambientCorrection } from "../../library/standards/ambient-nfpa70.ts";
import { note1EngineSpace, note2Bundling, table5 } from "../../library/standards/ampacity-33cfr183-425.ts";
import { annexA, bundling, engineSpace60C } from "../../library/standards/ampacity-iso10133.ts";
import { shipCable60C } from "../../library/standards/ampacity-ship-cable.ts";
import { ratingOverConductor } from "../../library/standards/protection-rules.ts";
import { asInAPlan, type Confirmed, expectSameCells, published } from "./published-data.ts";

const regulation = published<Regulation>("33cfr183.json");
const columnsC = regulation.insulation_temperature_columns_degC;

// 33 CFR 183 (US law), Subpart I, 183.425, Table 5; 42 FR 5944 as amended 48 FR 55736. Integers as printed: no tolerance.
describe("33 CFR 183.425, Table 5", () => {
  test("all 105 cells are as printed", () => {
    expect(regulation.rows.every(({ confirmed }) => confirmed === "read")).toBe(true);
    const printed = new Map(
      regulation.rows.flatMap(({ awg, amps }) =>
        columnsC.map((c) => [`${asInAPlan(awg)} AWG, ${c} °C`, amps[c] ?? null] as const),
      ),
    );
    const library = new Map(
      table5.rows.flatMap(({ awg, amperes }) =>
        amperes.map((ampereA, i) => [`${awg} AWG, ${table5.columnsC[i]} °C`, ampereA] as const),
      ),
    );
    expectSameCells(library, printed, 15 * 7);
    expect(table5.source.confirmed).toBe("read");
  });

  test("the rows stand from thin to thick", () => {
    expect(table5.rows.map(({ awg }) => awg)).toEqual(regulation.rows.map(({ awg }) => asInAPlan(awg)));
  });

  const cells = regulation.rows
    .filter(({ awg }) => awg !== "3")
    .flatMap(({ awg, amps }) => columnsC.map((c) => ({ awg: asInAPlan(awg), c, printedA: amps[c] })));
  test.each(cells)("$awg AWG, $c °C is judged at $printedA A", ({ awg, c, printedA }) => {
    const circuit = sampleCircuit({ conductor: awgOf(awg), insulationC: insulation(c) });
    expect(ampacityOf(circuit)).toMatchObject({ judged: true, ampacityA: printedA, columnC: c });
  });
});

describe("33 CFR 183.425, Table 5, note 1 (engine spaces)", () => {
  const note1 = regulation.note_1_engine_space_factor;

  test("the factors are as printed", () => {
    expect(note1.confirmed).toBe("read");
    expect([...note1EngineSpace.factors]).toEqual(columnsC.map((c) => note1.factors[c]));
  });

  // An independent check of the ambient equation of NFPA 70, 310.15(B)(1), at 50 °C: the note prints two figures, and its factor
  // for 105 °C is rounded downward, so 0.01. For 200 °C the note prints 1.0, which no equation gives.
  test.each(columnsC.filter((c) => c !== 200))("for %i °C it agrees with √((Tc − 50) / (Tc − 30))", (c) => {
    expect(Math.abs(ambientFactor(c, 50) - (note1.factors[c] ?? 0))).toBeLessThan(0.01);
    expect(ambientFactor(c, 50)).toBeCloseTo(Math.sqrt((c - 50) / (c - 30)), 12);
  });
});

// Binding for circuits of 50 V or more only, through 183.435(b); the library applies them below 50 V too, which is stricter.
test("33 CFR 183.425, Table 5, note 2 (conductors together): factors as printed", () => {
  const note2 = regulation.note_2_conductor_count_factor;
  expect(note2.confirmed).toBe("read");
  expect(note2Bundling.rows).toEqual(
    note2.factors.map(({ min, factor }) => ({ fromConductors: min, factor })),
  );
});

describe("33 CFR 183, worked cases", () => {
  const [outside, engine, thick, largestFuse] = regulation.cases;

  // Products of printed figures: exact.
  test.each([outside, engine, thick])("$name", (worked) => {
    const { awg, insulation_degC, engine_space } = worked?.input ?? fail();
    const circuit = sampleCircuit({
      conductor: awgOf(asInAPlan(awg)),
      insulationC: insulation(insulation_degC),
      engineSpace: engine_space ?? false,
    });
    expect(ampacityOf(circuit)).toMatchObject({ judged: true, ampacityA: worked?.expected.amps });
  });

  test("183.455(c)(1) would allow 150 % of the table below 50 V; the library holds to 100 %", () => {
    const { input, expected } = largestFuse ?? fail();
    const circuit = sampleCircuit({ conductor: awgOf(asInAPlan(input.awg)), insulationC: 75, loadA: 20 });
    const maxA = analyseCircuit(circuit).protection.maxA ?? fail();
    expect((maxA * ratingOverConductor.allowedBelow50VPercent) / 100).toBe(expected.max_rating_A);
    expect((maxA * ratingOverConductor.heldToPercent) / 100).toBe(40);
  });
});

// ISO 10133:2012, Annex A. Recalled, not seen: this compares two copies and does not verify the standard.
describe("ISO 10133 Annex A (unconfirmed figures: two copies agree, neither was checked)", () => {
  const copy = published<{ iso10133_annexA_table_A1: AnnexA }>("metric.json").iso10133_annexA_table_A1;
  const columns = copy.columns_degC.filter((c) => c !== "60");

  test("the table, without its suspect column for 60 °C", () => {
    const printed = new Map(
      copy.rows.flatMap(({ mm2, amps }) =>
        columns.map((c) => [`${mm2} mm², ${Number.parseInt(c, 10)} °C`, amps[c] ?? null] as const),
      ),
    );
    const library = new Map(
      annexA.rows.flatMap(({ mm2, amperes }) =>
        amperes.map((ampereA, i) => [`${mm2} mm², ${annexA.columnsC[i]} °C`, ampereA] as const),
      ),
    );
    expectSameCells(library, printed, 15 * 5);
  });

  test("engine spaces and bundling", () => {
    const factors = copy.engine_space_60C_ambient_factor;
    expect([...engineSpace60C.factors]).toEqual(columns.map((c) => factors[c]));
    expect(factors["60"]).toBeUndefined();
    expect(bundling.rows).toEqual(
      copy.bundling_factor.rows.map(({ conductors, factor }) => ({
        fromConductors: Number.parseInt(conductors, 10),
        factor,
      })),
    );
  });

  test("the library says that they are unconfirmed", () => {
    expect(copy.confirmed).toBe("memory");
    for (const { source } of [annexA, engineSpace60C, bundling]) expect(source.confirmed).toBe("memory");
  });
});

// A classification society's table for single-core ship cable, 60 °C PVC at 45 °C ambient: 35 to 150 mm² were read. The smaller
// sizes were recalled as a column of ISO 10133; of the two columns that are recalled for it, the stricter one is taken.
describe("60 °C insulation, metric sizes", () => {
  const { rows, column_60_candidate: candidate } = published<{ iso10133_annexA_table_A1: AnnexA }>(
    "metric.json",
  ).iso10133_annexA_table_A1;

  test("35 to 150 mm² as read", () => {
    const read = { 35: 87, 50: 105, 70: 135, 95: 165, 120: 190, 150: 220 };
    const ours = shipCable60C.rows.filter(({ mm2 }) => mm2 >= 35).map(({ mm2, ampereA }) => [mm2, ampereA]);
    expect(Object.fromEntries(ours)).toEqual(read);
  });

  test("all 15 sizes as recalled, and none above the other column", () => {
    const cells = (amps: (mm2: number) => number | undefined) =>
      new Map(rows.map(({ mm2 }) => [`${mm2} mm²`, amps(mm2) ?? null]));
    const of = (size: number) => shipCable60C.rows.find(({ mm2 }) => mm2 === size)?.ampereA;
    const recalled = cells((size) => rows.find(({ mm2 }) => mm2 === size)?.amps["60"]);
    expectSameCells(cells(of), recalled, 15);
    for (const { mm2, ampereA } of shipCable60C.rows)
      expect(ampereA).toBeLessThan(candidate.amps[mm2] ?? Number.NaN);
    expect(candidate.confirmed).toBe("memory");
  });

  test("it is not called ISO 10133", () => {
    const judged = ampacityOf(
      sampleCircuit({ conductor: { parallel: 1, system: "metric", mm2: 10 }, insulationC: 60 }),
    );
    expect(judged).toMatchObject({ judged: true, ampacityA: 40 });
    expect(judged.source.document).toMatch(/Ship-cable/);
    expect(shipCable60C.source.confirmed).toBe("memory");
  });
});

describe("the ambient equation against published corrections", () => {
  // NFPA 70 (2023), training notes on circuits of solar panels, worked example 2: 10 AWG, 90 °C column, 40 A, at 45 °C.
  // The table rounds its factor 0.866 to 0.87: half of 0.01 of 40 A is 0.2 A.
  test("NFPA 70, 310.15: 10 AWG of 90 °C at 45 °C carries 34.8 A", () => {
    const [worked] = published<{ cases: AmbientCase[] }>("nec.json").cases;
    const { input, expected } = worked ?? fail();
    const factor = ambientFactor(input.column_degC ?? fail(), input.ambient_degC);
    expect(Math.abs(factor - expected.factor)).toBeLessThanOrEqual(0.005);
    expect(
      Math.abs(deratedA({ tableA: expected.base_A, parallel: 1, factors: [{ factor }] }) - 34.8),
    ).toBeLessThan(0.2);
    expect(expected.derated_A).toBe(34.8);
  });

  // NFPA 70, 310.15(B)(1), Table, read in a residential code of a US state, 2021, Table E3705.2: a row holds for its upper end.
  // Two figures are printed: half of 0.01, and 0.001 for those that are rounded twice.
  test("NFPA 70, 310.15(B)(1), table", () => {
    const { rows, confirmed } = published<{ ambient_correction: { rows: NecRow[]; confirmed: Confirmed } }>(
      "nec.json",
    ).ambient_correction;
    expect(confirmed).toBe("read");
    expect(ambientCorrection.source.confirmed).toBe("read");
    let compared = 0;
    for (const row of rows) {
      const ambientC = Number(/(\d+)$/.exec(row.ambient_degC)?.[1] ?? Number.NaN);
      if (!(ambientC > 30)) continue;
      for (const columnC of [60, 75, 90] as const) {
        const printed = row[`${columnC}C`];
        if (printed === null) continue;
        compared += 1;
        expect(
          Math.abs(ambientFactor(columnC, ambientC) - printed),
          `${columnC} °C at ${ambientC} °C`,
        ).toBeLessThan(0.006);
      }
    }
    expect(compared).toBe(5 + 8 + 11);
  });

  // IEC 60364-5-52:2009, Tables B.52.10 and B.52.14, method G: another table of ampacities, so only the factor of
  // 70 °C insulation at 55 °C is compared. It prints 0.61 for 0.612; half of 0.01 of the base current is allowed.
  const methodG = published<{ cases: AmbientCase[] }>("metric.json").cases;
  test.each(methodG)("IEC 60364-5-52, $name: the factor", ({ input, expected, confirmed }) => {
    expect(confirmed).toBe("read");
    const factor = ambientFactor(70, input.ambient_degC);
    expect(Math.abs(factor - expected.factor)).toBeLessThanOrEqual(0.005);
    const derated = deratedA({ tableA: expected.base_A, parallel: 1, factors: [{ factor }] });
    expect(Math.abs(derated - expected.derated_A)).toBeLessThanOrEqual(0.005 * expected.base_A);
  });
});

// FAA AC 43.13-1B CHG 1 (2001), 11-67f, Example No. 2, step 1. FAA amperes are for bundles at altitude and never
// compared with Table 5; only the chain is: 47 A · 0.91 = 42.77 A (as printed), · 0.6 = 25.66 A, printed as 26 A.
test("FAA AC 43.13-1B, 11-67f, Example No. 2: the derating chain", () => {
  const { cases } = published<{ cases: FaaCase[] }>("faa.json");
  const { input, expected, confirmed } = cases.find(({ id }) => id === "AC43-ex2a") ?? fail();
  expect(confirmed).toBe("read");
  const tableA = input.free_air_current_A_at_150C_rise;
  const altitude = { factor: input.altitude_factor };
  expect(deratedA({ tableA, parallel: 1, factors: [altitude] })).toBe(expected.after_altitude_A);
  const both = deratedA({ tableA, parallel: 1, factors: [altitude, { factor: input.bundle_factor }] });
  expect(Math.round(both)).toBe(expected.Imax_A);
});

interface Regulation {
  insulation_temperature_columns_degC: number[];
  rows: { awg: string; amps: Record<number, number>; confirmed: Confirmed }[];
  note_1_engine_space_factor: { factors: Record<number, number>; confirmed: Confirmed };
  note_2_conductor_count_factor: { factors: { min: number; factor: number }[]; confirmed: Confirmed };
  cases: {
    name: string;
    input: { awg: string; insulation_degC: number; engine_space?: boolean };
    expected: { amps?: number; max_rating_A?: number };
  }[];
}

interface AnnexA {
  confirmed: Confirmed;
  columns_degC: string[];
  rows: { mm2: number; amps: Record<string, number> }[];
  engine_space_60C_ambient_factor: Record<string, number>;
  bundling_factor: { rows: { conductors: string; factor: number }[] };
  column_60_candidate: { amps: Record<string, number>; confirmed: Confirmed };
}

interface AmbientCase {
  name: string;
  input: { column_degC?: number; ambient_degC: number };
  expected: { base_A: number; factor: number; derated_A: number };
  confirmed: Confirmed;
}

type NecRow = { ambient_degC: string } & Record<"60C" | "75C" | "90C", number | null>;

interface FaaCase {
  id: string;
  confirmed: Confirmed;
  input: { free_air_current_A_at_150C_rise: number; altitude_factor: number; bundle_factor: number };
  expected: { after_altitude_A: number; Imax_A: number };
}

function awgOf(awg: number | string): Conductor {
  return { parallel: 1, system: "awg", awg } as Conductor;
}

function insulation(columnC: number) {
  return columnC as Parameters<typeof ampacityOf>[0]["insulationC"];
}

function fail(): never {
  throw new Error("Missing in the reference data.");
}
