import { describe, expect, it } from "vitest";
import type { Network, Part, Scenario } from "../../model/network.ts";
import { continuousAlone } from "../continuous-load.ts";
import type { NetworkResult } from "../network-result.ts";
import { atLowVoltage } from "./low-voltage.ts";
import { sampleNetwork } from "./sample-network.tester.ts";
import { scenarioSolver } from "./solver/solve-scenarios.ts";
import { topologyOf } from "./topology/topology.ts";
import { worstCaseOver } from "./worst-case.ts";

/** A bank, a feeder over a shunt and a disconnect, two loads behind it, one of them a motor, and an alternator. */
function boat() {
  const build = sampleNetwork();
  const battery = build.battery();
  const shunt = build.shunt(0.001);
  const disconnect = build.disconnect();
  const [plus, minus] = [build.busBar(), build.busBar()];
  const [light, winch] = [build.load(5), build.load(40)];
  const alternator = build.alternator({ ratedA: 60 });
  const cables = {
    plus: build.cable(disconnect.line, battery.positive),
    feeder: build.cable(disconnect.load, plus),
    minus: build.cable(battery.negative, shunt.batterySide),
    back: build.cable(shunt.systemSide, minus),
    light: build.cable(plus, light.positive),
    lightBack: build.cable(light.negative, minus),
    winch: build.cable(plus, winch.positive),
    winchBack: build.cable(winch.negative, minus),
    alternator: build.cable(alternator.positive, plus),
    alternatorBack: build.cable(alternator.negative, minus),
  };
  const plain = build.network();
  const parts = plain.parts.map(
    (part): Part =>
      part.kind === "load" && part.index === winch.part
        ? { ...part, draws: { as: "motor", runningA: 40, startingA: 160 } }
        : part,
  );
  const [base] = plain.scenarios;
  const only = (on: readonly number[], change: Partial<Scenario> = {}): Scenario => ({
    ...base!,
    on: parts.map(({ kind, index }) => on.includes(index) || (kind !== "load" && kind !== "alternator")),
    ...change,
  });
  const scenarios = [
    only([light.part]),
    only([light.part, winch.part]),
    only([light.part, winch.part], {
      starting: parts.map(({ index }) => index === winch.part),
      momentary: true,
    }),
    only([alternator.part]),
  ];
  const network: Network = { ...plain, parts, scenarios };
  return { network, battery, shunt, disconnect, light, winch, alternator, cables };
}

function worstOf(network: Network): Pick<NetworkResult, "conductors" | "parts" | "supplyPaths"> {
  const solve = scenarioSolver(network);
  const scenarios = network.scenarios.map(solve);
  const lowVoltage = atLowVoltage(network, scenarios, solve);
  const continuous = continuousAlone(network, scenarios, solve);
  return worstCaseOver({
    network,
    topology: topologyOf(network),
    scenarios,
    lowVoltage,
    continuous,
    shares: "undivided",
  });
}

describe("the worst over scenarios", () => {
  it("of a conductor is its greatest current, a starting motor left out, and which scenario it was", () => {
    const { network, cables } = boat();
    const { conductors } = worstOf(network);
    expect(conductors[cables.winch]!.worst).toEqual({ currentA: expect.closeTo(40, 9), scenario: 1 });
    expect(conductors[cables.plus]!.worst).toEqual({ currentA: expect.closeTo(60, 9), scenario: 3 });
    // The same in two scenarios: the first is reported.
    expect(conductors[cables.light]!.worst).toEqual({ currentA: expect.closeTo(5, 9), scenario: 0 });
  });

  it("of a part is what it feeds, draws, passes on, and what a starting motor makes of it", () => {
    const { network, battery, shunt, light, winch, alternator } = boat();
    const { parts } = worstOf(network);
    expect(parts[battery.part]!.feeds).toEqual({ currentA: expect.closeTo(45, 9), scenario: 1 });
    expect(parts[battery.part]!.draws).toEqual({ currentA: expect.closeTo(60, 9), scenario: 3 });
    expect(parts[battery.part]!.surge).toEqual({ currentA: expect.closeTo(165, 9), scenario: 2 });
    expect(parts[shunt.part]!.feeds).toEqual({ currentA: expect.closeTo(60, 9), scenario: 3 });
    expect(parts[shunt.part]!.draws!.currentA).toBe(0);
    expect(parts[alternator.part]!.feeds!.scenario).toBe(3);
    expect(parts[winch.part]!.surge).toEqual({ currentA: expect.closeTo(160, 9), scenario: 2 });
    // Voltages count while the motor starts, too.
    expect(parts[light.part]!.lowestV!.scenario).toBe(2);
    expect(parts[alternator.part]!.lowestV!.scenario).toBe(3);
  });

  it("is undefined where nothing could be solved, and where no motor starts", () => {
    const { network, light, cables } = boat();
    const hopeless = {
      ...network,
      parts: network.parts.map(
        (part): Part =>
          part.kind === "load" && part.index === light.part
            ? { ...part, draws: { as: "power", powerW: 1e6 } }
            : part,
      ),
      scenarios: [network.scenarios[0]!],
    };
    const { conductors, parts, supplyPaths } = worstOf(hopeless);
    expect(conductors[cables.light]!.worst).toBeUndefined();
    expect(parts[light.part]).toEqual({
      feeds: undefined,
      draws: undefined,
      surge: undefined,
      lowestV: undefined,
      forHours: undefined,
      // The least is known all the same: 1 MW at the lowest voltage at which it works.
      least: { currentA: expect.closeTo(1e6 / 10.5, 6), alone: light.part, estimate: { lowestV: 10.5 } },
    });
    expect(supplyPaths).toEqual([]);
    const still = worstOf({ ...network, scenarios: [network.scenarios[0]!] });
    expect(still.parts[light.part]!.surge).toBeUndefined();
  });
});

