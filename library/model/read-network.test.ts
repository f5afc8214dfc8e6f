import fc from "fast-check";
import { beforeEach, describe, expect, it } from "vitest";
import { sampledRuns } from "../../tests/setup/sampled.ts";
import {
  alternator,
  battery,
  build,
  busBar,
  cable,
  circuit,
  dcDcCharger,
  fusePanel,
  inverter,
  load,
  motor,
  part,
  scenario,
  shoreCharger,
  solarArray,
  solarController,
} from "../plan/index.ts";
import { continueNumberingAt } from "../plan/numbering.ts";
import { readModel } from "./read-model.ts";
import { type PlanRecord, type Word, words } from "./record.ts";
import {
  complaints,
  heavy,
  light,
  loosely,
  type Made,
  modelOf,
  networkOf,
  recordsOf,
} from "./sample-plan.tester.ts";
import { wordProperties } from "./word-properties.ts";

type Input = Readonly<Record<string, unknown>>;

beforeEach(() => continueNumberingAt(0));

const house = () => battery({ name: "House", chemistry: "AGM", capacityAh: 100 });

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
          inNetwork: true,
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
      inNetwork: true,
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

describe("one refused value", () => {
  it("leaves the network unread; its circuits are judged by the load that they state", () => {
    const bank = house();
    const lamp = circuit({ name: "Lamp", from: bank.positive, load: 2, ...light });
    const fed = inverter({ continuousW: 500 });
    const supply = circuit({ name: "Supply", from: bank.positive, to: fed, ...light });
    const lone = circuit({ name: "Alone", load: 3, ...light });
    const bus = busBar(loosely({ studs: 0 }));
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
      { name: "Lamp", loadA: 2, inNetwork: true },
      { name: "Alone", inNetwork: false },
    ]);
    expect(unjudged).toEqual([{ record: 3, name: "Supply" }]);
    expect(invalid).toMatchObject([{ record: 5, path: ["studs"], stopsNetwork: true }]);
  });

  it("of a part does not also refuse the conductors that end there", () => {
    const panel = fusePanel(loosely({ positions: 0 }));
    const odd = part(loosely({ terminals: "in" }));
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
    { numRuns: sampledRuns(2_000) },
  );
  expect(read, "plans of which a network could be read").toBeGreaterThan(100);
});
