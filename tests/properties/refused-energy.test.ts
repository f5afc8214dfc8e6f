import { describe, expect, test } from "vitest";
import type { PeriodEnergy } from "../../library/analysis/energy/energy-result.ts";
import { summaryOf } from "../../library/documents/energy/verdict-in-words.ts";
import { energyCases, useOfCircuit } from "./every-property/energy-cases.ts";
import { judgedWith } from "./every-property/plans.ts";

/*
 * A refused value of the balance never looks judged, whichever property it is: a consumer is left out and named, a bank with a refused
 * battery, array or charger has no balance, and a period none at all.
 */

const all = [...useOfCircuit, ...energyCases].filter(({ effect }) => effect === "figures");
const of = (...words: readonly string[]) =>
  all.filter(({ property }) => words.includes(property.split(".")[0]!));

/** Neither a figure, a list, an object, a place, nor one of the texts. */
const refused = "no such value";

function judgedWithRefused({ plan, at, given }: (typeof all)[number], value: unknown = refused) {
  const [name = ""] = at.split(".");
  const record = Object.keys(plan).indexOf(name);
  const { model, energy } = judgedWith(plan, given, { [at]: value });
  return { record, model, energy, invalid: model.invalid.filter((one) => one.record === record) };
}

test("each property of the balance has a case", () => {
  expect(all.length).toBeGreaterThan(70);
  expect(
    of("circuit", "load", "motor", "inverter", "solarArray", "shoreCharger", "battery", "period"),
  ).toEqual(all);
});

function expectAtBest({ record, energy }: ReturnType<typeof judgedWithRefused>, consumers: RegExp): void {
  expect(energy).toHaveLength(1);
  const own = energy[0]!.banks.filter(({ withoutHours }) =>
    withoutHours.some((one) => one.record === record),
  );
  expect(own).toHaveLength(1);
  const [bank] = own;
  const isMeant = (one: { readonly record: number; readonly name: string }) =>
    one.record === record && consumers.test(one.name);
  expect(bank!.withoutHours.filter(isMeant)).toHaveLength(1);
  expect(bank!.consumers.filter(isMeant)).toEqual([]);
  const [first, ...others] = summaryOf(energy[0]!, bank!);
  expect(first).toMatch(/^At best: |is not judged/);
  expect(bank!.withoutHours.find(isMeant)!.isInvalid).toBe(true);
  expect([first, ...others].join()).not.toContain(`no hours for ${bank!.withoutHours.find(isMeant)!.name}`);
  if (first!.startsWith("At best")) expect(others.join()).toContain(bank!.withoutHours.find(isMeant)!.name);
}

describe("refused hours leave the consumer out", () => {
  test.each(of("circuit", "load", "motor"))("$at", (one) => {
    const judged = judgedWithRefused(one);
    expect(judged.invalid).toHaveLength(1);
    expectAtBest(judged, /./);
  });

  // Its network is not read with a device that has no power; there is no balance at all.
  test.each(of("inverter").filter(({ at }) => !/devices(\.0\.powerW)?$/.test(at)))("$at", (one) => {
    const judged = judgedWithRefused(one);
    expect(judged.invalid).toHaveLength(1);
    expectAtBest(judged, one.at.includes("devices") ? /^kettle$/ : /, idle$/);
  });

  test.each(of("inverter").filter(({ at }) => /devices(\.0\.powerW)?$/.test(at)))("$at", (one) => {
    const { invalid, energy } = judgedWithRefused(one);
    expect(invalid).toHaveLength(1);
    expect(energy).toEqual([]);
  });

  const [hours] = of("inverter").filter(({ at }) => at === "kettle.use.hoursPerDay");

  test.each([
    [{ hoursPerDay: 25 }],
    [{ hoursPerDay: 9, fromHour: 8, untilHour: 12 }],
    [{ fromHour: 8 }],
    [{ hoursPerDay: 2, hourPerDay: 3 }],
    [5],
  ])("of an inverter, %j", (use) => {
    const judged = judgedWithRefused({ ...hours!, at: "kettle.use" }, use);
    expect(judged.invalid.length).toBeGreaterThan(0);
    expectAtBest(judged, /, idle$/);
  });

  test("of an inverter, under a misspelt name", () => {
    const { plan } = hours!;
    const { energy, model } = judgedWith(plan, { "kettle.idleW": 8, "kettle.usee": { hoursPerDay: 2 } });
    expect(model.invalid).toHaveLength(1);
    expectAtBest({ record: Object.keys(plan).indexOf("kettle"), energy, model, invalid: [] }, /, idle$/);
  });
});

describe("a refused value of a battery or a source leaves its bank without a balance", () => {
  const hasNoBankWith = ({ banks, refusedParts }: PeriodEnergy, record: number) => {
    expect(refusedParts.map((part) => part.record)).toContain(record);
    for (const { batteries, hours } of banks)
      expect([...batteries, ...hours.flows.arrays].map((part) => part.record)).not.toContain(record);
  };

  test.each(of("battery", "solarArray", "shoreCharger"))("$at", (one) => {
    const { record, invalid, energy } = judgedWithRefused(one);
    expect(invalid).toHaveLength(1);
    expect(energy).toHaveLength(1);
    hasNoBankWith(energy[0]!, record);
    if (one.property.startsWith("shoreCharger")) expect(energy[0]!.banks).toEqual([]);
  });

  test("under a misspelt name", () => {
    const [{ plan }] = of("battery") as [(typeof all)[number]];
    const { energy, model } = judgedWith(plan, { "house.stateOfHealthPercnt": 70 });
    expect(model.invalid).toHaveLength(1);
    hasNoBankWith(energy[0]!, Object.keys(plan).indexOf("house"));
  });
});

describe("a period with a refused value is not judged", () => {
  test.each(of("period"))("$at", (one) => {
    const { record, invalid, energy } = judgedWithRefused(one);
    const [judged] = energy;
    // A place that is not known is no refused value, and has a finding of its own.
    if (one.at === "year.place") expect([judged!.period.record, judged!.banks]).toEqual([record, []]);
    else expect([invalid.length > 0, energy]).toEqual([true, []]);
  });
});
