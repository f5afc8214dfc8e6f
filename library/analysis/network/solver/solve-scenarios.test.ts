import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { sampledRuns } from "../../../../tests/setup/sampled.ts";
import type { Network, Part, Scenario } from "../../../model/network.ts";
import { ampacityOf } from "../../ampacity.ts";
import { conductorTemperatureC } from "../../conductor-temperature.ts";
import type { ScenarioResult, SolvedScenario } from "../../network-result.ts";
import { resistanceAt, wireResistance } from "../../resistance.ts";
import { sampleNetwork } from "../sample-network.tester.ts";
import { nodeTerminal, resistorNetwork } from "./resistor-network.tester.ts";
import { solveScenarios } from "./solve-scenarios.ts";

describe("a constant power behind one resistance", () => {
  // E behind R gives P at V = (E + √(E² − 4 R P)) / 2, as long as P is no more than E² / 4R.
  const network = (emfV: number, ohm: number, powerW: number) =>
    resistorNetwork({
      batteries: [{ positive: 0, negative: 1, emfV, ohm: ohm / 2 }],
      resistances: [{ between: [0, 2], ohm: ohm / 2 }],
      loads: [{ positive: 2, negative: 1, draws: { as: "power", powerW } }],
    });

  it("is found at the upper of its two voltages, right up to the limit", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 10, max: 60, noNaN: true }),
        fc.double({ min: -4, max: 1, noNaN: true }).map((decades) => 10 ** decades),
        fc.oneof(fc.double({ min: 1e-6, max: 0.999, noNaN: true }), fc.constantFrom(1 - 1e-4, 1 - 1e-6)),
        (emfV, ohm, share) => {
          const powerW = (share * emfV ** 2) / (4 * ohm);
          const result = only(network(emfV, ohm, powerW));
          const expectedV = (emfV + Math.sqrt(emfV ** 2 - 4 * ohm * powerW)) / 2;
          expect(result.partV[1]! / expectedV).toBeCloseTo(1, 9);
          expect(result.residualA).toBeLessThanOrEqual(1e-9 * result.largestA);
        },
      ),
      { numRuns: sampledRuns(300) },
    );
  });

  it("has no operating point a millionth above the limit, and says how much there is one for", () => {
    for (const ohm of [1e-4, 0.02, 3]) {
      const limitW = 12 ** 2 / (4 * ohm);
      const [at] = solveScenarios(network(12, ohm, limitW * (1 - 1e-6)));
      expect(at?.state).toBe("solved");
      const [above] = solveScenarios(network(12, ohm, limitW * (1 + 1e-6)));
      expect(above).toMatchObject({ state: "unsolved", why: "collapse", culprits: [1] });
      const [twice] = solveScenarios(network(12, ohm, limitW * 2));
      expect(twice).toMatchObject({ state: "unsolved", why: "collapse", culprits: [1] });
      expect((twice as { reachedShare: number }).reachedShare).toBeCloseTo(0.5, 4);
    }
  });

  it("names the load that falls the furthest first, and not one on another bank", () => {
    const two = resistorNetwork({
      batteries: [
        { positive: 0, negative: 1, emfV: 12, ohm: 0.05 },
        { positive: 4, negative: 5, emfV: 12, ohm: 0.05 },
      ],
      resistances: [
        { between: [0, 2], ohm: 0.01 },
        { between: [0, 3], ohm: 0.05 },
      ],
      loads: [
        { positive: 2, negative: 1, draws: { as: "power", powerW: 300 } },
        { positive: 3, negative: 1, draws: { as: "power", powerW: 500 } },
        { positive: 4, negative: 5, draws: { as: "power", powerW: 100 } },
      ],
    });
    const [result] = solveScenarios(two);
    expect(result).toMatchObject({ state: "unsolved", why: "collapse", culprits: [3, 2] });
  });
});

