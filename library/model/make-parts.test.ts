import { beforeEach, describe, expect, it } from "vitest";
import {
  alternator,
  battery,
  busBar,
  chassis,
  dcDcCharger,
  disconnect,
  fusePanel,
  inverter,
  load,
  motor,
  part,
  shoreCharger,
  shunt,
  solarArray,
  solarController,
} from "../plan/index.ts";
import { continueNumberingAt } from "../plan/numbering.ts";
import type { Part } from "./network.ts";
import { sourceOfFigure } from "./part-roles.ts";
import { loosely, type Made, networkOf } from "./sample-plan.tester.ts";

type Input = Readonly<Record<string, unknown>>;

beforeEach(() => continueNumberingAt(0));

const house = () => battery({ name: "House", chemistry: "AGM", capacityAh: 100 });

describe("every kind of part, with its defaults", () => {
  const practice = { authority: "common practice", confirmed: "memory" };
  it.each<[string, () => Made, Partial<Part>]>([
    [
      "battery",
      house,
      {
        kind: "battery",
        name: "House",
        terminals: { positive: 0, negative: 1 },
        chemistry: "AGM",
        nominalV: 12,
        capacityAh: 100,
        internal: { stated: false, lowOhm: 0.002, highOhm: 0.006, source: expect.objectContaining(practice) },
        fullV: 12.85,
        fullVSource: expect.objectContaining({ confirmed: "memory" }),
        accept: {},
      },
    ],
    ["busBar", () => busBar({}), { kind: "busBar", name: "busBar 0", terminals: { stud: 0 } }],
    [
      "fusePanel",
      () => fusePanel({ positions: 6, branchRatedA: 30 }),
      {
        positions: 6,
        branchRatedA: 30,
        negativeBus: true,
        terminals: { feed: 0, branch: 1, negative: 2 },
      },
    ],
    ["disconnect", () => disconnect({ ratedA: 200 }), { ratedA: 200, terminals: { line: 0, load: 1 } }],
    [
      "shunt",
      () => shunt({ ratedA: 500 }),
      { ratedA: 500, ratedMV: 50, terminals: { batterySide: 0, systemSide: 1 } },
    ],
    ["shunt of 75 mV", () => shunt({ ratedA: 300, ratedMV: 75 }), { ratedMV: 75 }],
    [
      "inverter",
      () => inverter({ continuousW: 1000 }),
      {
        efficiencyPercent: 90,
        cutOffV: 10.5,
        idleW: 0,
        loadW: 1000,
        terminals: { positive: 0, negative: 1 },
      },
    ],
    [
      "dcDcCharger",
      () => dcDcCharger({ outputA: 30 }),
      {
        outputA: 30,
        outputV: 14.4,
        efficiencyPercent: 90,
        inputMinV: 10.5,
        isolated: false,
        terminals: { inputPositive: 0, inputNegative: 1, outputPositive: 2, outputNegative: 3 },
      },
    ],
    [
      "alternator",
      () => alternator({ ratedA: 90 }),
      {
        ratedA: 90,
        outputV: 14.4,
        continuousPercent: 80,
        selfLimiting: true,
      },
    ],
    ["shoreCharger", () => shoreCharger({ outputA: 20, outputV: 14.2 }), { outputA: 20, outputV: 14.2 }],
    [
      "solarArray",
      () => solarArray({ openCircuitV: 22, shortCircuitA: 6, maxPowerV: 18, maxPowerA: 5.5 }),
      { openCircuitV: 22, shortCircuitA: 6, maxPowerV: 18, maxPowerA: 5.5, series: 1, parallel: 1 },
    ],
    [
      "solarController",
      () => solarController({ maxInputV: 100, outputA: 20 }),
      {
        maxInputV: 100,
        outputA: 20,
        outputV: 14.4,
        tracking: true,
        efficiencyPercent: 95,
        terminals: { solarPositive: 0, solarNegative: 1, positive: 2, negative: 3 },
      },
    ],
    ["chassis", () => chassis({ milliohm: 2 }), { milliohm: 2, terminals: { bond: 0, metal: 1 } }],
    [
      "load",
      () => load({ currentA: 4 }),
      {
        kind: "load",
        draws: { as: "current", currentA: 4 },
        critical: false,
        continuous: true,
        dropLimitPercent: 10,
        dropLimitStated: false,
        systemV: 12,
        statedBy: "load",
      },
    ],
    [
      "load in watts",
      () => load({ powerW: 50, critical: true }),
      { draws: { as: "power", powerW: 50 }, dropLimitPercent: 3 },
    ],
    [
      "load as a resistance",
      () => load({ resistanceOhm: 2, minimumV: 11 }),
      { draws: { as: "resistance", ohm: 2 }, minimumV: 11 },
    ],
    [
      "motor",
      () => motor({ runningA: 30, startingA: 120 }),
      { kind: "load", draws: { as: "motor", runningA: 30, startingA: 120 }, statedBy: "motor" },
    ],
    [
      "part",
      () =>
        part({
          terminals: ["in", "out", "coil"],
          joins: [{ between: ["in", "out"], milliohm: 2 }, { between: ["out", "coil"] }],
        }),
      {
        kind: "part",
        terminals: { in: 0, out: 1, coil: 2 },
        joins: [
          { between: [0, 1], ohm: 0.002 },
          { between: [1, 2], ohm: 0 },
        ],
      },
    ],
  ])("%s", (_, make, expected) => {
    const { parts, conductors } = networkOf(make());
    expect(conductors).toEqual([]);
    expect(parts).toMatchObject([{ index: 0, record: 0, ...expected }]);
  });

  it("what the plan states has the plan as its source, and the builder's own word for it", () => {
    const { parts } = networkOf(
      inverter({ continuousW: 1000, efficiencyPercent: 93, cutOffV: 11, source: "data sheet p. 3" }),
      alternator({ ratedA: 90, continuousPercent: 70 }),
      battery({ chemistry: "LiFePO4", capacityAh: 100, internalMilliohm: 5 }),
    );
    const stated = { document: "Stated in the plan", authority: "stated in the plan" };
    const said = { ...stated, note: "According to the plan: data sheet p. 3" };
    expect(parts).toMatchObject([
      { source: "data sheet p. 3" },
      {},
      { internal: { stated: true, lowOhm: 0.005, highOhm: 0.005, source: stated } },
    ]);
    const [first, second] = parts;
    expect(sourceOfFigure(first!, "efficiencyPercent")).toMatchObject(said);
    expect(sourceOfFigure(first!, "cutOffV")).toMatchObject(said);
    expect(sourceOfFigure(second!, "continuousPercent")).toMatchObject(stated);
  });

  it.each<[string, () => Made, string, object]>([
    ["inverter", () => inverter({ continuousW: 1000 }), "efficiencyPercent", { confirmed: "read" }],
    ["inverter", () => inverter({ continuousW: 1000 }), "cutOffV", practice],
    ["dcDcCharger", () => dcDcCharger({ outputA: 30 }), "efficiencyPercent", practice],
    ["dcDcCharger", () => dcDcCharger({ outputA: 30 }), "inputMinV", practice],
    [
      "alternator",
      () => alternator({ ratedA: 90 }),
      "continuousPercent",
      { section: "11-35a", confirmed: "read" },
    ],
    ["shoreCharger", () => shoreCharger({ outputA: 20 }), "outputV", practice],
    ["shunt", () => shunt({ ratedA: 300 }), "ratedMV", practice],
  ])("a default of %s has the source of its figure", (_, make, property, source) => {
    const [part] = networkOf(make()).parts;
    expect(part!.taken).toContain(property);
    expect(sourceOfFigure(part!, property)).toMatchObject(source);
  });

  it("a spread part is one of its own", () => {
    const first = house();
    const { parts } = networkOf(first, battery(loosely({ ...first, name: "Second" })));
    expect(parts.map(({ name, record }) => [name, record])).toEqual([
      ["House", 0],
      ["Second", 1],
    ]);
  });

  it("sides of terminals", () => {
    const { terminals } = networkOf(
      house(),
      busBar({}),
      busBar({ side: "negative" }),
      chassis({ milliohm: 1 }),
    );
    expect(terminals.map(({ part, name, side }) => `${part}.${name} ${side}`)).toEqual([
      "0.positive positive",
      "0.negative negative",
      "1.stud either",
      "2.stud negative",
      "3.bond negative",
      "3.metal negative",
    ]);
  });
});

