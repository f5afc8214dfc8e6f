import { describe, expect, test } from "vitest";
import { judge } from "../../judge.ts";
import type { PlanRecord } from "../../model/record.ts";
import { runExample } from "../../rules/page.tester.ts";
import { testWorld } from "./world.tester.ts";

const wires = `
  const house = battery({ name: "house", chemistry: "LiFePO4", capacityAh: 200, internalMilliohm: 3 });
  const start = battery({ name: "start", chemistry: "AGM", capacityAh: 90, internalMilliohm: 5 });
  const plus = busBar({ side: "positive" });
  cable({ from: house.positive, to: plus.stud, lengthM: 2, gauge: 6, protect: 60 });
  cable({ from: start.negative, to: house.negative, lengthM: 2, gauge: 6 });
  const on = { from: plus.stud, returnTo: house.negative, oneWayM: 3, gauge: 14, protect: 15 };
  circuit({ ...on, name: "lamp", load: 5, use: { hoursPerDay: 24 } });
  circuit({ ...on, name: "fan", load: 4, use: { hoursPerDay: 24 } });
  const link = relay({ ratedA: 100 });
  cable({ from: plus.stud, to: link.line, lengthM: 2, gauge: 6, protect: 60 });
  cable({ from: link.load, to: start.positive, lengthM: 2, gauge: 6, protectFarEnd: 60 });
  const engine = alternator({ ratedA: 60 });
  cable({ from: engine.positive, to: start.positive, lengthM: 2, gauge: 6, protectFarEnd: 80 });
  cable({ from: engine.negative, to: start.negative, lengthM: 2, gauge: 6 });
`;

function energyOf(plan: string) {
  const { records, problems } = runExample(plan);
  expect(problems).toEqual([]);
  const judgement = judge(records as readonly PlanRecord[], problems, undefined, testWorld);
  return { judgement, banks: judgement.energy[0]!.banks };
}

describe("two banks on a charging relay", () => {
  const { banks, judgement } = energyOf(
    `${wires} scenario({ name: "at rest", off: [link] });
     period({ name: "year", latitudeDeg: 45, longitudeDeg: 5, driving: { hoursPerDay: 2 } });`,
  );

  test("the loads of the house bank take nothing from the starter battery", () => {
    expect(banks.map(({ batteries }) => batteries.map(({ name }) => name))).toEqual([["house"]]);
    expect(banks[0]!.consumers.map(({ name }) => name)).toEqual(["lamp", "fan"]);
  });

  test("loads that run all day take what the network solves for all of them together", () => {
    const solved = judgement.network!.result.scenarios[0]!;
    if (solved.state !== "solved") throw new Error("not solved");
    const house = judgement.network!.network.parts.findIndex(({ name }) => name === "house");
    const watts = solved.partA[house]! * solved.partV[house]!;
    for (const { useWh } of banks[0]!.months) expect(useWh).toBeCloseTo(24 * watts, 3);
    // The loss in the conductors that both share, and in their own.
    expect(watts).toBeGreaterThan(9 * 12);
  });

  test("while the engine runs the relay is closed, and the alternator reaches the house bank", () => {
    const [engine] = banks[0]!.sources;
    expect(engine!.kind).toBe("engine");
    // At most the energy that an alternator of 60 A gives in two hours a day.
    for (const dailyWh of engine!.dailyWh) {
      expect(dailyWh).toBeGreaterThan(50);
      expect(dailyWh).toBeLessThan(2 * 60 * 0.8 * 14.6);
    }
  });
});

test("a plan without a period never asks for the table of the world", () => {
  const { records, problems } = runExample(wires);
  const world = () => {
    throw new Error("asked for");
  };
  expect(judge(records as readonly PlanRecord[], problems, undefined, world).energy).toEqual([]);
});

test("hours past midnight, and a clock that is ahead of the sun, move the load and not its sum", () => {
  const use = (from: number, clock: number) =>
    energyOf(
      `${wires.replace("use: { hoursPerDay: 24 }", `use: { fromHour: ${from}, untilHour: ${(from + 8) % 24}, hoursPerDay: 4 }`)}
       period({ name: "year", latitudeDeg: 45, longitudeDeg: 5, clockAheadH: ${clock} });`,
    ).banks[0]!.consumers.find(({ name }) => name === "lamp")!.dailyWh;
  const day = use(8, 0);
  expect(use(20, 0)).toBeCloseTo(day, 6);
  expect(use(20, 1.5)).toBeCloseTo(day, 6);
});
