import { readFileSync, statSync } from "node:fs";
import { describe, expect, it } from "vitest";
import type { BankEnergy, MonthEnergy } from "../../library/analysis/energy/energy-result.ts";
import { testWorld } from "../../library/analysis/energy/world.tester.ts";
import { judge } from "../../library/judge.ts";
import type { Word } from "../../library/model/record.ts";
import { monthNames } from "../../library/model/use-properties.ts";
import { sampled } from "../setup/sampled.ts";
import { published } from "./published-data.ts";

/**
 * The energy of whole plans against a second engine: written separately, in another language, from the page
 * library/analysis/energy/method.md (see oracle-energy.py). Neither proves the other right; a slip in one of them shows.
 */
const { cases } = process.env.ORACLE_ENERGY
  ? (JSON.parse(readFileSync(process.env.ORACLE_ENERGY, "utf8")) as Cases)
  : published<Cases>("oracle-energy.json");

interface Cases {
  readonly cases: readonly Case[];
}

interface Case {
  readonly seed: number;
  readonly records: readonly { readonly word: Word; readonly input: object }[];
  readonly months: readonly Month[];
}

/** Wh a day, shares of a full charge, hours, days. */
interface Month {
  readonly month: string;
  readonly days: number;
  readonly verdict: string;
  readonly use: number;
  readonly sun: readonly number[];
  readonly engine: number;
  readonly shore: number;
  readonly generator: number;
  readonly notTaken: number;
  readonly missing: number;
  readonly lost: number;
  readonly lowest: number;
  readonly highest: number;
  readonly belowReserve: number;
  readonly without: number;
  readonly autonomy: number | null;
}

describe("energy worked out twice", () => {
  it("is that of many plans, which hold every kind of thing", () => {
    expect(cases).toHaveLength(200);
    const records = cases.flatMap((one) => one.records);
    const words = ["motor", "inverter", "solarController", "alternator", "shoreCharger"] as const;
    for (const word of words) expect(records.filter((one) => one.word === word).length).toBeGreaterThan(30);
    const banks = cases.map((one) => bankIn(one));
    for (const kind of ["series", "parallel", "both"] as const)
      expect(banks.filter((bank) => bank === kind).length).toBeGreaterThan(5);
    expect(records.filter(({ word }) => word === "dcDcCharger").length).toBeGreaterThan(10);
    const verdicts = cases.flatMap(({ months }) => months.map(({ verdict }) => verdict));
    for (const verdict of ["keeps up", "barely", "runs short", "not on average"])
      expect(verdicts.filter((one) => one === verdict).length).toBeGreaterThan(15);
    const text = JSON.stringify(records);
    for (const property of ["irradiation", "clockAheadH", "notUsed", "everyDays", "daysOfWeek", "tracking"])
      expect(text).toContain(`"${property}"`);
    for (const property of ["horizonDegByDirection", "averageWByMonth", "standbyW"])
      expect(text.split(`"${property}"`).length).toBeGreaterThan(25);
    const latitudes = records.flatMap(({ input }) =>
      "latitudeDeg" in input ? [Number(input.latitudeDeg)] : [],
    );
    for (const [from, to] of [
      [-90, -66.6],
      [-66.6, -1],
      [-0.1, 0.1],
      [1, 66.6],
      [66.6, 90],
    ] as const)
      expect(latitudes.filter((at) => at >= from && at <= to).length).toBeGreaterThan(5);
  });

  it("is kept in a file of bounded size", () => {
    // 0.97 MB with one battery in each plan; banks of several are longer texts.
    expect(statSync(new URL("oracle-energy.json", import.meta.url)).size).toBeLessThan(1_100_000);
  });

  it.each(sampled("energy worked out twice", cases))("seed $seed", ({ records, months }) => {
    const bank = bankOf(records);
    // The second engine lists them from January, ours from the first month of the period.
    const ofTheYear = [...bank.months].sort((one, other) => one.month - other.month);
    const found = ofTheYear.map((month) => figuresOf(bank, month));
    expect(found.map(inWords)).toEqual(months.map(inWords));
    const perDay = 1e-6 * Math.max(...months.map(({ use }) => use));
    const off: string[] = [];
    months.forEach((expected, index) => {
      const ours = found[index]!;
      const same = (name: string, a: number | null, b: number | null, within: number) => {
        if (a === b || Math.abs((a ?? Number.NaN) - (b ?? Number.NaN)) <= within) return;
        off.push(`${expected.month} ${name}: ${a}, second engine ${b}`);
      };
      for (const name of ["use", "engine", "shore", "generator", "notTaken", "missing", "lost"] as const)
        same(name, ours[name], expected[name], perDay);
      expected.sun.forEach((wh, array) => {
        same(`sun ${array}`, ours.sun[array]!, wh, perDay);
      });
      for (const name of ["lowest", "highest"] as const) same(name, ours[name], expected[name], 1e-6);
      for (const name of ["belowReserve", "without"] as const) same(name, ours[name], expected[name], 0);
      same("autonomy", ours.autonomy, expected.autonomy, 1e-6 * (expected.autonomy ?? 0));
    });
    expect(off).toEqual([]);
  });
});

/** How the batteries of its bank are connected: without the starter battery of a DC-DC charger, which has a name. */
function bankIn({ records }: Case): "one" | "series" | "parallel" | "both" {
  const batteries = records.filter(({ word, input }) => word === "battery" && !("name" in input));
  const links = records.filter(({ word, input }) => word === "cable" && isLink(input as Partial<Link>));
  if (batteries.length === 1) return "one";
  if (links.length === 0) return "parallel";
  return links.length === batteries.length - 1 ? "series" : "both";
}

interface Link {
  readonly name: string;
  readonly from: { readonly of: string };
  readonly to: { readonly of: string };
}

function isLink({ name, from, to }: Partial<Link>): boolean {
  return name === undefined && from?.of === "battery" && to?.of === "battery";
}

function inWords({ month, days, verdict }: Month): string {
  return `${month}, ${days} days: ${verdict}`;
}

function bankOf(records: Case["records"]): BankEnergy {
  const judged = judge(
    records.map(({ word, input }, index) => ({ word, input, fallbackName: `record ${index}` })),
    [],
    undefined,
    testWorld,
  );
  expect(judged.model.invalid).toEqual([]);
  const [bank, ...others] = judged.energy[0]!.banks;
  expect(others).toEqual([]);
  return bank!;
}

function figuresOf({ sources }: BankEnergy, { month, ...of }: MonthEnergy): Month {
  const given = (kind: string) =>
    sources.flatMap((source) => (source.kind === kind ? [source.dailyWh[month]!] : []));
  return {
    month: monthNames[month]!,
    ...{ days: of.days, verdict: of.verdict },
    use: of.useWh,
    sun: given("sun"),
    engine: given("engine")[0] ?? 0,
    shore: given("shore")[0] ?? 0,
    generator: given("generator")[0] ?? 0,
    notTaken: of.spilledWh,
    missing: of.unmetWh,
    lost: of.lostWh,
    lowest: of.lowest,
    highest: of.highest,
    belowReserve: of.hoursBelowReserve,
    without: of.unmetHours,
    autonomy: of.autonomyDays ?? null,
  };
}
