import { describe, expect, test } from "vitest";
import { judge } from "../../judge.ts";
import type { PlanRecord } from "../../model/record.ts";
import { runExample } from "../../rules/page.tester.ts";
import { topologyOf } from "../network/topology/topology.ts";
import { flowsAtBanks } from "./flows-at-bank.ts";
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

test("a scenario of the plan in the same state gives the flows that the network gives if it is solved for them", () => {
  const { network, result } = energyOf(
    `const house = battery({ name: "house", chemistry: "LiFePO4", capacityAh: 200, internalMilliohm: 3 });
     const plus = busBar({ side: "positive" });
     cable({ from: house.positive, to: plus.stud, lengthM: 2, gauge: 6, protect: 60 });
     const on = { from: plus.stud, returnTo: house.negative, oneWayM: 3, gauge: 14, protect: 15, use: {} };
     for (const load of [5, 4, 7]) circuit({ ...on, name: \`load of \${load}\`, load });
     const roof = solarArray({ openCircuitV: 45, shortCircuitA: 11, maxPowerV: 37, maxPowerA: 10.5 });
     const mppt = solarController({ maxInputV: 100, outputA: 30 });
     circuit({ from: roof.positive, returnTo: roof.negative, to: mppt, oneWayM: 5, gauge: 10 });
     circuit({ from: mppt.positive, returnTo: mppt.negative, to: house, oneWayM: 2, gauge: 8 });
     period({ name: "year", latitudeDeg: 45, longitudeDeg: 5 });`,
  ).judgement.network!;
  const flowsWith = (scenarios: typeof result.scenarios) =>
    flowsAtBanks({ network, topology: topologyOf(network), scenarios }).banks[0]!;
  const [own, solved] = [flowsWith([]), flowsWith(result.scenarios)];
  expect(Math.abs(own.sharedOhm)).toBeGreaterThan(0.001);
  expect(solved.sharedOhm).toBeCloseTo(own.sharedOhm, 9);
  expect(own.arrays[0]!.wiringLoss).toBeGreaterThan(0.001);
  expect(solved.arrays[0]!.wiringLoss).toBeCloseTo(own.arrays[0]!.wiringLoss, 9);
});

