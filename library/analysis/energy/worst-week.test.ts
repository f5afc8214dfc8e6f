import { describe, expect, test } from "vitest";
import { judge } from "../../judge.ts";
import type { PlanRecord } from "../../model/record.ts";
import { runExample } from "../../rules/page.tester.ts";
import { testWorld } from "./world.tester.ts";
import { type WeekEnergy, worstWeek } from "./worst-week.ts";

const hut = `
  const house = battery({ name: "house", chemistry: "LiFePO4", capacityAh: 100, reservePercent: 20 });
  const plus = busBar({ side: "positive" });
  const minus = busBar({ side: "negative" });
  cable({ from: house.positive, to: plus.stud, lengthM: 2, gauge: 4, protect: 100 });
  cable({ from: house.negative, to: minus.stud, lengthM: 2, gauge: 4 });
  const on = { from: plus.stud, returnTo: minus.stud, oneWayM: 3, gauge: 12, protect: 15 };
  circuit({ ...on, name: "lamp", loadW: 20, use: { hoursPerDay: 5, when: "dark" } });
  circuit({ ...on, name: "fridge", loadW: 50, use: { dutyPercent: 40 } });
  const roof = solarArray({ name: "roof", openCircuitV: 45, shortCircuitA: 6, maxPowerV: 37, maxPowerA: 5.4 });
  const mppt = solarController({ maxInputV: 100, outputA: 30 });
  cable({ from: roof.positive, to: mppt.solarPositive, lengthM: 5, gauge: 10 });
  cable({ from: roof.negative, to: mppt.solarNegative, lengthM: 5, gauge: 10 });
  cable({ from: mppt.positive, to: plus.stud, lengthM: 1, gauge: 6, protectFarEnd: 40 });
  cable({ from: mppt.negative, to: minus.stud, lengthM: 1, gauge: 6 });
`;

function weeksOf(period: string) {
  const { records, problems } = runExample(`${hut} period({ name: "stay", ${period} });`);
  expect(problems).toEqual([]);
  const { energy } = judge(records as readonly PlanRecord[], problems, undefined, testWorld);
  const [stay] = energy;
  return { stay: stay!, weekOf: (month: number) => worstWeek(stay!.period, stay!.banks[0]!, month) };
}

const year = weeksOf('place: "Tarifa, ES"');
const sum = (watts: readonly number[]) => watts.reduce((total, one) => total + one, 0);

/** The greatest difference between the energy in and the energy out of an hour, Wh, without the loss in charging. */
function unexplained(week: WeekEnergy, fullWh: number): number {
  const worst = week.unmetW.map((unmet, hour) => {
    const of = (powers: readonly { readonly watts: readonly number[] }[]) =>
      powers.reduce((total, { watts }) => total + watts[hour]!, 0);
    const net = of(week.sources) - of(week.loads) - week.sharedLossW[hour]! + unmet - week.spilledW[hour]!;
    const stored = (week.charge[hour + 1]! - week.charge[hour]!) * fullWh;
    // The efficiency of lithium is above 0.9, and it discharges itself by less than 0.01 % in an hour.
    const [least, most] = [Math.min(net, net * 0.9) - 1e-4 * fullWh, net + 1e-9];
    return Math.max(0, stored - most, least - stored);
  });
  return Math.max(...worst);
}

describe("the worst week of a month", () => {
  test.each(year.stay.banks[0]!.months.map((month) => [month.month, month] as const))(
    "month %i adds up, hour by hour, and holds the month's worst hour",
    (index, month) => {
      const week = year.weekOf(index)!;
      expect([week.days, week.charge.length]).toEqual([7, 169]);
      expect(unexplained(week, year.stay.banks[0]!.fullWh)).toBeLessThan(1e-6);
      if (month.unmetHours === 0) expect(Math.min(...week.charge)).toBeCloseTo(month.lowest, 9);
      // Five weeks cover a month: the worst has a fifth of it or more.
      else expect(sum(week.unmetW)).toBeGreaterThanOrEqual((month.unmetWh * month.days) / 5);
      expect(Math.min(...week.charge)).toBeGreaterThanOrEqual(week.empty - 1e-9);
    },
  );

  test("loads are by their use, and dark hours are dark", () => {
    const week = year.weekOf(5)!;
    expect(week.loads.map(({ name }) => name)).toEqual(["fridge", "lamp"]);
    const lamp = week.loads[1]!.watts.slice(0, 24);
    expect(lamp.slice(9, 16)).toEqual(Array(7).fill(0));
    expect(sum(lamp)).toBeGreaterThan(100);
    expect(sum(lamp)).toBeLessThan(105);
    expect(week.sources.map(({ name, kind }) => [name, kind])).toEqual([["roof", "sun"]]);
  });

  test("a period of a few days has only these, and begins with its own charge", () => {
    const { weekOf } = weeksOf('place: "Tarifa, ES", fromDay: "29 Jun", untilDay: "2 Jul", startPercent: 60');
    const june = weekOf(5)!;
    expect([june.days, june.firstDay, june.charge[0]]).toEqual([2, 179, 0.6]);
    expect(weekOf(6)!.charge[0]).toBe(june.charge.at(-1));
    expect(weekOf(7)).toBeUndefined();
  });
});
