import fc from "fast-check";
import { beforeEach, describe, expect, it } from "vitest";
import {
  alternator,
  battery,
  build,
  busBar,
  cable,
  chassis,
  circuit,
  dcDcCharger,
  disconnect,
  fusePanel,
  inverter,
  load,
  motor,
  part,
  scenario,
  shoreCharger,
  shunt,
  solarArray,
  solarController,
} from "../plan/index.ts";
import { continueNumberingAt } from "../plan/numbering.ts";
import type { Part } from "./network.ts";
import { readModel } from "./read-model.ts";
import { type PlanRecord, type Word, words } from "./record.ts";
import { wordProperties } from "./word-properties.ts";

type Made = { readonly kind: Word; readonly id: number };
type Input = Readonly<Record<string, unknown>>;

beforeEach(() => continueNumberingAt(0));

/** The model of what words gave back, in the order of their calls. */
function modelOf(...made: readonly Made[]) {
  return readModel(recordsOf(made));
}

function recordsOf(made: readonly Made[]): readonly PlanRecord[] {
  return made.map(({ id, ...input }, index): PlanRecord => {
    expect(id, "handed over in the order of calls").toBe(index);
    return { word: input.kind, input: { ...input, id }, fallbackName: `${input.kind} ${index}` };
  });
}

/** The network, of a plan that must be in order. */
function networkOf(...made: readonly Made[]) {
  const { network, networkUnread, invalid, unjudged } = modelOf(...made);
  expect({ invalid, networkUnread, unjudged }).toEqual({ invalid: [], networkUnread: false, unjudged: [] });
  return network!;
}

/** "on record 2, from is …" */
function complaints(...made: readonly Made[]) {
  const { network, networkUnread, invalid } = modelOf(...made);
  expect([network, networkUnread]).toEqual([undefined, true]);
  expect(invalid.every(({ stopsNetwork }) => stopsNetwork === true)).toBe(true);
  return invalid.map(({ record, path, given, wrong }) =>
    [`${record}: ${path.join(".")}`.trim(), given && `(${given})`, wrong].filter(Boolean).join(" "),
  );
}

/** What types would refuse, handed over all the same, as from a plan in JavaScript. */
const loosely = <Given>(given: unknown) => given as Given;

