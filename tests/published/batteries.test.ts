import { describe, expect, test } from "vitest";
import {
  cellVoltageOf,
  fullVoltageOf,
  lowestVoltageOf,
  restVoltageAt,
  systemVoltageOf,
} from "../../library/model/battery-figures.ts";
import { alternatorShare, chargingVoltage } from "../../library/standards/charging-practice.ts";
import { inverterEfficiency } from "../../library/standards/device-practice.ts";
import { internalResistance } from "../../library/standards/internal-resistance.ts";
import {
  floodedRestVoltage,
  lithiumIronPhosphateRestVoltage,
  sealedRestVoltage,
} from "../../library/standards/rest-voltage.ts";
import { type Confirmed, expectSameCells, published } from "./published-data.ts";

const data = published<Batteries>("batteries.json");
const leadAcid = (name: string) => {
  const table = data.soc_rest_voltage.lead_acid.find(({ table }) => table === name);
  if (!table) throw new Error(`no table ${name}`);
  return table;
};

// Magazine for recreational vehicles, answers on checking batteries: read. 12 V lead-acid at 25 °C, at rest.
test("rest voltage of flooded batteries", () => {
  const table = leadAcid("magazine-QA");
  expectSameCells(cellsOf(floodedRestVoltage.rows), printedCells(table.rows), 4);
  expect(floodedRestVoltage.source.confirmed).toBe(table.confirmed);
  expect(table.confirmed).toBe("read");
});

// Recalled, not seen: this compares two copies and proves nothing.
test("rest voltage of sealed batteries (unconfirmed figures: two copies agree, neither was checked)", () => {
  const table = leadAcid("AGM, typical");
  expectSameCells(cellsOf(sealedRestVoltage.rows), printedCells(table.rows), 5);
  expect(sealedRestVoltage.source.confirmed).toBe(table.confirmed);
  expect(table.confirmed).toBe("memory");
});

// Three lists in public battery software, read; none states a measurement.
describe("rest voltage of LiFePO4 cells", () => {
  const { rows, confirmed } = data.soc_rest_voltage.lifepo4_cell;

  test("the third list, row by row", () => {
    const printed = new Map(rows.map((row) => [`${row.soc_percent} %`, row.table_c_V]));
    expectSameCells(cellsOf(lithiumIronPhosphateRestVoltage.rows), printed, 11);
    expect(lithiumIronPhosphateRestVoltage.source.confirmed).toBe(confirmed);
  });

  test("it has every row, and from 10 % to 80 % the lowest voltage of the three, as its note says", () => {
    for (const { soc_percent, table_a_V, table_b_V, table_c_V } of rows) {
      const others = [table_a_V, table_b_V].filter((restV) => restV !== null);
      if (soc_percent >= 10 && soc_percent <= 80)
        expect(table_c_V, `${soc_percent} %`).toBeLessThanOrEqual(Math.min(...others));
    }
    expect(rows.some(({ table_b_V }) => table_b_V === null)).toBe(true);
  });

  test("from 30 % to 80 % each list rises by 50 to 80 mV, and they differ by as much as 50 mV", () => {
    const within = rows.filter(({ soc_percent }) => soc_percent >= 30 && soc_percent <= 80);
    const rise = (list: "table_a_V" | "table_c_V") => within.at(-1)![list] - within[0]![list];
    for (const list of ["table_a_V", "table_c_V"] as const) {
      expect(rise(list)).toBeGreaterThan(0.0499);
      expect(rise(list)).toBeLessThan(0.0801);
    }
    expect(Math.max(...within.map(({ spread_mV }) => spread_mV))).toBe(50);
  });

  test("four cells make a battery of 12 V, and also one of 12.8 V", () => {
    for (const nominalV of [12, 12.8]) {
      const label = { chemistry: "LiFePO4", nominalV } as const;
      const fourInSeries = { ...label, nominalV: 4 * nominalV };
      expect(restVoltageAt(label, 50)).toEqual({ voltageV: expect.closeTo(4 * 3.28, 9), from: "charge" });
      expect(fullVoltageOf(fourInSeries).voltageV).toBeCloseTo(16 * 3.65, 9);
      expect(systemVoltageOf(label)).toBe(12);
      expect(systemVoltageOf(fourInSeries)).toBe(48);
      expect(cellVoltageOf(fourInSeries)).toBeCloseTo(51.2, 9);
      expect(lowestVoltageOf(label)).toBe(12);
    }
  });

  // Recalled: a full cell rests at 3.35 to 3.40 V, and 3.65 V is a charging voltage.
  test("full at rest is not the last row, which is a charging voltage", () => {
    expect(restVoltageAt({ chemistry: "LiFePO4", nominalV: 12 }, 100)).toEqual({
      voltageV: expect.closeTo(4 * 3.4, 9),
      from: "charge, from memory",
    });
  });
});

describe("charge between and below the rows", () => {
  const flooded = { chemistry: "flooded lead-acid", nominalV: 12 } as const;

  test("lies on a straight line between two rows", () => {
    expect(restVoltageAt({ ...flooded, nominalV: 24 }, 60)).toEqual({
      voltageV: expect.closeTo(2 * (12.3 + 0.15 * 0.4), 9),
      from: "charge",
    });
    expect(restVoltageAt({ chemistry: "LiFePO4", nominalV: 12 }, 15)).toEqual({
      voltageV: expect.closeTo(4 * 3.1, 9),
      from: "charge",
    });
  });

  // Engineering mailing list, rule of thumb for flooded batteries, read: 11.6 V when empty, rounded to 0.1 V.
  test("below the lowest row it leads to the empty battery of another list, and says so", () => {
    expect(restVoltageAt(flooded, 20)).toEqual({
      voltageV: expect.closeTo(11.6 + 0.55 * 0.8, 9),
      from: "charge below the list",
    });
    expect(restVoltageAt(flooded, 0).voltageV).toBe(11.6);
    expect(restVoltageAt(flooded, 25)).toEqual({ voltageV: 12.15, from: "charge" });
  });
});