describe("a bank with its chargers", () => {
  const bank = (battery: string, charging: string, period = "bankHeated: true") =>
    energyOf(
      `build({ voltage: 12 });
       const house = battery({ name: "house", capacityAh: 100, internalMilliohm: 3, ${battery} });
       const on = { from: house.positive, returnTo: house.negative, oneWayM: 3, gauge: 10 };
       circuit({ ...on, name: "lamp", load: 5, use: { hoursPerDay: 2 } });
       circuit({ ...on, name: "fan", load: 4, use: { hoursPerDay: 3 } });
       ${charging}
       period({ name: "year", latitudeDeg: 45, longitudeDeg: 5, ${period} });`,
    ).banks[0]!;
  const shore = (amps: number) => `const shore = shoreCharger({ outputA: ${amps} });
    circuit({ from: shore.positive, returnTo: shore.negative, to: house, oneWayM: 1, gauge: 4 });`;

  test("a charger that the wind drives gives its average in each month, without hours of shore power", () => {
    const averages = [40, 35, 30, 20, 15, 10, 10, 10, 15, 25, 35, 40_000 / 10_000];
    const wind = shore(20).replace("outputA: 20", `outputA: 20, averageWByMonth: [${averages.join(", ")}]`);
    const { sources, months } = bank('chemistry: "AGM"', wind);
    expect(sources.map(({ kind, name }) => [kind, name])).toEqual([["generator", "shore"]]);
    averages.forEach((watts, month) => {
      // The wires take a little.
      expect(sources[0]!.dailyWh[month]).toBeLessThanOrEqual(24 * watts);
      expect(sources[0]!.dailyWh[month]).toBeGreaterThan(24 * watts * 0.98);
      expect(months[month]!.sourcesWh).toBe(sources[0]!.dailyWh[month]);
    });
    // It is no shore power: hours of that have no charger.
    const both = bank('chemistry: "AGM"', wind, "shore: { hoursPerDay: 5 }").sources;
    expect(both.map(({ kind }) => kind)).toEqual(["generator"]);
  });

  test("a battery's own standby is drawn in every hour, at its poles", () => {
    const [bare, standing] = ["", ", standbyW: 2"].map((more) => bank(`chemistry: "AGM"${more}`, shore(40)));
    expect(standing!.consumers.find(({ name }) => name === "house, standby")!.dailyWh).toBeCloseTo(48, 9);
    standing!.months.forEach(({ useWh }, at) => {
      expect(useWh - bare!.months[at]!.useWh).toBeCloseTo(48, 6);
    });
  });

  test("chargers give nothing to the loads while they are off", () => {
    const { months, consumers } = bank(
      'chemistry: "AGM"',
      `${shore(40)}
       const engine = alternator({ ratedA: 60 });
       circuit({ from: engine.positive, returnTo: engine.negative, to: house, oneWayM: 1, gauge: 4 });`,
    );
    const alone = consumers.reduce((sum, { dailyWh }) => sum + dailyWh, 0);
    for (const { useWh } of months) expect(Math.abs(useWh / alone - 1)).toBeLessThan(0.001);
  });

  test("the stated charging current holds at the poles, not behind the loss of charging", () => {
    const { months } = bank(
      'chemistry: "AGM", maxChargeA: 10, reservePercent: 0',
      shore(40),
      'fromDay: "3 Jul", untilDay: "3 Jul", startPercent: 20, bankHeated: true, shore: { fromHour: 0, untilHour: 1 }',
    );
    const [{ sourcesWh, spilledWh, useWh }] = months as [(typeof months)[0]];
    expect(sourcesWh - spilledWh - useWh / 24).toBeCloseTo(10 * 12, 3);
  });

  test.each([
    ['chemistry: "AGM", chargeCutOffC: 40', false],
    ['chemistry: "AGM"', true],
    ['chemistry: "LiFePO4", chargeCutOffC: -40', true],
    ['chemistry: "LiFePO4", chargeCutOffC: 40', false],
  ])("%s: takes charge is %s", (battery, takesCharge) => {
    for (const month of bank(battery, "").months) expect(month.takesCharge).toBe(takesCharge);
  });

  const sunOf = (tracking: boolean, { parallel = 1, oneWayM = 0.1 }) =>
    bank(
      'chemistry: "LiFePO4"',
      `const modules = solarArray({ openCircuitV: 22.5, shortCircuitA: 9.8, maxPowerV: 18.6, maxPowerA: 9.2, parallel: ${parallel} });
       const controller = solarController({ maxInputV: 50, outputA: 8, tracking: ${tracking} });
       circuit({ from: modules.positive, returnTo: modules.negative, to: controller, oneWayM: ${oneWayM}, gauge: 10 });
       circuit({ from: controller.positive, returnTo: controller.negative, to: house, oneWayM: 0.1, gauge: 6 });`,
    ).sources[0]!.dailyWh[5]!;

  test.each([true, false])("tracking is %s: more modules on a controller never give less", (tracking) => {
    const yields = [1, 2, 3, 4].map((parallel) => sunOf(tracking, { parallel }));
    yields.slice(1).forEach((more, index) => {
      expect(more).toBeGreaterThan(yields[index]!);
    });
  });

  test.each([8, 60])(
    "two arrays on a controller of %i A give as much as one of twice the strings",
    (outputA) => {
      const module = "openCircuitV: 45, shortCircuitA: 9.8, maxPowerV: 37, maxPowerA: 9.2";
      const given = (arrays: readonly number[]) =>
        bank(
          'chemistry: "LiFePO4"',
          `const controller = solarController({ maxInputV: 50, outputA: ${outputA} });
         const minus = busBar({ side: "negative" });
         const plus = busBar({ side: "positive" });
         ${arrays
           .map(
             (parallel, index) =>
               `const modules${index} = solarArray({ ${module}, parallel: ${parallel} });
              cable({ from: modules${index}.positive, to: plus.stud, lengthM: 0.01, mm2: 150 });
              cable({ from: modules${index}.negative, to: minus.stud, lengthM: 0.01, mm2: 150 });`,
           )
           .join("")}
         cable({ from: plus.stud, to: controller.solarPositive, lengthM: 6, mm2: 6 });
         cable({ from: minus.stud, to: controller.solarNegative, lengthM: 6, mm2: 6 });
         circuit({ from: controller.positive, returnTo: controller.negative, to: house, oneWayM: 2, gauge: 6 });`,
        ).sources.reduce((sum, { dailyWh }) => sum + dailyWh[5]!, 0);
      const asOne = given([2]);
      expect(asOne).toBeGreaterThan(400);
      expect(Math.abs(given([1, 1]) / asOne - 1)).toBeLessThan(0.0001);
    },
  );

  test("without tracking, a controller that limits the current is no drop in voltage: no cell is too hot for it", () => {
    const watts = [1, 2, 4].map((parallel) => sunOf(false, { parallel }));
    // 8 A at 12.8 V, for at most the 15.5 hours of daylight.
    expect(watts[2]).toBeLessThan(8 * 12.9 * 15.5);
    expect(watts[1]).toBeGreaterThan(watts[0]! * 1.2);
    expect(watts[2]).toBeGreaterThan(watts[1]! * 1.1);
  });

  test("the wires of modules cost energy only with tracking: else they give their current at the voltage of the bank", () => {
    expect(sunOf(true, { oneWayM: 10 })).toBeLessThan(sunOf(true, {}) * 0.99);
    expect(sunOf(false, { oneWayM: 10 })).toBeCloseTo(sunOf(false, {}), 6);
  });
});

