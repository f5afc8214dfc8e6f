import { describe, expect, test } from "vitest";
import { judge } from "../../judge.ts";
import type { PlanRecord } from "../../model/record.ts";
import { runExample } from "../../rules/page.tester.ts";
import type { BankEnergy } from "./energy-result.ts";
import { leastChangesInSteps, leastChangesOf, mostBalances } from "./least-changes.ts";
import { testWorld } from "./world.tester.ts";

/** A hut with every lever: its sizes, and the hours of its chargers. */
const hut = ({
  ah = 100,
  batteries = 1,
  panels = 1,
  controllerA = 30,
  place = 'place: "Tarifa, ES"',
  hours = "",
  loadW = 60,
} = {}) => `
  const plus = busBar({ side: "positive" });
  const minus = busBar({ side: "negative" });
  for (let index = 0; index < ${batteries}; index++) {
    const house = battery({ name: "house " + index, chemistry: "LiFePO4", capacityAh: ${ah}, internalMilliohm: 3 });
    cable({ from: house.positive, to: plus.stud, lengthM: 1, gauge: 2, protect: 150 });
    cable({ from: house.negative, to: minus.stud, lengthM: 1, gauge: 2 });
  }
  circuit({ from: plus.stud, returnTo: minus.stud, oneWayM: 3, gauge: 10, protect: 15, name: "fridge", loadW: ${loadW}, use: {} });
  const roof = solarArray({ openCircuitV: 22, shortCircuitA: 10, maxPowerV: 18, maxPowerA: 9, parallel: ${panels} });
  const mppt = solarController({ maxInputV: 100, outputA: ${controllerA}, outputV: 14.4 });
  cable({ from: roof.positive, to: mppt.solarPositive, lengthM: 1, gauge: "4/0" });
  cable({ from: roof.negative, to: mppt.solarNegative, lengthM: 1, gauge: "4/0" });
  cable({ from: mppt.positive, to: plus.stud, lengthM: 1, gauge: "4/0", protectFarEnd: 150 });
  cable({ from: mppt.negative, to: minus.stud, lengthM: 1, gauge: "4/0" });
  const mains = shoreCharger({ outputA: 30 });
  cable({ from: mains.positive, to: plus.stud, lengthM: 1, gauge: 6, protectFarEnd: 40 });
  cable({ from: mains.negative, to: minus.stud, lengthM: 1, gauge: 6 });
  const machine = alternator({ ratedA: 50 });
  cable({ from: machine.positive, to: plus.stud, lengthM: 1, gauge: 6, protectFarEnd: 60 });
  cable({ from: machine.negative, to: minus.stud, lengthM: 1, gauge: 6 });
  period({ name: "year", ${place} ${hours} });`;

function bankOf(plan: string): BankEnergy {
  const { records, problems } = runExample(plan);
  expect(problems).toEqual([]);
  const [year] = judge(records as readonly PlanRecord[], problems, undefined, testWorld).energy;
  return year!.banks[0]!;
}

const isShort = (plan: string) =>
  bankOf(plan).months.some(({ verdict }) => verdict === "runs short" || verdict === "not on average");

const leverOf = (plan: string, change: string) =>
  leastChangesOf(bankOf(plan)).levers.find((lever) => lever.change === change)!;

