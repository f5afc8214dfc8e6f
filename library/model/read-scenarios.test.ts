import { beforeEach, describe, expect, it } from "vitest";
import {
  alternator,
  battery,
  build,
  busBar,
  cable,
  circuit,
  dcDcCharger,
  disconnect,
  inverter,
  motor,
  scenario,
  shoreCharger,
  solarArray,
  solarController,
} from "../plan/index.ts";
import { continueNumberingAt } from "../plan/numbering.ts";
import { complaints, heavy, light, loosely, type Made, modelOf, networkOf } from "./sample-plan.tester.ts";

type Input = Readonly<Record<string, unknown>>;

beforeEach(() => continueNumberingAt(0));

const house = () => battery({ name: "House", chemistry: "AGM", capacityAh: 100 });

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

  /** The names of the parts that are off, by scenario. */
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

  it("are three where the plan names none, and one for the start of a motor", () => {
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
      {
        name: "on the bank alone, Pump starting",
        off: sources,
        sunShare: 0,
        momentary: true,
        record: undefined,
      },
    ]);
    expect(built[0]?.restV.slice(0, 2)).toEqual([12, undefined]);
    expect(built.slice(0, 3).flatMap(({ starting }) => starting)).not.toContain(true);
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
    [
      "a starting lamp",
      ({ lamp }) => ({ starting: [lamp] }),
      ["13: starting.0 is Lamp, which is not a motor"],
    ],
    [
      "something that is not there",
      () => ({ on: [{ kind: "load", id: 40 }] }),
      ["13: on.0 is a load that is not in this plan"],
    ],
    ["itself", () => ({ on: [{ kind: "scenario", id: 13 }] }), ["13: on.0 is a scenario"]],
    [
      "a terminal",
      ({ bank }) => ({ off: [bank.positive] }),
      ["13: off.0 (the terminal positive of a battery) is one terminal, not the whole part"],
    ],
    [
      "the charge of a lamp",
      ({ lamp }) => ({ charges: [{ battery: lamp, percent: 50 }] }),
      ["13: charges.0.battery is Lamp, which is not a battery"],
    ],
    [
      "the charge of a battery twice",
      ({ bank }) => ({
        charges: [
          { battery: bank, percent: 50 },
          { battery: bank, percent: 60 },
        ],
      }),
      ["13: charges.1.battery has a charge already"],
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
      [
        "not stated: 2 V a lead-acid cell, 3.2 V a cell of LiFePO4",
        {},
        [agm, lithium, { ...lithium, nominalV: 12.8 }],
        [12, 12.8, 12.8],
      ],
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
        [25.7, 27.2],
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

    it("of one battery, beside that of the others", () => {
      const first = house();
      const starter = battery({ chemistry: "flooded lead-acid", capacityAh: 90 });
      const { network } = modelOf(
        first,
        starter,
        scenario({ name: "x", chargePercent: 60, charges: [{ battery: starter, percent: 20 }] }),
      );
      const [{ restV, restFrom } = { restV: [], restFrom: [] }] = network?.scenarios ?? [];
      expect(restV[1]).toBeCloseTo(11.6 + 0.55 * 0.8, 9);
      expect(restFrom[1]).toBe("charge below the list");
      expect(restFrom[0]).toMatch(/^charge/);
    });
  });
});