// Recalled, not seen, except for the block whose maker's figure is printed in a thread on telecom racks.
describe("internal resistance (unconfirmed figures: two copies agree, neither was checked)", () => {
  const rows = data.internal_resistance_ranges.rows;
  const ofLibrary: Readonly<Record<string, string>> = {
    "12 V flooded starter, 60-90 Ah": "12 V flooded starter",
    "12 V flooded deep-cycle, 100 Ah": "12 V flooded deep-cycle",
    "12 V AGM, 100 Ah": "12 V AGM",
    "12 V gel, 100 Ah": "12 V gel",
    "LiFePO4 cell, 100 Ah": "LiFePO4 cell",
    "LiFePO4 cell, 280 Ah": "LiFePO4 cell, large",
    "12.8 V LiFePO4, 100 Ah, with protection circuit": "12.8 V LiFePO4 with protection circuit",
  };

  test("seven ranges", () => {
    const library = internalResistance.rows.flatMap(({ battery, milliohm: [low, high], forAh }) => [
      [`${battery}, low`, low] as const,
      [`${battery}, high`, high] as const,
      [`${battery}, Ah`, forAh[1]] as const,
    ]);
    const printed = rows.flatMap(({ battery, milliohm: [low, high] }) => {
      const name = ofLibrary[battery];
      const ampereHours = Number(/(\d+) Ah/.exec(battery)?.[1]);
      return name
        ? [
            [`${name}, low`, low] as const,
            [`${name}, high`, high] as const,
            [`${name}, Ah`, ampereHours] as const,
          ]
        : [];
    });
    expectSameCells(new Map(library), new Map(printed), 21);
    expect(internalResistance.source.confirmed).toBe(data.internal_resistance_ranges.confirmed);
  });

  // A valve-regulated block is AGM or gel; it was read, 12 V / 3800 A beside the maker's 3.3 mΩ.
  test("the one block that was read lies in the range for gel, scaled to its capacity", () => {
    const block = rows.find(({ confirmed }) => confirmed === "read");
    expect(block?.milliohm).toEqual([3.16, 3.3]);
    const gel = internalResistance.rows.find(({ chemistry }) => chemistry === "gel")!;
    const scaled = gel.milliohm.map((milliohm) => (milliohm * 100) / 190);
    expect(scaled[0]).toBeLessThan(3.16);
    expect(scaled[1]).toBeGreaterThan(3.3);
  });
});

test("14.4 V lies in the range of every chemistry (unconfirmed figures)", () => {
  const { rows, confirmed } = data.charging_practice;
  const printed = new Map(
    rows.flatMap(({ chemistry, absorption_V_per_12V: [low, high] }) => [
      [`${chemistry}, least`, low],
      [`${chemistry}, most`, high],
    ]),
  );
  const named: Readonly<Record<string, string>> = { LiFePO4: "LiFePO4 (4 cells)" };
  const library = Object.entries(chargingVoltage.absorptionFor12V).flatMap(([chemistry, [low, high]]) => {
    expect(low).toBeLessThanOrEqual(chargingVoltage.for12V);
    expect(high).toBeGreaterThanOrEqual(chargingVoltage.for12V);
    const name = named[chemistry] ?? chemistry;
    return [[`${name}, least`, low] as const, [`${name}, most`, high] as const];
  });
  expectSameCells(new Map(library), printed, 8);
  expect(chargingVoltage.source.confirmed).toBe(confirmed);
});

// FAA AC 43.13-1B, Change 1, paragraph 11-35a, which was read.
test("an alternator gives 80 % of its rating for hours", () => {
  expect(data.alternator_practice).toMatchObject({
    percent: alternatorShare.continuousPercent,
    confirmed: "read",
  });
  expect(alternatorShare.source).toMatchObject({ section: "11-35a", confirmed: "read" });
});

// Magazine article on designing stand-alone systems, which was read.
test("an inverter passes on 90 % of what it takes", () => {
  expect(data.inverter_efficiency).toMatchObject({ percent: inverterEfficiency.percent, confirmed: "read" });
  expect(inverterEfficiency.source.confirmed).toBe("read");
});

function cellsOf(rows: readonly { readonly chargePercent: number; readonly restV: number }[]) {
  return new Map(rows.map(({ chargePercent, restV }) => [`${chargePercent} %`, restV]));
}

function printedCells(rows: readonly { readonly soc_percent: number; readonly V: number }[]) {
  return new Map(rows.map(({ soc_percent, V }) => [`${soc_percent} %`, V]));
}

interface Batteries {
  soc_rest_voltage: {
    lead_acid: { table: string; confirmed: Confirmed; rows: { soc_percent: number; V: number }[] }[];
    lifepo4_cell: {
      confirmed: Confirmed;
      rows: {
        soc_percent: number;
        table_a_V: number;
        table_b_V: number | null;
        table_c_V: number;
        spread_mV: number;
      }[];
    };
  };
  internal_resistance_ranges: {
    confirmed: Confirmed;
    rows: { battery: string; milliohm: [number, number]; confirmed?: Confirmed }[];
  };
  charging_practice: {
    confirmed: Confirmed;
    rows: { chemistry: string; absorption_V_per_12V: [number, number] }[];
  };
  alternator_practice: { percent: number; confirmed: Confirmed };
  inverter_efficiency: { percent: number; confirmed: Confirmed };
}