describe("the way from the bank", () => {
  it("adds up over every conductor of both polarities, and what shunts lose", () => {
    const { network, battery, light, cables } = boat();
    const [way] = worstOf(network).supplyPaths.filter(({ part }) => part === light.part);
    expect(way!.battery).toBe(battery.part);
    expect(way!.scenario).toBe(1);
    expect(way!.legs.map(({ conductor }) => conductor)).toEqual([
      cables.plus,
      cables.feeder,
      cables.light,
      cables.minus,
      cables.back,
      cables.lightBack,
    ]);
    const inCables = way!.legs.reduce((sum, { dropV }) => sum + dropV, 0);
    for (const { dropV } of way!.legs) expect(dropV).toBeGreaterThan(0);
    expect(way!.dropV).toBeCloseTo(inCables + 45 * 0.001, 9);
    expect(way!.arrivingV).toBeCloseTo(12.8 - 45 * 0.004 - way!.dropV, 9);
    expect(way!.dropPercent).toBeCloseTo((100 * way!.dropV) / 12, 9);
    expect(way!.dropLimitPercent).toBe(10);
  });

  it("counts only while the device is on, and not while a motor starts", () => {
    const { network, light, winch } = boat();
    const ways = worstOf({ ...network, scenarios: network.scenarios.slice(2) }).supplyPaths;
    expect(ways.filter(({ part }) => part === light.part || part === winch.part)).toEqual([]);
  });

  it("is told of inverters and of a charger's input, against the bank's own voltage", () => {
    const build = sampleNetwork();
    const [low, high] = [build.battery(), build.battery()];
    const other = build.battery();
    const inverter = build.inverter();
    const charger = build.dcDcCharger({ isolated: true });
    build.cable(low.positive, high.negative);
    build.cable(high.positive, inverter.positive);
    build.cable(inverter.negative, low.negative);
    build.cable(high.positive, charger.inputPositive);
    build.cable(charger.inputNegative, low.negative);
    build.cable(charger.outputPositive, other.positive);
    build.cable(charger.outputNegative, other.negative);
    const network = build.network();
    const { supplyPaths } = worstOf(network);
    expect(supplyPaths.map(({ part, battery }) => [part, battery])).toEqual([
      [inverter.part, high.part],
      [charger.part, high.part],
    ]);
    for (const way of supplyPaths) {
      expect(way.dropLimitPercent).toBe(3);
      expect(way.dropPercent).toBeCloseTo((100 * way.dropV) / 25.6, 9);
    }
  });

  it("is none for what no bank reaches, and goes past an open disconnect by another way", () => {
    const build = sampleNetwork();
    const battery = build.battery();
    const alternator = build.alternator();
    const [fed, lonely] = [build.load(5), build.load(5)];
    const disconnect = build.disconnect();
    build.cable(battery.positive, disconnect.line);
    build.cable(disconnect.load, fed.positive);
    const detour = [build.busBar()];
    const around = [build.cable(battery.positive, detour[0]!), build.cable(detour[0]!, fed.positive)];
    const back = build.cable(fed.negative, battery.negative);
    build.cable(alternator.positive, lonely.positive);
    build.cable(lonely.negative, alternator.negative);
    const plain = build.network();
    const network = {
      ...plain,
      scenarios: [
        {
          ...plain.scenarios[0]!,
          on: plain.parts.map(({ index }) => index !== disconnect.part),
        },
      ],
    };
    const { supplyPaths } = worstOf(network);
    expect(supplyPaths.map(({ part }) => part)).toEqual([fed.part]);
    expect(supplyPaths[0]!.legs.map(({ conductor }) => conductor)).toEqual([...around, back]);
  });
});