describe("internal resistance", () => {
  const internalOf = (values: Input) =>
    networkOf(battery(loosely({ chemistry: "AGM", capacityAh: 100, ...values }))).parts[0];
  it.each<[string, Input, number, number]>([
    ["AGM, twice the capacity", { capacityAh: 200 }, 0.001, 0.003],
    ["AGM, twice the voltage", { nominalV: 24 }, 0.004, 0.012],
    ["gel", { chemistry: "gel" }, 0.004, 0.008],
    // A starter battery of 90 Ah may have 4 mΩ; a deep-cycle one of 100 Ah, 12 mΩ.
    ["flooded: the widest of two ranges", { chemistry: "flooded lead-acid" }, 0.0036, 0.012],
    // Four bare cells of 0.3 mΩ each; 10 mΩ with a protection circuit.
    ["LiFePO4: the widest of three ranges", { chemistry: "LiFePO4" }, 0.0012, 0.01],
    ["LiFePO4 by its other nominal voltage", { chemistry: "LiFePO4", nominalV: 12.8 }, 0.0012, 0.01],
    ["a stated short-circuit current within the range", { shortCircuitA: 3000 }, 12.85 / 3000, 0.006],
    ["a stated short-circuit current below the range", { shortCircuitA: 1000 }, 12.85 / 1000, 12.85 / 1000],
  ])("%s", (_, values, low, high) => {
    const found = internalOf(values);
    const internal = found?.kind === "battery" ? found.internal : undefined;
    expect(internal?.stated).toBe(false);
    expect(internal?.lowOhm).toBeCloseTo(low, 12);
    expect(internal?.highOhm).toBeCloseTo(high, 12);
  });
});