describe("a source with a limit and no battery", () => {
  const of = (powerW: number) => {
    const build = sampleNetwork();
    const alternator = build.alternator({ ratedA: 50, outputV: 14 });
    const load = build.load();
    build.cable(alternator.positive, load.positive, { lengthM: 0.01 });
    build.cable(load.negative, alternator.negative, { lengthM: 0.01 });
    return withDraw(build.network(), load.part, { as: "power", powerW });
  };

  it("holds its voltage up to its limit, and no operating point is found above", () => {
    const below = only(of(690));
    expect(below.terminalV[0]).toBeGreaterThan(14 * 0.999);
    expect(below.terminalV[0]).toBeLessThan(14);
    expect(solveScenarios(of(701))[0]).toMatchObject({ state: "unsolved", why: "collapse", culprits: [1] });
  });

  it("gives its limit to a greater constant current, whose voltage breaks down", () => {
    const build = sampleNetwork();
    const alternator = build.alternator({ ratedA: 50, outputV: 14 });
    const load = build.load(80);
    build.cable(alternator.positive, load.positive);
    build.cable(load.negative, alternator.negative);
    const result = only(build.network());
    expect(result.partA[alternator.part]).toBeCloseTo(50, 9);
    expect(result.partA[load.part]).toBeCloseTo(-50, 9);
    expect(result.partV[load.part]).toBeLessThan(1);
  });
});

describe("temperature and resistance of conductors", () => {
  it("belong to the current that flows", () => {
    const build = sampleNetwork();
    const battery = build.battery();
    const load = build.load(60);
    for (const conductor of [
      { system: "awg", awg: 8, parallel: 1 },
      { system: "metric", mm2: 10, parallel: 2 },
    ] as const) {
      build.cable(battery.positive, load.positive, { conductor });
      build.cable(load.negative, battery.negative, { conductor, engineSpace: true });
    }
    const network = build.network();
    const result = only(network);
    network.conductors.forEach(({ run, lengthM, from, to }, conductor) => {
      const ampacity = ampacityOf(run);
      if (!ampacity.judged) throw new Error("These are in the tables.");
      const currentA = result.conductorA[conductor]!;
      const conductorC = conductorTemperatureC({
        ambientC: ampacity.ambientC,
        ratingC: ampacity.columnC,
        currentA,
        ampacityA: ampacity.ampacityA,
      });
      expect(conductorC).toBeGreaterThan(ampacity.ambientC);
      expect(result.conductorC[conductor]! / conductorC).toBeCloseTo(1, 9);
      const ohm =
        (resistanceAt(wireResistance(run.conductor)!.ohmPerM20C, conductorC) * lengthM!) /
        run.conductor.parallel;
      expect(result.conductorOhm[conductor]! / ohm).toBeCloseTo(1, 9);
      expect((result.terminalV[from]! - result.terminalV[to]!) / (ohm * currentA)).toBeCloseTo(1, 9);
    });
  });

  // 200 A for 2 s on 10 mm²: I²t / (K · S)² = 0.0157, some 4 K; for hours it would be far above its ampacity.
  it("are those before a start, and a little more after its time", () => {
    const build = sampleNetwork();
    const battery = build.battery();
    const load = build.load();
    const conductor = { system: "metric", mm2: 10, parallel: 1 } as const;
    const cable = build.cable(battery.positive, load.positive, { conductor });
    build.cable(load.negative, battery.negative, { conductor });
    const network = withDraw(build.network(), load.part, {
      as: "motor",
      runningA: 40,
      startingA: 200,
      startingS: 2,
    });
    const [lasting] = network.scenarios;
    const starting = network.parts.map(({ index }) => index === load.part);
    const [before, during] = solveScenarios({
      ...network,
      scenarios: [lasting!, { ...lasting!, momentary: true, starting }],
    });
    if (before?.state !== "solved" || during?.state !== "solved") throw new Error("Both have a solution.");
    expect(during.conductorA[cable]).toBeCloseTo(200, 6);
    // IEC 60949: I²t = (K · S)² · ln(R1 / R0).
    const adiabatic = Math.exp((200 ** 2 * 2) / (226 * 10) ** 2);
    expect(during.conductorOhm[cable]! / before.conductorOhm[cable]!).toBeCloseTo(adiabatic, 3);
    expect(during.conductorC[cable]! - before.conductorC[cable]!).toBeCloseTo(
      ((200 ** 2 * 2) / (226 * 10) ** 2) * (before.conductorC[cable]! + 234.5),
      1,
    );
  });

  it("are those of the table's column above the ampacity", () => {
    const build = sampleNetwork();
    const battery = build.battery({ internal: stated(0.001) });
    const cable = build.cable(battery.positive, battery.negative, { lengthM: 1 });
    const result = only(build.network());
    expect(result.conductorC[cable]).toBe(75);
    expect(result.conductorA[cable]).toBeGreaterThan(1000);
  });
});