const house = () => battery({ name: "House", chemistry: "AGM", capacityAh: 100 });
const heavy = { lengthFt: 3, gauge: 2 } as const;
const light = { oneWayFt: 10, gauge: 12, protect: 10 } as const;

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
        hasNegativeBus: true,
        terminals: { feed: 0, branch: 1, negative: 2 },
      },
    ],
    ["disconnect", () => disconnect({ ratedA: 200 }), { ratedA: 200, terminals: { line: 0, load: 1 } }],
    [
      "shunt",
      () => shunt({ ratedA: 500 }),
      { ratedA: 500, ohm: 0.0001, terminals: { batterySide: 0, systemSide: 1 } },
    ],
    ["shunt of 75 mV", () => shunt({ ratedA: 300, ratedMV: 75 }), { ohm: 0.00025 }],
    [
      "inverter",
      () => inverter({ continuousW: 1000 }),
      {
        efficiencyPercent: 90,
        efficiencySource: expect.objectContaining({ confirmed: "read" }),
        cutOffV: 10.5,
        cutOffVSource: expect.objectContaining(practice),
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
        efficiencySource: expect.objectContaining(practice),
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
        continuousSource: expect.objectContaining({ section: "11-35a", confirmed: "read" }),
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
    ["chassis", () => chassis({ milliohm: 2 }), { ohm: 0.002, terminals: { bond: 0, metal: 1 } }],
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
      { source: "data sheet p. 3", efficiencySource: said, cutOffVSource: said },
      { continuousSource: stated },
      { internal: { stated: true, lowOhm: 0.005, highOhm: 0.005, source: stated } },
    ]);
  });

  it("a spread part is one of its own", () => {
    const first = house();
    const { parts } = networkOf(first, battery({ ...first, name: "Second" }));
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

describe("conductors", () => {
  it("a cable is one conductor", () => {
    const bank = house();
    const bus = busBar({ side: "positive" });
    const { conductors } = networkOf(
      bank,
      bus,
      cable({
        from: bank.positive,
        to: bus.stud,
        lengthM: 2,
        mm2: 25,
        parallel: 2,
        protect: 100,
        name: "Feed",
      }),
    );
    expect(conductors).toMatchObject([
      {
        record: 2,
        name: "Feed",
        role: "cable",
        from: 0,
        to: 2,
        lengthM: 2,
        near: { ratingA: 100 },
        far: null,
        run: {
          word: "cable",
          wired: true,
          statesLoad: false,
          loadA: 0,
          positiveM: 2,
          negativeM: 0,
          lengthsGiven: { lengthM: 2 },
          conductor: { parallel: 2, system: "metric", mm2: 25 },
          bundledWith: 1,
          bundledWithStated: false,
          fromBattery: true,
          insulationC: 75,
          partlyInvalid: false,
        },
      },
    ]);
  });

  it("a cable says at which of its ends there is a battery", () => {
    const bank = house();
    const bus = busBar({});
    const { conductors } = networkOf(
      bank,
      bus,
      cable({ from: bank.positive, to: bus.stud, ...heavy }),
      cable({ from: bus.stud, to: bank.positive, ...heavy }),
    );
    const ends = conductors.map(({ run }) => [run.fromBattery, run.toBattery]);
    expect(ends).toEqual([
      [true, false],
      [false, true],
    ]);
  });

  it("a circuit is two conductors of one run, and the load that it states", () => {
    const panel = fusePanel({ positions: 4 });
    const model = modelOf(panel, circuit({ name: "Lamp", from: panel.branch, loadW: 24, ...light }));
    const { parts, conductors } = model.network!;
    expect(model.circuits).toEqual([conductors[0]?.run]);
    expect(conductors[1]?.run).toBe(conductors[0]?.run);
    expect(parts[1]).toMatchObject({
      kind: "load",
      name: "Lamp",
      record: 1,
      draws: { as: "power", powerW: 24 },
      statedBy: "circuit",
      terminals: { positive: 3, negative: 4 },
    });
    expect(conductors).toMatchObject([
      { role: "positive", from: 1, to: 3, lengthM: 3.048, near: { ratingA: 10 }, far: null },
      { role: "return", from: 4, to: 2, lengthM: 3.048, near: null, far: null },
    ]);
    expect(conductors[0]?.run).toMatchObject({
      word: "circuit",
      wired: true,
      statesLoad: true,
      loadA: 2,
      loadW: 24,
    });
  });

  it.each<[string, () => Made & object, readonly [string, string]]>([
    ["an inverter", () => inverter({ continuousW: 500 }), ["positive", "negative"]],
    ["a charger, at its input", () => dcDcCharger({ outputA: 20 }), ["inputPositive", "inputNegative"]],
    ["a panel", () => fusePanel({ positions: 4 }), ["feed", "negative"]],
    [
      "a controller, at its solar side",
      () => solarController({ maxInputV: 50, outputA: 10 }),
      ["solarPositive", "solarNegative"],
    ],
    ["a load", () => load({ currentA: 3 }), ["positive", "negative"]],
    ["a motor", () => motor({ runningA: 3, startingA: 9 }), ["positive", "negative"]],
    ["a shore charger", () => shoreCharger({ outputA: 3 }), ["positive", "negative"]],
    ["an alternator", () => alternator({ ratedA: 30 }), ["positive", "negative"]],
    [
      "an array",
      () => solarArray({ openCircuitV: 20, shortCircuitA: 6, maxPowerV: 17, maxPowerA: 5 }),
      ["positive", "negative"],
    ],
    ["another battery", house, ["positive", "negative"]],
  ])("a circuit ends at %s", (_, make, [positive, negative]) => {
    const bank = house();
    const fed = make();
    const { terminals, parts, conductors } = networkOf(
      bank,
      fed,
      circuit({ from: bank.positive, to: loosely(fed), ...light }),
    );
    expect(parts).toHaveLength(2);
    expect(conductors.map(({ to, from }) => [terminals[from]?.name, terminals[to]?.name])).toEqual([
      ["positive", positive],
      [negative, "negative"],
    ]);
    expect(conductors[0]?.run).toMatchObject({ statesLoad: false, loadA: 0, fromBattery: true });
  });

  it.each<[string, () => [Made, unknown], string]>([
    ["a battery", () => [house(), "positive"], "negative"],
    ["a panel's branch", () => [fusePanel({ positions: 2 }), "branch"], "negative"],
    ["a panel's feed", () => [fusePanel({ positions: 2 }), "feed"], "negative"],
    ["a charger's output", () => [dcDcCharger({ outputA: 9 }), "outputPositive"], "outputNegative"],
    ["a charger's input", () => [dcDcCharger({ outputA: 9 }), "inputPositive"], "inputNegative"],
    ["a controller's output", () => [solarController({ maxInputV: 50, outputA: 9 }), "positive"], "negative"],
    [
      "a controller's solar side",
      () => [solarController({ maxInputV: 50, outputA: 9 }), "solarPositive"],
      "solarNegative",
    ],
  ])("the return of a circuit from %s ends at its negative", (_, make, expected) => {
    const [made, name] = make();
    const from = (made as unknown as Record<string, never>)[name as string]!;
    const { terminals, conductors } = networkOf(made, circuit({ from, load: 2, ...light }));
    expect(terminals[conductors[1]!.to]?.name).toBe(expected);
  });

  it("they come in the order of the plan", () => {
    const bank = house();
    const pump = circuit({ from: bank.positive, load: 3, ...light });
    const bus = busBar({});
    const feed = cable({ from: bank.positive, to: bus.stud, ...heavy });
    const lamp = circuit({ from: bus.stud, returnTo: bank.negative, load: 1, ...light });
    const { conductors } = networkOf(bank, pump, bus, feed, lamp);
    expect(conductors.map(({ record, role }) => `${record} ${role}`)).toEqual([
      "1 positive",
      "1 return",
      "3 cable",
      "4 positive",
      "4 return",
    ]);
  });

  it("a terminal of a part that stands behind the cable is found too", () => {
    const terminal = (part: number, terminal: string) => ({
      kind: "terminal",
      part,
      of: "battery",
      terminal,
    });
    const input = { from: terminal(1, "negative"), to: terminal(2, "positive"), ...heavy };
    const bank = { word: "battery", input: { chemistry: "gel", capacityAh: 50 }, fallbackName: "b" } as const;
    const { network } = readModel([{ word: "cable", input, fallbackName: "c" }, bank, bank]);
    expect(network?.conductors).toMatchObject([{ from: 1, to: 2 }]);
  });
});

describe("what contradicts the rest of the plan", () => {
  it.each<[string, () => readonly Made[], readonly string[]]>([
    [
      "a terminal of a part that is not there",
      () => [
        house(),
        cable(
          loosely({
            from: { kind: "terminal", part: 7, of: "busBar", terminal: "stud" },
            to: { kind: "terminal", part: 0, of: "battery", terminal: "positive" },
            ...heavy,
          }),
        ),
      ],
      ["1: from is a terminal of a busBar, and there is no such part"],
    ],
    [
      "a terminal of another kind of part",
      () => [
        house(),
        cable(
          loosely({
            from: { kind: "terminal", part: 0, of: "busBar", terminal: "stud" },
            to: { kind: "terminal", part: 0, of: "battery", terminal: "positive" },
            ...heavy,
          }),
        ),
      ],
      ["1: from is a terminal of a busBar, and there is no such part"],
    ],
    [
      "a terminal that the part does not have",
      () => [
        house(),
        busBar({}),
        cable(
          loosely({
            from: { kind: "terminal", part: 0, of: "battery", terminal: "plus" },
            to: { kind: "terminal", part: 1, of: "busBar", terminal: "stud" },
            ...heavy,
          }),
        ),
      ],
      ["2: from is no terminal that House has"],
    ],
    [
      "a terminal that the plan does not name",
      () => [
        part({ terminals: ["in"] }),
        house(),
        cable(
          loosely({
            from: { kind: "terminal", part: 0, of: "part", terminal: "out" },
            to: { kind: "terminal", part: 1, of: "battery", terminal: "positive" },
            ...heavy,
          }),
        ),
      ],
      ["2: from is no terminal that part 0 has"],
    ],
    [
      "a terminal that every object has",
      () => [
        house(),
        busBar({}),
        cable(
          loosely({
            from: { kind: "terminal", part: 0, of: "battery", terminal: "constructor" },
            to: { kind: "terminal", part: 1, of: "busBar", terminal: "stud" },
            ...heavy,
          }),
        ),
      ],
      ["2: from is no terminal that House has"],
    ],
    [
      "a terminal of a circuit",
      () => {
        const bank = house();
        const lamp = circuit({ from: bank.positive, load: 1, ...light });
        return [
          bank,
          lamp,
          cable(
            loosely({
              from: { kind: "terminal", part: 1, of: "circuit", terminal: "positive" },
              to: bank.positive,
              ...heavy,
            }),
          ),
        ];
      },
      ["2: from is a terminal of a circuit, and there is no such part"],
    ],
    [
      "a cable from a terminal to itself",
      () => {
        const bus = busBar({});
        return [bus, cable({ from: bus.stud, to: bus.stud, ...heavy })];
      },
      ["1: to is where the cable starts"],
    ],
    [
      "a battery across itself",
      () => {
        const bank = house();
        return [bank, cable(loosely({ from: bank.positive, to: bank.negative, ...heavy }))];
      },
      ["1: to is the other pole of the same battery"],
    ],
    [
      "positive to negative",
      () => {
        const bank = house();
        const bus = busBar({ side: "negative" });
        return [bank, bus, cable(loosely({ from: bank.positive, to: bus.stud, ...heavy }))];
      },
      ["2: to is a negative terminal, and from is a positive one"],
    ],
    [
      "the negative of a panel that has no negative bus",
      () => {
        const bank = house();
        const panel = fusePanel({ name: "Panel", positions: 2, negativeBus: false });
        return [bank, panel, cable({ from: bank.negative, to: panel.negative, ...heavy })];
      },
      ["2: to is the negative terminal of Panel, which has no negative bus"],
    ],
    [
      "no return from a panel without a negative bus",
      () => {
        const panel = fusePanel({ name: "Panel", positions: 2, negativeBus: false });
        return [panel, circuit({ from: panel.branch, load: 2, ...light })];
      },
      ["1: returnTo is missing, and Panel has no negative terminal"],
    ],
    [
      "no return from a bus bar",
      () => {
        const bus = busBar({ name: "Bus" });
        return [bus, circuit({ from: bus.stud, load: 2, ...light })];
      },
      ["1: returnTo is missing, and Bus has no negative terminal"],
    ],
    [
      "a circuit from a negative terminal",
      () => {
        const bank = house();
        return [bank, circuit(loosely({ from: bank.negative, load: 2, ...light }))];
      },
      ["1: from is a negative terminal"],
    ],
    [
      "a return to a positive terminal",
      () => {
        const bank = house();
        return [bank, circuit(loosely({ from: bank.positive, returnTo: bank.positive, load: 2, ...light }))];
      },
      ["1: returnTo is a positive terminal"],
    ],
    [
      "a return to where the circuit starts",
      () => {
        const bus = busBar({});
        return [bus, circuit({ from: bus.stud, returnTo: bus.stud, load: 2, ...light })];
      },
      ["1: returnTo is where the circuit starts"],
    ],
    [
      "a circuit to where it starts",
      () => {
        const bank = house();
        return [bank, circuit(loosely({ from: bank.positive, to: bank, ...light }))];
      },
      ["1: to is the part where the circuit starts"],
    ],
    [
      "a circuit to a part without two poles",
      () => {
        const bank = house();
        const bus = busBar({});
        return [bank, bus, circuit(loosely({ from: bank.positive, to: bus, ...light }))];
      },
      ["2: to is a busBar, which has no two poles"],
    ],
    [
      "a circuit to a panel without a negative bus",
      () => {
        const bank = house();
        const panel = fusePanel({ positions: 2, negativeBus: false });
        return [bank, panel, circuit({ from: bank.positive, to: panel, ...light })];
      },
      ["2: to is a fusePanel without a negative bus"],
    ],
    [
      "a circuit to another circuit",
      () => {
        const bank = house();
        const lamp = circuit({ from: bank.positive, load: 1, ...light });
        return [bank, lamp, circuit(loosely({ from: bank.positive, to: lamp, ...light }))];
      },
      ["2: to is a circuit, not a part"],
    ],
    [
      "a circuit to a part that is not there",
      () => [
        house(),
        circuit(
          loosely({
            from: { kind: "terminal", part: 0, of: "battery", terminal: "positive" },
            to: { kind: "inverter", id: 9 },
            ...light,
          }),
        ),
      ],
      ["1: to is an inverter, and there is no such part"],
    ],
    [
      "to without from",
      () => [inverter({ continuousW: 50 }), circuit(loosely({ to: { kind: "inverter", id: 0 }, ...light }))],
      ["1: to needs from beside it"],
    ],
    [
      "returnTo without from",
      () => {
        const bank = house();
        return [bank, circuit(loosely({ returnTo: bank.negative, load: 3, ...light }))];
      },
      ["1: returnTo needs from beside it"],
    ],
    [
      "both a load and a part to end at",
      () => {
        const bank = house();
        const fed = inverter({ continuousW: 50 });
        return [bank, fed, circuit(loosely({ from: bank.positive, load: 3, to: fed, ...light }))];
      },
      ["2: to (an inverter) cannot be given together with load"],
    ],
    [
      "neither a load nor a part to end at",
      () => {
        const bank = house();
        return [bank, circuit(loosely({ from: bank.positive, ...light }))];
      },
      ["1: a load, or the part where it ends, is missing"],
    ],
    [
      "a surge below the continuous power",
      () => [inverter({ continuousW: 1000, surgeW: 999 })],
      ["0: surgeW (999) is below its continuous power, 1,000 W"],
    ],
    [
      "more in use than an inverter gives",
      () => [inverter({ continuousW: 1000, loadW: 1001 })],
      ["0: loadW (1001) is above its continuous power, 1,000 W"],
    ],
    [
      "a cut-off that no charging reaches",
      () => [inverter({ continuousW: 1000, cutOffV: 14.5 })],
      ["0: cutOffV (14.5) is above what its system is charged with, 14.4 V"],
    ],
    [
      "an input that is never reached",
      () => [dcDcCharger({ outputA: 9, inputMinV: 21 })],
      ["0: inputMinV (21) is above what its input side is charged with, 14.4 V"],
    ],
    [
      "a motor that starts easier than it runs",
      () => [motor({ runningA: 9, startingA: 8 })],
      ["0: startingA (8) is below the current that it draws while it runs, 9 A"],
    ],
    [
      "a device that needs more than there is",
      () => [load({ currentA: 2, minimumV: 12.1 })],
      ["0: minimumV (12.1) is above the nominal voltage, 12 V"],
    ],
    [
      "a panel that gives more than it can",
      () => [solarArray({ openCircuitV: 20, shortCircuitA: 5, maxPowerV: 20.1, maxPowerA: 5.1 })],
      [
        "0: maxPowerV (20.1) is above the open-circuit voltage, 20 V",
        "0: maxPowerA (5.1) is above the short-circuit current, 5 A",
      ],
    ],
    [
      "two terminals of one name",
      () => [part({ terminals: ["a", "b", "a"] })],
      ['0: terminals.2 ("a") is there twice'],
    ],
    [
      "terminals that are called like properties",
      () => [part(loosely({ terminals: ["name", "kind", "id", "__proto__", "in"] }))],
      ["name", "kind", "id", "__proto__"].map(
        (name, i) => `0: terminals.${i} ("${name}") is a property of every part`,
      ),
    ],
    [
      "joins of terminals that are not there",
      () => [
        part(loosely({ terminals: ["a", "b"], joins: [{ between: ["a", "c"] }, { between: ["b", "b"] }] })),
      ],
      [
        '0: joins.0.between.1 ("c") is not one of its terminals',
        '0: joins.1.between.1 ("b") is joined to itself',
      ],
    ],
  ])("%s", (_, make, expected) => {
    expect(complaints(...make())).toEqual(expected);
  });

  it.each<[string, () => readonly Made[]]>([
    [
      "a surge equal to the continuous power",
      () => [inverter({ continuousW: 1000, surgeW: 1000, loadW: 1000, cutOffV: 14.4 })],
    ],
    [
      "a panel whose best is its all",
      () => [solarArray({ openCircuitV: 20, shortCircuitA: 5, maxPowerV: 20, maxPowerA: 5 })],
    ],
    ["a motor that starts as it runs", () => [motor({ runningA: 9, startingA: 9, minimumV: 12 })]],
    [
      "batteries in series",
      () => {
        const [lower, upper] = [house(), house()];
        return [lower, upper, cable({ from: lower.positive, to: upper.negative, ...heavy })];
      },
    ],
    [
      "both negatives of a charger joined",
      () => {
        const charger = dcDcCharger({ outputA: 9 });
        return [charger, cable({ from: charger.inputNegative, to: charger.outputNegative, ...heavy })];
      },
    ],
  ])("in order: %s", (_, make) => {
    networkOf(...make());
  });
});

describe("one refused value", () => {
  it("leaves the network unread; its circuits are judged by the load that they state", () => {
    const bank = house();
    const lamp = circuit({ name: "Lamp", from: bank.positive, load: 2, ...light });
    const fed = inverter({ continuousW: 500 });
    const supply = circuit({ name: "Supply", from: bank.positive, to: fed, ...light });
    const lone = circuit({ name: "Alone", load: 3, ...light });
    const bus = busBar(loosely<{ studs: number }>({ studs: 0 }));
    const { network, networkUnread, circuits, unjudged, invalid } = modelOf(
      bank,
      lamp,
      fed,
      supply,
      lone,
      bus,
    );
    expect([network, networkUnread]).toEqual([undefined, true]);
    expect(circuits).toMatchObject([
      { name: "Lamp", loadA: 2, wired: true },
      { name: "Alone", wired: false },
    ]);
    expect(unjudged).toEqual([{ record: 3, name: "Supply" }]);
    expect(invalid).toMatchObject([{ record: 5, path: ["studs"], stopsNetwork: true }]);
  });

  it("of a part does not also refuse the conductors that end there", () => {
    const panel = fusePanel(loosely({ positions: 0 }));
    const odd = part(loosely<{ terminals: string[] }>({ terminals: "in" }));
    const lamp = circuit({ from: panel.branch, load: 2, ...light });
    const tail = cable(
      loosely({
        from: panel.branch,
        to: { kind: "terminal", part: 1, of: "part", terminal: "in" },
        ...heavy,
      }),
    );
    expect(complaints(panel, odd, lamp, tail)).toEqual([
      "0: positions (0) is zero",
      '1: terminals ("in") is not a list',
    ]);
  });

  it.each<[string, Input]>([
    ["that counts", { gauge: 3 }],
    ["that is only shown", { name: 5 }],
    ["of a rule that is not there", { accept: { "bus/ratin": "x" } }],
    ["of a property that is not there", { remark: "x" }],
  ])("%s in a cable", (_, change) => {
    const [one, other] = [busBar({}), busBar({})];
    const { network, networkUnread } = modelOf(
      one,
      other,
      cable(loosely({ from: one.stud, to: other.stud, ...heavy, ...change })),
    );
    expect([network, networkUnread]).toEqual([undefined, true]);
  });

  it("of the build leaves the network unread where something could rely on it", () => {
    for (const [settings, unread] of [
      [{ voltage: 0 }, true],
      [{ name: 5 }, false],
    ] as const) {
      continueNumberingAt(0);
      const { network, networkUnread } = modelOf(build(loosely(settings)), house());
      expect([network === undefined, networkUnread]).toEqual([unread, unread]);
    }
  });

  it("of a circuit alone leaves the network as it is", () => {
    const { network, networkUnread, invalid } = modelOf(house(), circuit(loosely({ load: 0, ...light })));
    expect([network?.parts.length, networkUnread]).toEqual([1, false]);
    expect(invalid).toMatchObject([{ record: 1, path: ["load"] }]);
    expect(invalid[0]).not.toHaveProperty("stopsNetwork");
  });
});

describe("a plan without a network", () => {
  it("has none, and nothing is unread", () => {
    const { network, networkUnread } = modelOf(build({ voltage: 24 }), circuit({ load: 2, ...light }));
    expect([network, networkUnread]).toEqual([undefined, false]);
  });
});

describe("nominal voltages follow the batteries", () => {
  it("on both sides of a charger between two systems", () => {
    const settings = build({ voltage: 24 });
    const starter = battery({ chemistry: "flooded lead-acid", capacityAh: 90, nominalV: 12 });
    const bank = battery({ chemistry: "AGM", capacityAh: 200 });
    const charger = dcDcCharger({ outputA: 15 });
    const engine = alternator({ ratedA: 90 });
    const toCharger = circuit({ from: starter.positive, to: charger, ...light });
    const toStarter = circuit({ from: engine.positive, to: starter, ...light });
    const toBank = cable({ from: charger.outputPositive, to: bank.positive, ...heavy });
    const back = cable({ from: charger.outputNegative, to: bank.negative, ...heavy });
    const lamp = circuit({ from: starter.positive, load: 2, ...light });
    const heater = circuit({ from: bank.positive, loadW: 240, ...light });
    const { parts, conductors } = networkOf(
      settings,
      starter,
      bank,
      charger,
      engine,
      toCharger,
      toStarter,
      toBank,
      back,
      lamp,
      heater,
    );
    expect(parts.find(({ kind }) => kind === "dcDcCharger")).toMatchObject({
      outputV: 28.8,
      inputMinV: 10.5,
    });
    expect(parts.find(({ kind }) => kind === "alternator")).toMatchObject({ outputV: 14.4 });
    expect(parts.filter(({ kind }) => kind === "load")).toMatchObject([{ systemV: 12 }, { systemV: 24 }]);
    expect(conductors.map(({ run }) => run.systemV)).toEqual([12, 12, 12, 12, 24, 24, 12, 12, 24, 24]);
    expect(conductors.at(-1)?.run.loadA).toBe(10);
  });

  it("through batteries in series, switches, shunts, panels and parts", () => {
    const [lower, upper] = [house(), house()];
    const link = cable({ from: lower.positive, to: upper.negative, ...heavy });
    const main = disconnect({ ratedA: 100 });
    const meter = shunt({ ratedA: 100 });
    const relay = part({ terminals: ["in", "out"], joins: [{ between: ["in", "out"] }] });
    const panel = fusePanel({ positions: 2 });
    const lamp = circuit({ from: panel.branch, load: 2, ...light });
    const { conductors } = networkOf(
      lower,
      upper,
      link,
      main,
      meter,
      relay,
      panel,
      lamp,
      cable({ from: upper.positive, to: main.line, ...heavy }),
      cable({ from: main.load, to: relay.in, ...heavy }),
      cable({ from: relay.out, to: panel.feed, ...heavy }),
      cable({ from: lower.negative, to: meter.batterySide, ...heavy }),
      cable({ from: meter.systemSide, to: panel.negative, ...heavy }),
    );
    expect(conductors.map(({ run }) => run.systemV)).toEqual(conductors.map(() => 24));
  });

  it("a charger that feeds what no battery does tells by its own voltage", () => {
    const settings = build({ voltage: 24 });
    const charger = dcDcCharger({ outputA: 15, outputV: 13.8 });
    const lamp = load({ currentA: 2 });
    const { parts } = networkOf(
      settings,
      charger,
      lamp,
      circuit({ from: charger.outputPositive, to: lamp, ...light }),
    );
    expect(parts[1]).toMatchObject({ systemV: 12 });
  });

  it("what hangs nowhere has the build's", () => {
    const { parts } = networkOf(build({ voltage: 48 }), inverter({ continuousW: 500 }), house());
    expect(parts).toMatchObject([{ cutOffV: 42 }, { nominalV: 48 }]);
  });

  it("a battery across another one, the wrong way round, still has an answer", () => {
    const [one, other] = [house(), house()];
    const { parts } = networkOf(
      one,
      other,
      cable({ from: one.positive, to: other.negative, ...heavy }),
      cable({ from: other.positive, to: one.negative, ...heavy }),
      circuit({ from: one.positive, load: 2, ...light }),
    );
    expect(parts[2]).toMatchObject({ systemV: 12 });
  });
});

describe("scenarios", () => {
  function boatParts() {
    const bank = house();
    const main = disconnect({ ratedA: 100 });
    const pump = motor({ name: "Pump", runningA: 5, startingA: 20 });
    const lamp = circuit({ name: "Lamp", from: bank.positive, load: 1, ...light });
    const kettle = inverter({ continuousW: 800 });
    const supply = circuit({ name: "Supply", from: bank.positive, to: kettle, ...light });
    const engine = alternator({ ratedA: 60 });
    const charger = dcDcCharger({ outputA: 20 });
    const always = dcDcCharger({ outputA: 5, runs: "always" });
    const shore = shoreCharger({ outputA: 20 });
    const roof = solarArray({ openCircuitV: 20, shortCircuitA: 6, maxPowerV: 17, maxPowerA: 5 });
    const controller = solarController({ maxInputV: 50, outputA: 10 });
    const bus = busBar({});
    return { bank, main, pump, lamp, kettle, supply, engine, charger, always, shore, roof, controller, bus };
  }

  type Boat = ReturnType<typeof boatParts>;

  /** The names of what is off, by scenario. */
  function offIn(make: (boat: Boat) => Parameters<typeof scenario>[0] | undefined) {
    const parts = boatParts();
    const given = make(parts);
    const network = networkOf(...(Object.values(parts) as Made[]), ...(given ? [scenario(given)] : []));
    const names = [
      "bank",
      "main",
      "pump",
      "lamp",
      "kettle",
      "engine",
      "charger",
      "always",
      "shore",
      "roof",
      "controller",
      "bus",
    ];
    return network.scenarios.map((found) => ({
      ...found,
      off: names.filter((_, index) => !found.on[index]),
    }));
  }

  const sources = ["engine", "charger", "shore", "roof", "controller"];

  it("are three where the plan names none", () => {
    const built = offIn(() => undefined);
    expect(
      built.map(({ name, off, sunShare, momentary, record }) => ({ name, off, sunShare, momentary, record })),
    ).toEqual([
      { name: "everything on", off: [], sunShare: 1, momentary: false, record: undefined },
      { name: "on the bank alone", off: sources, sunShare: 0, momentary: false, record: undefined },
      {
        name: "charging, nothing on",
        off: ["pump", "lamp", "kettle"],
        sunShare: 1,
        momentary: false,
        record: undefined,
      },
    ]);
    expect(built[0]?.restV.slice(0, 2)).toEqual([12, undefined]);
    expect(built.flatMap(({ starting }) => starting)).not.toContain(true);
  });

  it.each<[string, (boat: Boat) => Parameters<typeof scenario>[0], readonly string[]]>([
    ["nothing said: every load, on the bank", () => ({ name: "x" }), sources],
    ["the engine runs", () => ({ name: "x", engine: true }), ["shore", "roof", "controller"]],
    ["shore power", () => ({ name: "x", shore: true }), ["engine", "charger", "roof", "controller"]],
    ["some sun", () => ({ name: "x", sunPercent: 1 }), ["engine", "charger", "shore"]],
    ["a few loads", ({ lamp, pump }) => ({ name: "x", on: [lamp, pump] }), ["kettle", ...sources]],
    [
      "a circuit stands for the part where it ends",
      ({ supply }) => ({ name: "x", on: [supply] }),
      ["pump", "lamp", ...sources],
    ],
    ["all but one", ({ kettle }) => ({ name: "x", off: [kettle] }), ["kettle", ...sources]],
    ["a switch is open", ({ main }) => ({ name: "x", off: [main] }), ["main", ...sources]],
    ["a battery is taken out", ({ bank }) => ({ name: "x", off: [bank] }), ["bank", ...sources]],
    [
      "a source is broken",
      ({ engine }) => ({ name: "x", engine: true, off: [engine] }),
      ["engine", "shore", "roof", "controller"],
    ],
    ["no load at all", () => ({ name: "x", on: [] }), ["pump", "lamp", "kettle", ...sources]],
    [
      "a charger that needs no engine is off",
      ({ always }) => ({ name: "x", off: [always] }),
      ["engine", "charger", "always", "shore", "roof", "controller"],
    ],
    [
      "a motor that starts is on",
      ({ pump, lamp }) => ({ name: "x", on: [lamp], starting: [pump] }),
      ["kettle", ...sources],
    ],
  ])("%s", (_, make, off) => {
    const [found] = offIn(make);
    expect(found).toMatchObject({ name: "x", record: 13 });
    expect(found?.off).toEqual([...off].sort((a, b) => order.indexOf(a) - order.indexOf(b)));
  });
  const order = [
    "bank",
    "main",
    "pump",
    "lamp",
    "kettle",
    "engine",
    "charger",
    "always",
    "shore",
    "roof",
    "controller",
    "bus",
  ];

  it("a starting motor makes it a moment", () => {
    const [found] = offIn(({ pump }) => ({ name: "x", starting: [pump], sunPercent: 40 }));
    expect(found).toMatchObject({ momentary: true, sunShare: 0.4 });
    expect(found?.starting.indexOf(true)).toBe(2);
  });

  it.each<[string, (boat: Boat) => Input, readonly string[]]>([
    ["a bus bar", ({ bus }) => ({ off: [bus] }), ["13: off.0 is a busBar, which is never off"]],
    ["a starting lamp", ({ lamp }) => ({ starting: [lamp] }), ["13: starting.0 is Lamp, which is no motor"]],
    [
      "something that is not there",
      () => ({ on: [{ kind: "load", id: 40 }] }),
      ["13: on.0 is a load, and there is none such in this plan"],
    ],
    ["itself", () => ({ on: [{ kind: "scenario", id: 13 }] }), ["13: on.0 is a scenario"]],
    [
      "a terminal",
      ({ bank }) => ({ off: [bank.positive] }),
      ["13: off.0 (the terminal positive of a battery) is one terminal, not the whole part"],
    ],
    [
      "a charge between two rows",
      () => ({ chargePercent: 60 }),
      ["13: chargePercent (60) is in no row of the rest voltages of AGM batteries"],
    ],
  ])("do not list %s", (_, make, expected) => {
    const parts = boatParts();
    expect(
      complaints(...(Object.values(parts) as Made[]), scenario(loosely({ name: "x", ...make(parts) }))),
    ).toEqual(expected);
  });

  it("do not list a circuit that stands alone", () => {
    const lamp = circuit({ load: 1, ...light });
    expect(complaints(lamp, house(), scenario({ name: "x", off: [lamp] }))).toEqual([
      "2: off.0 is a circuit without from, outside of the network",
    ]);
  });

  describe("rest voltages", () => {
    const restV = (given: Input, ...batteries: Input[]) => {
      const made = batteries.map((values) => battery(loosely({ capacityAh: 100, ...values })));
      const found = networkOf(...made, scenario(loosely({ name: "x", ...given }))).scenarios[0]?.restV;
      return found?.map((volts) => Math.round((volts ?? 0) * 1e6) / 1e6);
    };
    const [agm, lithium, flooded, gel] = [
      { chemistry: "AGM" },
      { chemistry: "LiFePO4" },
      { chemistry: "flooded lead-acid" },
      { chemistry: "gel" },
    ];
    it.each<[string, Input, Input[], number[]]>([
      ["nominal", {}, [agm, { ...lithium, nominalV: 12.8 }], [12, 12.8]],
      ["half full", { chargePercent: 50 }, [agm, lithium, flooded, gel], [12.25, 13.12, 12.3, 12.25]],
      ["empty, where the table goes so far", { chargePercent: 0 }, [agm, lithium], [11.6, 10]],
      ["two thirds of the rows are one chemistry's own", { chargePercent: 80 }, [lithium], [13.28]],
      [
        "24 V",
        { chargePercent: 100 },
        [
          { ...agm, nominalV: 24 },
          { ...lithium, nominalV: 25.6 },
        ],
        [25.7, 29.2],
      ],
      ["a stated voltage", { bankV: 12.2 }, [agm, { ...lithium, nominalV: 12.8 }], [12.2, 12.2]],
      [
        "a stated voltage beside a bank of twice the build's",
        { bankV: 12.2 },
        [agm, { ...agm, nominalV: 24 }],
        [12.2, 24.4],
      ],
    ])("%s", (_, given, batteries, expected) => {
      expect(restV(given, ...batteries)).toEqual(expected);
    });

    it("a stated voltage is shared by batteries in series", () => {
      const settings = build({ voltage: 24 });
      const cell = { chemistry: "AGM", capacityAh: 100, nominalV: 12 } as const;
      const [lower, upper] = [battery(cell), battery(cell)];
      const starter = battery({ ...cell, name: "starter" });
      const { scenarios } = networkOf(
        settings,
        lower,
        upper,
        starter,
        cable({ from: lower.positive, to: upper.negative, ...heavy }),
        cable({ from: lower.negative, to: starter.negative, ...heavy }),
        scenario({ name: "x", bankV: 25 }),
      );
      expect(scenarios[0]?.restV).toEqual([12.5, 12.5, 12.5]);
    });

    it("a charge that only some tables have is refused with those that all have", () => {
      const { invalid } = modelOf(
        house(),
        battery({ chemistry: "flooded lead-acid", capacityAh: 90 }),
        scenario({ name: "x", chargePercent: 0 }),
      );
      expect(invalid).toMatchObject([
        {
          wrong: "is in no row of the rest voltages of flooded lead-acid batteries",
          allowed: "25, 50, 75, 100, or bankV instead",
        },
      ]);
    });
  });
});

it("reads three thousand conductors on one bus", () => {
  const bank = house();
  const bus = busBar({ side: "positive" });
  const feed = cable({ from: bank.positive, to: bus.stud, ...heavy });
  const lamps = Array.from({ length: 1_500 }, () =>
    circuit({ from: bus.stud, returnTo: bank.negative, load: 1, ...light }),
  );
  const { conductors, parts } = networkOf(bank, bus, feed, ...lamps);
  expect([conductors.length, parts.length]).toEqual([3_001, 1_502]);
});

it("gives the same model for the same plan, and makes nothing of the records' own", () => {
  const bank = house();
  const records = recordsOf([
    bank,
    circuit({ from: bank.positive, load: 1, ...light }),
    scenario({ name: "x" }),
  ]);
  const before = structuredClone(records);
  expect(readModel(records)).toEqual(readModel(records));
  expect(records).toEqual(before);
});

it("makes of anything at all either a network whose parts fit together or reasons why not", () => {
  const terminal = fc.record({
    kind: fc.constant("terminal"),
    part: fc.oneof(fc.integer({ min: -1, max: 8 }), fc.anything()),
    of: fc.oneof(fc.constantFrom(...words), fc.anything()),
    terminal: fc.oneof(
      fc.constantFrom("positive", "negative", "stud", "feed", "branch", "line", "load", "a", "__proto__"),
      fc.anything(),
    ),
  });
  const reference = fc.record({ kind: fc.constantFrom(...words), id: fc.integer({ min: -1, max: 8 }) });
  const value = fc.oneof(
    fc.constantFrom<unknown>(
      1,
      4,
      12,
      50,
      105,
      true,
      false,
      "1/0",
      "AGM",
      "always",
      "",
      null,
      undefined,
      0,
      -1,
      1e308,
      Number.NaN,
    ),
    fc.constantFrom<unknown>(["a", "b"], ["a", "a"], [{ between: ["a", "b"] }], { $strange: "NaN" }),
    terminal,
    reference,
    fc.array(fc.oneof(reference, terminal, fc.anything()), { maxLength: 4 }),
    fc.anything(),
  );
  const good: readonly PlanRecord[] = [
    { word: "battery", input: { chemistry: "AGM", capacityAh: 100 }, fallbackName: "a" },
    { word: "fusePanel", input: { positions: 4 }, fallbackName: "b" },
  ];
  const goodInput: Partial<Record<Word, Input>> = {
    battery: { chemistry: "gel", capacityAh: 80 },
    cable: {
      ...heavy,
      from: { kind: "terminal", part: 0, of: "battery", terminal: "positive" },
      to: { kind: "terminal", part: 1, of: "fusePanel", terminal: "feed" },
    },
    circuit: { ...light, load: 3, from: { kind: "terminal", part: 1, of: "fusePanel", terminal: "branch" } },
    scenario: { name: "x" },
    part: { terminals: ["a", "b"] },
    load: { currentA: 3 },
    inverter: { continuousW: 300 },
    dcDcCharger: { outputA: 4 },
    busBar: {},
  };
  const junk = fc.constantFrom(...words).chain((word) =>
    fc
      .tuple(
        fc.constantFrom<Input>(goodInput[word] ?? {}, {}),
        fc.dictionary(
          fc.oneof(fc.constantFrom(...wordProperties[word].properties.keys()), fc.string()),
          value,
          { maxKeys: 3 },
        ),
        fc.boolean(),
        fc.anything(),
      )
      .map(
        ([base, change, asObject, other]): PlanRecord => ({
          word,
          input: asObject ? { ...base, ...change } : base === goodInput[word] ? base : other,
          fallbackName: "x",
        }),
      ),
  );
  let read = 0;
  fc.assert(
    fc.property(fc.array(junk, { maxLength: 6 }), (records) => {
      const all = [...good, ...records];
      const { network, networkUnread, circuits, unjudged, invalid } = readModel(all);
      expect(networkUnread).toBe(network === undefined);
      expect(circuits.length + unjudged.length).toBe(all.filter(({ word }) => word === "circuit").length);
      if (networkUnread) expect(invalid.some(({ stopsNetwork }) => stopsNetwork)).toBe(true);
      if (!network) return;
      read++;
      const { terminals, parts, conductors, scenarios } = network;
      parts.forEach((part, index) => {
        expect(part.index).toBe(index);
        for (const [name, at] of Object.entries(part.terminals))
          expect(terminals[at]).toMatchObject({ part: index, name });
      });
      for (const { from, to, lengthM } of conductors) {
        expect([terminals[from], terminals[to]]).not.toContain(undefined);
        expect(lengthM).toBeGreaterThan(0);
      }
      expect(scenarios.length).toBeGreaterThan(0);
      for (const { on, starting, restV } of scenarios)
        expect([on.length, starting.length, restV.length]).toEqual([
          parts.length,
          parts.length,
          parts.length,
        ]);
    }),
    { numRuns: 2_000 },
  );
  expect(read, "plans of which a network could be read").toBeGreaterThan(100);
});
