import { describe, expect, test } from "vitest";
import { climateTable } from "../../library/analysis/energy/climate.ts";
import { testWorld } from "../../library/analysis/energy/world.tester.ts";
import { energyTables } from "../../library/documents/energy/energy-tables.ts";
import { textOf } from "../../library/documents/table-for-people.ts";
import { judge } from "../../library/judge.ts";
import type { PlanRecord } from "../../library/model/record.ts";
import { runExample } from "../../library/rules/page.tester.ts";
import { ruleById } from "../../library/rules/registry.ts";

/** A hut with everything that has hours, at the ends of the earth and of the calendar. */
const planOf = (period: string, battery = 'chemistry: "LiFePO4", capacityAh: 100') => `
  const house = battery({ name: "house", internalMilliohm: 3, ${battery} });
  const on = { from: house.positive, returnTo: house.negative, oneWayM: 2, gauge: 10, protect: 15 };
  circuit({ ...on, name: "lamp", load: 2, use: { hoursPerDay: 4, when: "dark" } });
  circuit({ ...on, name: "fan", loadW: 20, use: { hoursPerDay: 3, when: "daylight", daysOfWeek: ["Sun"] } });
  const shore = shoreCharger({ outputA: 10 });
  circuit({ from: shore.positive, returnTo: shore.negative, to: house, oneWayM: 1, gauge: 8 });
  const modules = solarArray({ openCircuitV: 22.5, shortCircuitA: 9.8, maxPowerV: 18.6, maxPowerA: 9.2, tiltDeg: 60 });
  const controller = solarController({ maxInputV: 50, outputA: 20 });
  circuit({ from: modules.positive, returnTo: modules.negative, to: controller, oneWayM: 2, gauge: 8 });
  circuit({ from: controller.positive, returnTo: controller.negative, to: house, oneWayM: 1, gauge: 8 });
  period({ name: "stay", ${period} });`;

function stay(period: string, battery?: string) {
  const { records, problems } = runExample(planOf(period, battery));
  expect(problems).toEqual([]);
  const judgement = judge(records as readonly PlanRecord[], problems, undefined, testWorld);
  expect(judgement.model.invalid).toEqual([]);
  const energy = judgement.energy[0]!;
  const words = [
    ...energyTables(energy).flatMap(({ title, notes, rows }) => [
      title,
      ...(notes ?? []),
      ...rows.flatMap((row) => row.map(textOf)),
    ]),
    ...judgement.findings.map(({ rule, values }) => ruleById(rule)!.message(values)),
  ].join("\n");
  return { bank: energy.banks[0]!, words, findings: judgement.findings };
}

const bankFigures = ["lowest", "highest", "useWh", "sourcesWh", "spilledWh", "unmetWh", "lostWh"] as const;

function expectSensible({ bank, words }: ReturnType<typeof stay>): void {
  expect(bank.months.length).toBeGreaterThan(0);
  for (const month of bank.months) {
    for (const name of bankFigures) {
      expect(month[name], `${name} of ${month.month}`).toBeGreaterThanOrEqual(0);
      expect(Number.isFinite(month[name]), `${name} of ${month.month}`).toBe(true);
    }
    expect(month.highest).toBeLessThanOrEqual(1);
    expect(month.autonomyDays ?? 0).toBeGreaterThanOrEqual(0);
  }
  expect(words).not.toMatch(/NaN|Infinity|∞|undefined|null|-0(?![.\d])/);
}

describe("the ends of the earth", () => {
  test.each([
    ["south pole", -90, 0],
    ["beyond the southern polar circle", -77.85, 166.7],
    ["south", -45, -72],
    ["equator", 0, 0],
    ["north", 52.3, 4.77],
    ["polar circle", 66.56, 25],
    ["beyond the northern polar circle", 78.2, 15.6],
    ["north pole", 90, 180],
    ["date line from the west", -17, 180],
    ["date line from the east", -17, -180],
  ])("%s", (_, latitudeDeg, longitudeDeg) => {
    const at = `latitudeDeg: ${latitudeDeg}, longitudeDeg: ${longitudeDeg}`;
    expectSensible(stay(at));
    expectSensible(
      stay(`${at}, months: ["Dec"], shore: { hoursPerDay: 1 }`, 'chemistry: "AGM", capacityAh: 60'),
    );
  });

  test("the grid goes on over the date line, without a step", () => {
    const { climate } = testWorld();
    for (const latitudeDeg of [-88, -17, 0, 66]) {
      expect(climate(latitudeDeg, 180).clearness).toEqual(climate(latitudeDeg, -180).clearness);
      expect(climate(latitudeDeg, 180).airC).toEqual(climate(latitudeDeg, -180).airC);
      const [west, east] = [climate(latitudeDeg, 179.99), climate(latitudeDeg, -179.99)];
      west.clearness.forEach((clearness, month) => {
        expect(Math.abs(clearness - east.clearness[month]!)).toBeLessThan(0.002);
      });
    }
  });

  test("between the middles of two cells on either side of the date line, the mean of both", () => {
    const lines = Array.from({ length: 72 * 12 }, () =>
      btoa(String.fromCharCode(...Array.from({ length: 144 }, (_, column) => (column < 72 ? 40 : 120)))),
    );
    const climate = climateTable({ clearness: lines, temperature: lines, places: {} });
    expect(climate(10, 180).clearness[0]).toBeCloseTo((40 + 120) / 2 / 200, 12);
    expect(climate(10, 0).clearness[0]).toBeCloseTo((40 + 120) / 2 / 200, 12);
    expect(climate(10, -178.75).clearness[0]).toBeCloseTo(40 / 200, 12);
  });
});