describe("parts", () => {
  it("converters draw what they give over their efficiency, and no more than their input takes", () => {
    const limited = (inputMaxA?: number) => {
      const build = sampleNetwork();
      const [from, to] = [build.battery(), build.battery({ nominalV: 12.4 })];
      const charger = build.dcDcCharger({ outputA: 30, ...(inputMaxA ? { inputMaxA } : {}) });
      build.cable(from.positive, charger.inputPositive);
      build.cable(from.negative, charger.inputNegative);
      build.cable(charger.outputPositive, to.positive);
      build.cable(charger.outputNegative, to.negative);
      const result = only(build.network());
      const inputV = result.terminalV[charger.inputPositive]! - result.terminalV[charger.inputNegative]!;
      const inputA = result.inputA[charger.part]!;
      const outputA = result.partA[charger.part]!;
      expect((result.partV[charger.part]! * outputA) / (inputV * inputA)).toBeCloseTo(0.9, 9);
      return { inputA, outputA };
    };
    expect(limited().outputA).toBeCloseTo(30, 9);
    expect(limited().inputA).toBeGreaterThan(30);
    expect(limited(20).inputA).toBeCloseTo(20, 9);
    expect(limited(20).outputA).toBeLessThan(20);
  });

  it("a tracking controller keeps its panels at their greatest power, and another passes their current on", () => {
    const result = (tracking: boolean) => {
      const build = sampleNetwork();
      const battery = build.battery();
      const panels = build.solarArray({ series: 2, parallel: 2 });
      const controller = build.solarController(60, { tracking });
      build.cable(panels.positive, controller.solarPositive);
      build.cable(panels.negative, controller.solarNegative);
      build.cable(controller.positive, battery.positive);
      build.cable(controller.negative, battery.negative);
      return only(build.network());
    };
    const tracked = result(true);
    expect(tracked.partV[1]).toBeCloseTo(36, 6);
    expect(tracked.partA[1]).toBeCloseTo(18, 6);
    expect(tracked.inputA[2]).toBeCloseTo(18, 6);
    const passed = result(false);
    expect(passed.partA[1]).toBeGreaterThan(0.99 * 20);
    expect(passed.partA[1]).toBeLessThanOrEqual(20);
    expect(passed.partA[2]).toBeCloseTo(passed.partA[1]!, 9);
  });

  it("a controller with its battery full takes no more from the panels than it gives", () => {
    const build = sampleNetwork();
    const battery = build.battery({ nominalV: 14.395 });
    const panels = build.solarArray({ series: 2, parallel: 2 });
    const controller = build.solarController(60);
    build.cable(panels.positive, controller.solarPositive);
    build.cable(panels.negative, controller.solarNegative);
    build.cable(controller.positive, battery.positive);
    build.cable(controller.negative, battery.negative);
    const result = only(build.network());
    const inputV = result.terminalV[controller.solarPositive]! - result.terminalV[controller.solarNegative]!;
    expect(result.inputA[controller.part]).toBeLessThan(18);
    expect(0.95 * inputV * result.inputA[controller.part]!).toBeCloseTo(
      result.partV[controller.part]! * result.partA[controller.part]!,
      6,
    );
  });

  it("what passes current on says how much, and an open disconnect leaves what is behind it without a voltage", () => {
    const build = sampleNetwork();
    const battery = build.battery();
    const shunt = build.shunt();
    const disconnect = build.disconnect();
    const bus = build.busBar();
    const loads = [build.load(3), build.load(4)];
    build.cable(battery.positive, disconnect.line);
    build.cable(disconnect.load, bus);
    for (const load of loads) {
      build.cable(bus, load.positive);
      build.cable(load.negative, shunt.systemSide);
    }
    build.cable(shunt.batterySide, battery.negative);
    const network = build.network();
    const closed = only(network);
    expect(closed.partA[disconnect.part]).toBeCloseTo(7, 9);
    expect(closed.partA[shunt.part]).toBeCloseTo(-7, 9);
    expect(closed.partA[network.terminals[bus]!.part]).toBeCloseTo(7, 9);
    expect(closed.terminalV[battery.negative]).toBe(0);
    const open = only(
      inScenario(network, { on: network.parts.map(({ index }) => index !== disconnect.part) }),
    );
    expect(open.terminalV[bus]).toBeNaN();
    expect(open.partV[loads[0]!.part]).toBeNaN();
    expect(open.partA[battery.part]).toBeCloseTo(0, 12);
    expect(open.terminalV[disconnect.line]).toBeCloseTo(12.8, 9);
    expect(open.conductorA.every((currentA) => Math.abs(currentA) < 1e-12)).toBe(true);
  });

  it("a device without a way back draws nothing, and is without a voltage", () => {
    for (const draws of [
      { as: "current", currentA: 5 },
      { as: "power", powerW: 50 },
      { as: "resistance", ohm: 2 },
    ] as const) {
      const build = sampleNetwork();
      const battery = build.battery();
      const load = build.load();
      build.cable(battery.positive, load.positive);
      const result = only(withDraw(build.network(), load.part, draws));
      expect(result.partA[load.part]).toBeCloseTo(0, 12);
      expect(result.partV[load.part]).toBeNaN();
      expect(result.terminalV[load.positive]).toBeCloseTo(12.8, 9);
    }
  });

  it("a charger whose input is dead, or the wrong way round, gives nothing", () => {
    for (const reversed of [true, false]) {
      const build = sampleNetwork();
      const [battery, load] = [build.battery(), build.load(2)];
      const charger = build.dcDcCharger({ isolated: true });
      if (reversed) {
        build.cable(battery.positive, charger.inputNegative);
        build.cable(battery.negative, charger.inputPositive);
      }
      build.cable(charger.outputPositive, load.positive);
      build.cable(charger.outputNegative, load.negative);
      const result = only(build.network());
      expect(result.partA[charger.part]).toBe(0);
      expect(result.partV[load.part]).toBeNaN();
    }
  });

  it("batteries in series add up, and are given against the lowest of them", () => {
    const build = sampleNetwork();
    const [low, high] = [build.battery(), build.battery()];
    const load = build.load(10);
    build.cable(low.positive, high.negative);
    build.cable(high.positive, load.positive);
    build.cable(load.negative, low.negative);
    const result = only(build.network());
    expect(result.terminalV[low.negative]).toBe(0);
    expect(result.terminalV[high.positive]).toBeGreaterThan(25);
    expect(result.partA[low.part]).toBeCloseTo(10, 9);
    expect(result.partA[high.part]).toBeCloseTo(10, 9);
  });
});