test("two devices on an inverter at the same time lose as much in its wires as one of their power", () => {
  const useWith = (watts: readonly number[]) => {
    const devices = watts.map((powerW, index) => `{ name: "${index}", powerW: ${powerW}, use: {} }`);
    return energyOf(
      `const house = battery({ chemistry: "LiFePO4", capacityAh: 200, internalMilliohm: 3 });
       const power = inverter({ continuousW: 1000, idleW: 0, devices: [${devices.join()}] });
       circuit({ from: house.positive, returnTo: house.negative, to: power, oneWayM: 3, gauge: 2 });
       period({ name: "year", latitudeDeg: 45, longitudeDeg: 5 });`,
    ).banks[0]!.months[0]!.useWh;
  };
  const asOne = useWith([800]);
  expect(asOne).toBeGreaterThan((1.01 * 24 * 800) / 0.9);
  expect(Math.abs(useWith([400, 400]) / asOne - 1)).toBeLessThan(0.001);
  expect(Math.abs(useWith([500, 200, 100]) / asOne - 1)).toBeLessThan(0.001);
});

describe("a charger that runs always", () => {
  const converter = (more: string) =>
    energyOf(
      `const house = battery({ name: "house", chemistry: "AGM", capacityAh: 100, internalMilliohm: 3 });
       const boost = dcDcCharger({ name: "boost", outputA: 20, runs: "always" });
       circuit({ from: house.positive, returnTo: house.negative, to: boost, oneWayM: 1, gauge: 4 });
       circuit({ name: "radio", from: house.positive, returnTo: house.negative, load: 2, oneWayM: 1, gauge: 10, use: { hoursPerDay: 5 } });
       const at = { from: boost.outputPositive, returnTo: boost.outputNegative };
       ${more}
       period({ name: "year", latitudeDeg: 45, longitudeDeg: 5 });`,
    ).banks;

  test("feeds the loads behind it from the bank before it", () => {
    const [bank, ...others] = converter(
      'circuit({ ...at, name: "lamp", load: 3, oneWayM: 1, gauge: 10, use: { hoursPerDay: 4 } });',
    );
    expect(others).toEqual([]);
    const lamp = bank!.consumers.find(({ name }) => name === "lamp")!;
    expect(lamp.dailyWh).toBeGreaterThan((14 * 3 * 4) / 0.9);
    expect(bank!.withoutHours).toEqual([]);
  });

  test("into another bank is no use of the loads of either, and makes the verdict of the first at best", () => {
    const banks = converter(
      `const second = battery({ name: "second", chemistry: "AGM", capacityAh: 100, internalMilliohm: 3 });
       circuit({ ...at, to: second, oneWayM: 1, gauge: 4 });
       circuit({ name: "lamp", from: second.positive, returnTo: second.negative, load: 3, oneWayM: 1, gauge: 10, use: { hoursPerDay: 4 } });`,
    );
    expect(banks.map(({ batteries }) => batteries[0]!.name)).toEqual(["house", "second"]);
    const daily = banks.map(({ consumers }) =>
      consumers.map(({ name, dailyWh }) => [name, Math.round(dailyWh / 5) * 5]),
    );
    expect(daily).toEqual([[["radio", 120]], [["lamp", 145]]]);
    expect(banks.map(({ withoutHours }) => withoutHours.map(({ name }) => name))).toEqual([
      ["boost (charging another bank)"],
      [],
    ]);
  });
});

