import { beforeEach, describe, expect, it } from "vitest";
import {
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
  solarArray,
  starterMotor,
} from "../plan/index.ts";
import { continueNumberingAt } from "../plan/numbering.ts";
import { complaints, heavy, light, loosely, type Made, modelOf, networkOf } from "./sample-plan.tester.ts";

beforeEach(() => continueNumberingAt(0));

const house = () => battery({ name: "House", chemistry: "AGM", capacityAh: 100 });

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
      ["1: from is a terminal of a busBar that is not in this plan"],
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
      ["1: from is a terminal of a busBar that is not in this plan"],
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
      ["2: from is not a terminal of House"],
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
      ["2: from is not a terminal of part 0"],
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
      ["2: from is not a terminal of House"],
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
      ["2: from is a terminal of a circuit that is not in this plan"],
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
      ["2: to is a negative terminal, and from is a positive one: reversed polarity"],
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
      ["1: from is a negative terminal: reversed polarity"],
    ],
    [
      "a return to a positive terminal",
      () => {
        const bank = house();
        return [bank, circuit(loosely({ from: bank.positive, returnTo: bank.positive, load: 2, ...light }))];
      },
      ["1: returnTo is a positive terminal: reversed polarity"],
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
      "a circuit to a part whose terminals are not called positive and negative",
      () => {
        const bank = house();
        const block = part({ terminals: ["in", "out"] });
        return [bank, block, circuit(loosely({ from: bank.positive, to: block, ...light }))];
      },
      ["2: to has no terminals called positive and negative"],
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
      ["1: to is an inverter that is not in this plan"],
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
      ["0: cutOffV (14.5) is above the charging voltage of its system, 14.4 V"],
    ],
    [
      "an input that is never reached",
      () => [dcDcCharger({ outputA: 9, inputMinV: 21 })],
      ["0: inputMinV (21) is above the charging voltage of its input side, 14.4 V"],
    ],
    [
      "a motor that starts easier than it runs",
      () => [motor({ runningA: 9, startingA: 8 })],
      ["0: startingA (8) is below its running current, 9 A"],
    ],
    [
      "a device that needs more than there is",
      () => [load({ currentA: 2, minimumV: 12.1 })],
      ["0: minimumV (12.1) is above the nominal voltage, 12 V"],
    ],
    [
      "a device that withstands less than it needs",
      () => [
        load({ currentA: 2, minimumV: 11, maximumV: 10.9 }),
        motor({ runningA: 9, startingA: 9, minimumV: 11, maximumV: 10.9 }),
        starterMotor({ crankingA: 90, minimumV: 11, maximumV: 10.9 }),
        inverter({ continuousW: 1000, cutOffV: 11, maximumV: 10.9 }),
        dcDcCharger({ outputA: 9, inputMinV: 11, inputMaxV: 10.9 }),
      ],
      ["maximumV", "maximumV", "maximumV", "maximumV", "inputMaxV"].map(
        (property, i) => `${i}: ${property} (10.9) is below its minimum voltage, 11 V`,
      ),
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
      ['0: terminals.2 ("a") appears twice'],
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
        '0: joins.1.between.1 ("b") is connected to itself',
      ],
    ],
    [
      "batteries in series of a build that is not of 12 V, without their own voltage",
      () => {
        const [settings, lower, upper] = [build({ voltage: 24 }), house(), house()];
        return [settings, lower, upper, cable({ from: lower.positive, to: upper.negative, ...heavy })];
      },
      [1, 2].map((record) => `${record}: nominalV is missing, and the battery is in series with others`),
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
    ["a device that withstands less than there is", () => [load({ currentA: 2, maximumV: 5 })]],
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

describe("what the network shows, and a circuit need not state", () => {
  const refused = (stated: object, end: "a load of its own" | "a part") => {
    const bank = house();
    const bus = busBar({});
    const fed = load({ currentA: 1 });
    const to = end === "a part" ? { to: fed } : { load: 1 };
    const ends = { from: bus.stud, returnTo: bank.negative, ...to };
    const made = [bank, bus, fed, circuit(loosely({ ...ends, ...light, ...stated }))];
    const { network, invalid } = modelOf(...made);
    // No figure depends on them.
    expect(network).toBeDefined();
    return invalid.map(({ path, wrong, allowed }) => `${path.join(".")} ${wrong}. ${allowed}`);
  };

  it.each<[object, "a load of its own" | "a part", readonly string[]]>([
    [{ minimumV: 10 }, "a load of its own", []],
    [
      { minimumV: 10 },
      "a part",
      ["minimumV cannot be given together with to. minimumV of the part where the circuit ends"],
    ],
    [{ maximumV: 32 }, "a load of its own", []],
    [
      { maximumV: 32 },
      "a part",
      ["maximumV cannot be given together with to. maximumV of the part where the circuit ends"],
    ],
    [
      { fedFromBothEnds: true },
      "a load of its own",
      ["fedFromBothEnds cannot be given together with from. none: the network shows which ends are fed"],
    ],
    [{ fromBattery: false }, "a load of its own", []],
    [
      { fromBattery: true },
      "a load of its own",
      [
        "fromBattery contradicts from, which is no terminal of a battery. false, or none: it is taken from the network",
      ],
    ],
  ])("%o with %s", (stated, end, expected) => {
    expect(refused(stated, end)).toEqual(expected);
  });
});