describe("what nobody would build", () => {
  it("a battery across itself gives E over its resistance, by cable or by plain metal", () => {
    const shorted = resistorNetwork({
      batteries: [{ positive: 0, negative: 1, emfV: 12, ohm: 0.004 }],
      resistances: [{ between: [0, 1], ohm: 0 }],
    });
    expect(only(shorted).partA[0]).toBeCloseTo(3000, 9);
    const build = sampleNetwork();
    const battery = build.battery({ internal: stated(0.004) });
    build.cable(battery.positive, battery.negative, { lengthM: 1e-6 });
    expect(only(build.network()).partA[battery.part]).toBeCloseTo(12.8 / 0.004, 0);
  });

  it("loops of no resistance, and devices with both terminals on one piece of metal", () => {
    const network = resistorNetwork({
      batteries: [{ positive: 0, negative: 1, emfV: 12, ohm: 0.01 }],
      resistances: [
        { between: [0, 2], ohm: 0 },
        { between: [2, 3], ohm: 0 },
        { between: [3, 0], ohm: 0 },
      ],
      loads: [
        { positive: 2, negative: 3, draws: { as: "power", powerW: 100 } },
        { positive: 3, negative: 1, draws: { as: "current", currentA: 5 } },
      ],
    });
    const result = only(network);
    expect(result.partA[0]).toBeCloseTo(5, 9);
    expect(result.partA[1]).toBeCloseTo(0, 12);
    expect(result.terminalV[nodeTerminal(network, 2)]).toBe(result.terminalV[nodeTerminal(network, 0)]);
  });

  it("numbers that are none give no answer and no exception", () => {
    for (const lengthM of [Number.NaN, -1, 0, Number.POSITIVE_INFINITY]) {
      const build = sampleNetwork();
      const battery = build.battery();
      const load = build.load();
      build.cable(battery.positive, load.positive, { lengthM });
      build.cable(load.negative, battery.negative);
      const [result] = solveScenarios(build.network());
      expect(["solved", "unsolved"]).toContain(result?.state);
      if (Number.isNaN(lengthM)) expect(result).toMatchObject({ state: "unsolved", why: "not-converged" });
    }
  });

  it("10,000 devices at one bus bar, half of them of constant power", () => {
    const build = sampleNetwork();
    const battery = build.battery({ internal: stated(1e-4) });
    const [plus, minus] = [build.busBar(), build.busBar()];
    build.cable(battery.positive, plus, { lengthM: 0.01 });
    build.cable(battery.negative, minus, { lengthM: 0.01 });
    for (let device = 0; device < 10_000; device++) {
      const load = build.load(0.1);
      build.cable(plus, load.positive);
      build.cable(load.negative, minus);
    }
    const network = build.network();
    const parts = network.parts.map(
      (part): Part =>
        part.kind === "load" && part.index % 2 ? { ...part, draws: { as: "power", powerW: 1 } } : part,
    );
    const result = only({ ...network, parts });
    expect(result.residualA).toBeLessThanOrEqual(1e-9 * result.largestA);
    expect(result.partA[battery.part]).toBeGreaterThan(850);
  });

  it("thousands of islands, and a chain of a thousand chargers", () => {
    const build = sampleNetwork();
    let last = build.battery();
    for (let island = 0; island < 1000; island++) {
      const [lonely, load] = [build.battery(), build.load(1)];
      build.cable(lonely.positive, load.positive);
      build.cable(load.negative, lonely.negative);
      const [charger, next] = [build.dcDcCharger({ outputA: 0.01 }), build.battery()];
      build.cable(last.positive, charger.inputPositive);
      build.cable(last.negative, charger.inputNegative);
      build.cable(charger.outputPositive, next.positive);
      build.cable(charger.outputNegative, next.negative);
      last = next;
    }
    const result = only(build.network());
    expect(result.terminalV.every(Number.isFinite)).toBe(true);
  });

  it("a network without a source, and one without anything", () => {
    const build = sampleNetwork();
    const load = build.load();
    build.cable(load.positive, load.negative);
    const result = only(build.network());
    expect(result.terminalV).toEqual([Number.NaN, Number.NaN]);
    expect(result.largestA).toBe(0);
    expect(only(sampleNetwork().network()).terminalV).toEqual([]);
  });
});