describe("runs of unknown length", () => {
  const energyWith = (more: string) =>
    energyOf(
      `const house = battery({ name: "house", chemistry: "LiFePO4", capacityAh: 200, internalMilliohm: 3 });
       const from = { from: house.positive, returnTo: house.negative, gauge: 14, use: { hoursPerDay: 5 } };
       ${more}
       period({ name: "year", latitudeDeg: 45, longitudeDeg: 5 });`,
    ).banks.map(({ withoutLength, drawLess, ...bank }) => ({
      ...bank,
      withoutLength: withoutLength.map(({ name }) => name),
      drawLess,
    }));
  const lamp = (length: string) => `circuit({ ...from, name: "lamp", loadW: 40, ${length} });`;

  test("none, where every length is known", () => {
    const [bank] = energyWith(lamp("oneWayM: 3"));
    expect([bank!.withoutLength, bank!.drawLess]).toEqual([[], []]);
    expect(bank!.consumers[0]!.withoutLength).toBeUndefined();
  });

  test("of a load, by itself and beside others; and no longer conductor takes less than the figure without", () => {
    const own = (length: string) => energyWith(`${lamp(length)} ${lamp("oneWayM: 3")}`)[0]!;
    const without = own("");
    expect(without.withoutLength).toEqual(["lamp"]);
    expect(without.months[0]!.useWh).toBeLessThan(own("oneWayM: 1").months[0]!.useWh);
    expect(without.consumers.filter(({ withoutLength }) => withoutLength)).toHaveLength(1);
  });

  test("of a resistance: it draws less through a longer one, and the verdict is not at best", () => {
    const heater = (length: string) =>
      energyWith(
        `const heater = load({ name: "heater", resistanceOhm: 1.5, use: { hoursPerDay: 5 } });
         circuit({ ...from, use: undefined, to: heater, ${length} });`,
      )[0]!;
    const without = heater("");
    expect([without.withoutLength, without.drawLess]).toEqual([[], ["heater"]]);
    expect(without.months[0]!.useWh).toBeGreaterThan(heater("oneWayM: 5").months[0]!.useWh);
  });

  test("without hours, or not used, it is in no figure", () => {
    expect(
      energyWith(`${lamp("oneWayM: 3")} ${lamp("").replace("name:", "use: undefined, name:")}`)[0]!
        .withoutLength,
    ).toEqual([]);
  });

  test("only those of its own bank, of two that each have loads", () => {
    const banks = energyWith(
      `${lamp("oneWayM: 3")}
       const engine = battery({ name: "engine", chemistry: "AGM", capacityAh: 70, internalMilliohm: 4 });
       circuit({ ...from, from: engine.positive, returnTo: engine.negative, name: "horn", loadW: 20 });`,
    );
    expect(banks.map(({ batteries, withoutLength }) => [batteries[0]!.name, withoutLength])).toEqual([
      ["house", []],
      ["engine", ["horn"]],
    ]);
  });

  test("between two batteries side by side, and from the modules to the bank", () => {
    const [bank] = energyWith(
      `const second = battery({ name: "second", chemistry: "LiFePO4", capacityAh: 200, internalMilliohm: 3 });
       cable({ name: "beside", from: house.positive, to: second.positive, gauge: 4 });
       cable({ from: house.negative, to: second.negative, lengthM: 1, gauge: 4 });
       const roof = solarArray({ name: "roof", openCircuitV: 45, shortCircuitA: 6, maxPowerV: 37, maxPowerA: 5.4 });
       const mppt = solarController({ maxInputV: 100, outputA: 30 });
       cable({ name: "down", from: roof.positive, to: mppt.solarPositive, gauge: 10 });
       cable({ from: roof.negative, to: mppt.solarNegative, lengthM: 5, gauge: 10 });
       cable({ from: mppt.positive, to: house.positive, lengthM: 1, gauge: 6 });
       cable({ name: "back", from: mppt.negative, to: house.negative, gauge: 6 });
       ${lamp("oneWayM: 3")}`,
    );
    expect([...bank!.withoutLength].sort()).toEqual(["back", "beside", "down"]);
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

describe("a DC-DC charger that asks more of the alternator than it gives", () => {
  const engineOf = (outputA: number) => {
    const { banks, judgement } = energyOf(`
  const house = battery({ name: "house", chemistry: "LiFePO4", capacityAh: 400, internalMilliohm: 1 });
  const start = battery({ name: "start", chemistry: "AGM", capacityAh: 90, internalMilliohm: 5 });
  const engine = alternator({ ratedA: 40 });
  const boost = dcDcCharger({ name: "boost", outputA: ${outputA} });
  circuit({ name: "lamp", from: house.positive, returnTo: house.negative, oneWayM: 1, gauge: 14, protect: 15, load: 5, use: { hoursPerDay: 4 } });
  circuit({ name: "engine", from: engine.positive, returnTo: engine.negative, to: start, oneWayM: 1, gauge: 2 });
  circuit({ name: "input", from: start.positive, returnTo: start.negative, to: boost, oneWayM: 1, gauge: 2 });
  cable({ from: boost.outputPositive, to: house.positive, lengthM: 1, gauge: 2 });
  cable({ from: house.negative, to: boost.outputNegative, lengthM: 1, gauge: 2 });
  period({ name: "trip", latitudeDeg: 45, longitudeDeg: 5, driving: { hoursPerDay: 2 }, fromDay: "1 Jun", untilDay: "30 Jun" });`);
    const [source] = banks[0]!.sources.filter(({ kind }) => kind === "engine");
    return { wh: source?.dailyWh[5] ?? 0, rules: judgement.findings.map(({ rule }) => rule) };
  };

  test("gives what the alternator may give for hours, at any demand", () => {
    const [within, beyond, far] = [20, 40, 80].map((outputA) => engineOf(outputA));
    // 2 h a day of 20 A into a bank at 12.8 V.
    expect(within!.wh).toBeCloseTo(2 * 20 * 12.8, -1);
    // 80 % of 40 A at 14.4 V, less a tenth in the charger.
    for (const { wh, rules } of [beyond!, far!]) {
      expect(wh).toBeGreaterThan(0.9 * 2 * 32 * 14.4 * 0.9);
      expect(wh).toBeLessThan(2 * 32 * 14.4 * 0.9);
      expect(rules).not.toContain("energy/no-charger");
      expect(rules).toContain("alternator/overload");
    }
  });
});