describe("the least of each lever is enough in the plan itself, and a step less is not", () => {
  test("a bank, by whole batteries of the plan", () => {
    const short = { batteries: 2, panels: 6, controllerA: 100 };
    const { now, least, step, stepIs } = leverOf(hut(short), "bank");
    expect([now, step, stepIs]).toEqual([200, 100, "own"]);
    expect(least).toBeGreaterThan(200);
    expect(isShort(hut({ ...short, batteries: least! / 100 }))).toBe(false);
    expect(isShort(hut({ ...short, batteries: least! / 100 - 1 }))).toBe(true);
  });

  test("an array, by whole modules of the plan", () => {
    const short = { ah: 400, panels: 2, controllerA: 300 };
    const { now, least, step } = leverOf(hut(short), "array");
    expect([now, step]).toEqual([324, 162]);
    expect(isShort(hut({ ...short, panels: least! / 162 }))).toBe(false);
    expect(isShort(hut({ ...short, panels: least! / 162 - 1 }))).toBe(true);
  });

  test("an array on a controller that limits it: more modules help as far as they do in the plan itself", () => {
    const short = { ah: 400, panels: 2, controllerA: 16 };
    const { least } = leverOf(hut(short), "array");
    expect(least).toBeGreaterThan(leverOf(hut({ ...short, controllerA: 300 }), "array").least!);
    expect(isShort(hut({ ...short, panels: least! / 162 }))).toBe(false);
    expect(isShort(hut({ ...short, panels: least! / 162 - 1 }))).toBe(true);
  });

  test("an array that no number of modules mends on its controller, with a controller that grows with it", () => {
    const short = { ah: 400, panels: 2, controllerA: 10, loadW: 60 };
    expect(leverOf(hut(short), "array").least).toBeUndefined();
    const { least } = leverOf(hut(short), "array and controller");
    const withBoth = (panels: number) => hut({ ...short, panels, controllerA: 500 });
    expect(isShort(withBoth(least! / 162))).toBe(false);
  });

  test("a controller, by 5 A", () => {
    const short = { ah: 400, panels: 12, controllerA: 20 };
    const { now, least } = leverOf(hut(short), "controller");
    expect(now).toBe(20);
    expect(least! % 5).toBe(0);
    expect(isShort(hut({ ...short, controllerA: least! }))).toBe(false);
    expect(isShort(hut({ ...short, controllerA: least! - 5 }))).toBe(true);
  });

  test("of two controllers, the one that limits", () => {
    const second = `
      const more = solarArray({ openCircuitV: 22, shortCircuitA: 10, maxPowerV: 18, maxPowerA: 9 });
      const small = solarController({ maxInputV: 100, outputA: 30, outputV: 14.4 });
      cable({ from: more.positive, to: small.solarPositive, lengthM: 1, gauge: "4/0" });
      cable({ from: more.negative, to: small.solarNegative, lengthM: 1, gauge: "4/0" });
      cable({ from: small.positive, to: plus.stud, lengthM: 1, gauge: "4/0", protectFarEnd: 150 });
      cable({ from: small.negative, to: minus.stud, lengthM: 1, gauge: "4/0" });`;
    const short = { ah: 400, panels: 11, controllerA: 20 };
    const withBoth = (controllerA: number) => `${hut({ ...short, controllerA })}${second}`;
    const controllers = leastChangesOf(bankOf(withBoth(20))).levers.filter(
      ({ change }) => change === "controller",
    );
    expect(controllers.map(({ now }) => now)).toEqual([20]);
    const { least } = controllers[0]!;
    expect(isShort(withBoth(least!))).toBe(false);
    expect(isShort(withBoth(least! - 5))).toBe(true);
  });

  test.each(["driving", "shore"])("hours of %s, by half an hour", (change) => {
    const short = { ah: 200 };
    const { now, least } = leverOf(hut(short), change);
    expect(now).toBe(0);
    const withHours = (hoursPerDay: number) =>
      hut({ ...short, hours: `, ${change}: { hoursPerDay: ${hoursPerDay} }` });
    expect(isShort(withHours(least!))).toBe(false);
    expect(isShort(withHours(least! - 0.5))).toBe(true);
  });

  test("a bank that keeps up may be smaller", () => {
    const large = { batteries: 9, panels: 9, controllerA: 100 };
    const { least } = leverOf(hut(large), "bank");
    expect(least).toBeLessThan(900);
    expect(isShort(hut({ ...large, batteries: least! / 100 }))).toBe(false);
    expect(isShort(hut({ ...large, batteries: least! / 100 - 1 }))).toBe(true);
  });
});

describe("a winter that is not won with a roof", () => {
  const alaska = bankOf(hut({ place: "latitudeDeg: 70, longitudeDeg: -150" }));

  test("no bank and no array is enough, one answer says so of the array, and the search ends", () => {
    const { levers, balances } = leastChangesOf(alaska);
    expect(levers).toContainEqual(expect.objectContaining({ change: "bank", least: undefined }));
    expect(levers.filter(({ change }) => change.startsWith("array"))).toMatchObject([
      { change: "array and controller", least: undefined },
    ]);
    expect(balances).toBeLessThanOrEqual(mostBalances);
  });
});

test("the search ends when nobody waits any more, and takes at most 50 balances", () => {
  const short = bankOf(hut({ panels: 3, controllerA: 20 }));
  let asked = 0;
  for (const _ of leastChangesInSteps(short)) if (++asked === 4) break;
  expect(asked).toBe(4);
  const { balances } = leastChangesOf(short);
  expect(balances).toBeGreaterThan(4);
  expect(balances).toBeLessThanOrEqual(mostBalances);
});

test("hours that the plan limits are not exceeded", () => {
  const { now, most } = leverOf(
    hut({ hours: ", shore: { fromHour: 22, untilHour: 6, hoursPerDay: 1 }" }),
    "shore",
  );
  expect([now, most]).toEqual([1, 8]);
});