describe("where nothing flows", () => {
  it("terminals stand at the voltage of the bank", () => {
    const build = sampleNetwork();
    const battery = build.battery();
    const [plus, minus] = [build.busBar(), build.busBar()];
    build.cable(battery.positive, plus);
    build.cable(battery.negative, minus);
    const charger = build.shoreCharger(30, 12.7);
    build.cable(charger.positive, plus);
    build.cable(charger.negative, minus);
    const result = only(inScenario(build.network(), { restV: [13.3, undefined, undefined, undefined] }));
    expect(result.terminalV[plus]).toBeCloseTo(13.3, 12);
    expect(result.largestA).toBe(0);
    expect(result.conductorA).toEqual([0, 0, 0, 0]);
  });

  // Above their output voltage chargers give no current, at 14.4 V as well as at 40 V.
  it.each([
    { what: "two chargers behind an open disconnect", heldV: [14.4, 14.6] },
    { what: "whichever of them comes first", heldV: [14.6, 14.4] },
    { what: "three of them, two alike", heldV: [14.2, 14.6, 14.6] },
  ])("$what stand at what the one with the highest voltage holds", ({ heldV }) => {
    const build = sampleNetwork();
    const battery = build.battery();
    const [plus, minus] = [build.busBar(), build.busBar()];
    const disconnect = build.disconnect();
    build.cable(battery.positive, disconnect.line);
    build.cable(disconnect.load, plus);
    build.cable(battery.negative, minus);
    const chargers = heldV.map((outputV) => build.shoreCharger(30, outputV));
    for (const charger of chargers) {
      build.cable(charger.positive, plus);
      build.cable(charger.negative, minus);
    }
    const network = build.network();
    const on = network.scenarios[0]!.on.map((isOn, part) => isOn && part !== disconnect.part);
    const result = only(inScenario(network, { on }));
    expect(result.terminalV[plus]).toBeCloseTo(14.6, 9);
    expect(chargers.map(({ part }) => result.partA[part])).toEqual(heldV.map(() => 0));
  });
});

