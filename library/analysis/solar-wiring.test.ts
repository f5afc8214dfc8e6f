import { expect, test } from "vitest";
import { sampleNetwork } from "./network/sample-network.tester.ts";
import { coldStringOf, mostInSeries } from "./solar-cold-voltage.ts";
import { stringsOf } from "./solar-strings.ts";
import { solarWiringOf } from "./solar-wiring.ts";

test("from the panels to the controller, through what only passes current on", () => {
  const build = sampleNetwork();
  const roof = build.solarArray();
  const controller = build.solarController();
  const off = build.disconnect();
  const first = build.cable(roof.positive, off.line);
  const second = build.cable(off.load, controller.solarPositive);
  const back = build.cable(controller.solarNegative, roof.negative);
  build.cable(controller.positive, build.battery().positive);
  const [wiring] = solarWiringOf(build.network());
  expect(wiring?.controllers.map(({ index }) => index)).toEqual([controller.part]);
  expect(wiring).toMatchObject({ positive: [first, second], negative: [back] });
  expect(wiring?.field).toHaveLength(1);
  expect(wiring?.string).toHaveLength(1);
});

test("an array without a controller is wired to none", () => {
  const build = sampleNetwork();
  const roof = build.solarArray();
  const bank = build.battery();
  build.cable(roof.positive, bank.positive);
  build.cable(roof.negative, bank.negative);
  expect(solarWiringOf(build.network())).toMatchObject([{ controllers: [], positive: [], negative: [] }]);
});

test("arrays in series are one string, told from the most negative one, and their voltages add up", () => {
  const build = sampleNetwork();
  const upper = build.solarArray({ openCircuitV: 30, lowestC: 25 });
  const lower = build.solarArray({ openCircuitV: 20, series: 2, lowestC: -10 });
  const controller = build.solarController();
  const link = build.cable(lower.positive, upper.negative);
  const top = build.cable(upper.positive, controller.solarPositive);
  const bottom = build.cable(lower.negative, controller.solarNegative);
  const wirings = solarWiringOf(build.network());
  for (const { string, controllers, field } of wirings) {
    expect(string.map(({ index }) => index)).toEqual([lower.part, upper.part]);
    expect(controllers).toHaveLength(1);
    expect(field).toHaveLength(1);
  }
  expect(wirings).toMatchObject([
    { positive: [top], negative: [link] },
    { positive: [link], negative: [bottom] },
  ]);
  const cold = coldStringOf(wirings[0]!.string);
  expect(cold.openCircuitV).toBe(70);
  expect(cold.coldV).toBeCloseTo(40 * 1.14 + 30, 12);
  expect(cold.notJudged).toBeUndefined();
});

test("arrays in a ring come to an end", () => {
  const build = sampleNetwork();
  const [one, other] = [build.solarArray(), build.solarArray()];
  build.cable(one.positive, other.negative);
  build.cable(other.positive, one.negative);
  expect(solarWiringOf(build.network()).map(({ string }) => string.length)).toEqual([2, 2]);
});

test("what cannot be told of counts as at 25 °C, and is said", () => {
  const build = sampleNetwork();
  build.solarArray({ openCircuitV: 22 });
  const [{ array } = { array: undefined! }] = solarWiringOf(build.network());
  expect(coldStringOf([array])).toMatchObject({ coldV: 22, notJudged: { why: "lowest-not-stated" } });
  expect(coldStringOf([{ ...array, lowestC: -50 }])).toMatchObject({
    coldV: 22,
    notJudged: { why: "below-table", lowestC: -50, tableEndsC: -40 },
  });
  expect(mostInSeries({ ...array, lowestC: 25 }, 66)).toBe(3);
  expect(mostInSeries({ ...array, lowestC: 25 }, 65.9)).toBe(2);
  expect(mostInSeries({ ...array, lowestC: 25 }, 21.9)).toBe(0);
});

test("strings of several arrays count together; a fuse outside does for a single string, not for two", () => {
  const build = sampleNetwork();
  const panel = { shortCircuitA: 8, maxSeriesFuseA: 15 };
  const [single, double] = [build.solarArray(panel), build.solarArray({ ...panel, parallel: 2 })];
  const controller = build.solarController();
  const bus = build.busBar();
  build.cable(single.positive, bus, { far: 15 });
  build.cable(double.positive, bus, { far: 15 });
  build.cable(bus, controller.solarPositive, { near: 15 });
  build.cable(single.negative, controller.solarNegative);
  build.cable(double.negative, controller.solarNegative);
  expect(stringsOf(build.network())).toMatchObject([
    { strings: 3, othersA: 20, leastFuseA: 12.5, bestFuseA: 15, protectedOutside: true },
    { strings: 3, othersA: 20, leastFuseA: 12.5, bestFuseA: 15, protectedOutside: false },
  ]);
});

test("a fuse behind the place where strings meet protects none of them", () => {
  const build = sampleNetwork();
  const panel = { shortCircuitA: 12, maxSeriesFuseA: 20 };
  const [one, other] = [build.solarArray(panel), build.solarArray(panel)];
  const controller = build.solarController();
  const bus = build.busBar();
  build.cable(one.positive, bus);
  build.cable(other.positive, bus);
  build.cable(bus, controller.solarPositive, { near: 20 });
  expect(stringsOf(build.network()).map(({ protectedOutside }) => protectedOutside)).toEqual([false, false]);
});