describe("a month without sun", () => {
  const night = stay("latitudeDeg: 78.2, longitudeDeg: 15.6, months: ['Dec']");

  test("gives nothing, and the loads of the dark draw all the same", () => {
    expectSensible(night);
    const [december] = night.bank.months;
    expect(december!.sourcesWh).toBe(0);
    expect(december!.useWh).toBeGreaterThan(90);
    expect(["runs short", "not on average"]).toContain(december!.verdict);
    expect(night.findings.map(({ rule }) => rule)).toContain("energy/runs-short");
  });

  test("midsummer there has no dark, and a lamp for the dark draws nothing", () => {
    const day = stay("latitudeDeg: 78.2, longitudeDeg: 15.6, months: ['Jun']");
    expectSensible(day);
    expect(day.bank.consumers.find(({ name }) => name === "lamp")!.dailyWh).toBe(0);
  });

  test("own figures of 0 are a month without sun too", () => {
    const none = stay(`latitudeDeg: 40, longitudeDeg: 0, irradiation: [${Array(12).fill(0)}]`);
    expectSensible(none);
    for (const month of none.bank.months) expect(month.sourcesWh).toBe(0);
  });

  test("own figures above all that reaches the air are held to that", () => {
    expectSensible(stay(`latitudeDeg: 60, longitudeDeg: 0, irradiation: [${Array(12).fill(12)}]`));
  });
});

describe("a bank without usable capacity", () => {
  test.each([
    [
      "a reserve and a cut-off of nearly all",
      'chemistry: "LiFePO4", capacityAh: 100, reservePercent: 95, minimumChargePercent: 95',
    ],
    ["a battery of 0.1 Ah", 'chemistry: "AGM", capacityAh: 0.1'],
    ["no charging current to speak of", 'chemistry: "gel", capacityAh: 100, maxChargeA: 0.001'],
  ])("%s", (_, battery) => {
    for (const period of ["", ", months: ['Dec'], startPercent: 0"]) {
      const found = stay(`latitudeDeg: 52.3, longitudeDeg: 4.77${period}`, battery);
      expectSensible(found);
      expect(found.bank.months.some(({ unmetHours }) => unmetHours > 0)).toBe(true);
    }
  });
});

describe("the calendar", () => {
  test.each([
    ['fromDay: "29 Feb", untilDay: "29 Feb"', 1],
    ['fromDay: "28 Feb", untilDay: "1 Mar"', 2],
    ['fromDay: "31 Dec", untilDay: "1 Jan"', 2],
    ['fromDay: "1 Jan", untilDay: "31 Dec"', 365],
    ['fromDay: "15 Jun", untilDay: "14 Jun"', 365],
    ['fromDay: "1 Mar", untilDay: "29 Feb"', 365],
    ['months: ["Feb"]', 28],
    ['months: ["Jan", "Mar", "Dec"]', 93],
  ])("%s has %i days", (days, count) => {
    const found = stay(`latitudeDeg: 40, longitudeDeg: 0, ${days}, shore: { hoursPerDay: 1, everyDays: 7 }`);
    expectSensible(found);
    expect(found.bank.months.reduce((sum, month) => sum + month.days, 0)).toBe(count);
  });

  test("a year is the same year whichever day it is written from, except for the phase of every so many days", () => {
    const year = (days: string) => stay(`latitudeDeg: 40, longitudeDeg: 0${days}`).bank.months;
    const written = year(', fromDay: "15 Jun", untilDay: "14 Jun"');
    year("").forEach((month, index) => {
      for (const name of bankFigures) expect(written[index]![name]).toBeCloseTo(month[name], 4);
    });
  });
});