describe("scenarios", () => {
  it("are solved each by itself, in the order in which they stand", () => {
    const build = sampleNetwork();
    const battery = build.battery();
    const load = build.load(10);
    const disconnect = build.disconnect();
    build.cable(battery.positive, disconnect.line);
    build.cable(disconnect.load, load.positive);
    build.cable(load.negative, battery.negative);
    const network = build.network();
    const [base] = network.scenarios;
    const off = (part: number): Scenario => ({
      ...base!,
      on: base!.on.map((on, index) => on && index !== part),
    });
    const lower = { ...base!, restV: base!.restV.map((restV) => restV && 12) };
    const results = solveScenarios({
      ...network,
      scenarios: [base!, off(disconnect.part), base!, off(load.part), lower],
    });
    expect(results.map(({ scenario }) => scenario)).toEqual([0, 1, 2, 3, 4]);
    expect(results[2]).toEqual({ ...results[0], scenario: 2 });
    expect((results[1] as SolvedScenario).terminalV[load.positive]).toBeNaN();
    expect((results[3] as SolvedScenario).partA[load.part]).toBe(0);
    expect((results[4] as SolvedScenario).partV[battery.part]).toBeCloseTo(11.96, 9);
  });
});

function only(network: Network): SolvedScenario {
  const [result] = solveScenarios(network) as [ScenarioResult];
  if (result.state !== "solved") throw new Error(`Not solved: ${JSON.stringify(result)}`);
  return result;
}

function inScenario(network: Network, change: Partial<Scenario>): Network {
  return { ...network, scenarios: [{ ...network.scenarios[0]!, ...change }] };
}

function withDraw(network: Network, load: number, draws: Extract<Part, { kind: "load" }>["draws"]): Network {
  return {
    ...network,
    parts: network.parts.map((part) =>
      part.kind === "load" && part.index === load ? { ...part, draws } : part,
    ),
  };
}

function stated(ohm: number) {
  const source = {
    document: "a test",
    section: "",
    authority: "common practice",
    confirmed: "memory",
  } as const;
  return { stated: true, lowOhm: ohm, highOhm: ohm, source };
}
