import { describe, expect, test } from "vitest";
import type { Network } from "../../../model/network.ts";
import { placeIn, sampleNetwork } from "../sample-network.tester.ts";
import { topologyOf } from "./topology.ts";

/** 4 AWG of the sample circuit carries 125 A, 2 AWG 170 A, 12 AWG 25 A (33 CFR 183.425 Table 5, 75 °C). */
const thin = { conductor: { parallel: 1, system: "awg", awg: 12 } } as const;
const thick = { conductor: { parallel: 1, system: "awg", awg: 2 } } as const;

/** The unprotected conductors, one a line: "0 near from 0" is conductor 0 at its near end, reached by part 0. */
function unprotectedIn(network: Network): string[] {
  return topologyOf(network).unprotected.map(
    ({ conductor, ends, sources, way }) =>
      `${conductor} ${ends.join("+")} from ${sources.join("+")}${way.length > 0 ? ` over ${way.join("-")}` : ""}`,
  );
}

/** A battery, a panel and a load; the feeder and the branch have the given protection. */
function radial({ main, branch }: { main?: number; branch?: number }) {
  const build = sampleNetwork();
  const battery = build.battery();
  const panel = build.panel();
  const load = build.load();
  build.cable(battery.positive, panel.feed, main === undefined ? {} : { near: main });
  build.cable(panel.branch, load.positive, { ...thin, ...(branch === undefined ? {} : { near: branch }) });
  build.cable(load.negative, panel.negative, thin);
  build.cable(panel.negative, battery.negative);
  return build;
}

describe("unprotected paths", () => {
  test.each<[string, { main?: number; branch?: number }, string[]]>([
    ["a fuse at each", { main: 100, branch: 20 }, []],
    ["the main fuse at the feeder's ampacity", { main: 125, branch: 20 }, []],
    ["the main fuse is small enough for the branch too", { main: 25 }, []],
    ["a main fuse just too great for the branch", { main: 26 }, ["1 near from 0 over 0"]],
    ["no fuse at the branch", { main: 100 }, ["1 near from 0 over 0"]],
    ["no main fuse", { branch: 20 }, ["0 near from 0"]],
    ["none at all", {}, ["0 near from 0", "1 near from 0 over 0"]],
    ["a fuse that is too great is there: its own rule speaks", { main: 200, branch: 60 }, []],
  ])("radial, %s", (_, fuses, expected) => {
    expect(unprotectedIn(radial(fuses).network())).toEqual(expected);
  });

  test("devices that are too great are named, on the way and on the conductor itself", () => {
    const [path] = topologyOf(radial({ main: 80 }).network()).unprotected;
    expect(path).toMatchObject({ conductor: 1, tooGreat: [0] });
    const build = sampleNetwork();
    const [one, two, load] = [build.battery(), build.battery(), build.load()];
    build.cable(one.positive, load.positive, { near: 60, ...thin });
    build.cable(two.positive, load.positive, { near: 100 });
    expect(topologyOf(build.network()).unprotected).toEqual([
      {
        conductor: 0,
        ends: ["far"],
        sources: [two.part],
        sourceCount: 1,
        fromPanelsAlone: false,
        way: [1],
        tooGreat: [1, 0],
      },
    ]);
  });

  test("two banks: a fuse at one end stops only the bank at that end", () => {
    const build = sampleNetwork();
    const [one, two] = [build.battery(), build.battery()];
    build.cable(one.positive, two.positive, { near: 100 });
    build.cable(one.negative, two.negative);
    // Two batteries connected by one cable are a bank: that is left to other rules.
    expect(unprotectedIn(build.network())).toEqual([]);
    const bus = build.busBar();
    build.cable(one.positive, bus, { near: 100 });
    build.cable(bus, two.positive, { far: 150 });
    expect(unprotectedIn(build.network())).toEqual(["2 far from 1 over 3"]);
  });

  test("a bank and an alternator that does not limit itself: both ends", () => {
    const build = sampleNetwork();
    const [battery, alternator] = [build.battery(), build.alternator({ selfLimiting: false })];
    build.cable(battery.positive, alternator.positive, { near: 100 });
    expect(unprotectedIn(build.network())).toEqual(["0 far from 1"]);
  });

  test.each([
    [125, []],
    [125.1, ["0 far from 1"]],
  ])("an alternator that limits itself to %d A, on a cable for 125 A", (ratedA, expected) => {
    const build = sampleNetwork();
    const [battery, alternator] = [build.battery(), build.alternator({ ratedA })];
    build.cable(battery.positive, alternator.positive, { near: 100 });
    expect(unprotectedIn(build.network())).toEqual(expected);
  });

  test.each([
    [25, false, []],
    [26, false, ["0 near from 1"]],
    [26, true, ["0 near from 1"]],
  ])("a charger of %d A on a cable for 25 A, isolated: %s", (outputA, isolated, expected) => {
    const build = sampleNetwork();
    const [house, charger, starter] = [
      build.battery(),
      build.dcDcCharger({ outputA, isolated }),
      build.battery(),
    ];
    build.cable(charger.outputPositive, house.positive, { far: 20, ...thin });
    build.cable(starter.positive, charger.inputPositive, { near: 25, ...thin });
    build.cable(charger.outputNegative, house.negative);
    build.cable(charger.inputNegative, starter.negative);
    expect(unprotectedIn(build.network())).toEqual(expected);
  });

  // 1.25 · 1.25 · Isc for each string: 10 A give 15.625 A, 12 AWG carries 25 A.
  test.each([
    [1, []],
    [2, ["0 near from 0"]],
  ])("%d strings of panels on a cable for 25 A", (parallel, expected) => {
    const build = sampleNetwork();
    const [array, controller] = [build.solarArray({ parallel }), build.solarController()];
    build.cable(array.positive, controller.solarPositive, thin);
    expect(unprotectedIn(build.network())).toEqual(expected);
  });

  test("a ring is reached from both ends, past its one fuse", () => {
    const build = sampleNetwork();
    const [battery, bus, far] = [build.battery(), build.busBar(), build.busBar()];
    build.cable(battery.positive, bus, { near: 200, ...thick });
    build.cable(bus, far, { near: 100 });
    build.cable(bus, far, {});
    expect(unprotectedIn(build.network())).toEqual(["1 far from 0 over 0-2", "2 near from 0 over 0"]);
  });

  test("a ring with a fuse at the beginning of each way is protected", () => {
    const build = sampleNetwork();
    const [battery, bus, far] = [build.battery(), build.busBar(), build.busBar()];
    build.cable(battery.positive, bus, { near: 150, ...thick });
    build.cable(bus, far, { near: 100 });
    build.cable(bus, far, { near: 125 });
    expect(unprotectedIn(build.network())).toEqual([]);
  });

  test("a ring whose own fuse is too great still counts as there at that end, not at the other", () => {
    const build = sampleNetwork();
    const [battery, bus, far] = [build.battery(), build.busBar(), build.busBar()];
    build.cable(battery.positive, bus, { near: 150, ...thick });
    build.cable(bus, far, { near: 140 });
    build.cable(bus, far, { near: 140 });
    expect(unprotectedIn(build.network())).toEqual(["1 far from 0 over 0-2", "2 far from 0 over 0-1"]);
  });

  test("an open disconnect protects nothing, it may be closed; nor does a shunt", () => {
    const build = sampleNetwork();
    const [battery, disconnect, shunt, load] = [
      build.battery(),
      build.disconnect(),
      build.shunt(),
      build.load(),
    ];
    build.cable(battery.positive, disconnect.line, { near: 100 });
    build.cable(disconnect.load, shunt.batterySide);
    build.cable(shunt.systemSide, load.positive, thin);
    expect(unprotectedIn(build.network())).toEqual(["2 near from 0 over 0-1"]);
  });

  test("batteries side by side, each with its own fuse to a bus", () => {
    const build = sampleNetwork();
    const [one, two, bus, panel] = [build.battery(), build.battery(), build.busBar(), build.panel()];
    build.cable(one.positive, bus, { near: 100 });
    build.cable(two.positive, bus, { near: 100 });
    build.cable(bus, panel.feed, { near: 100 });
    expect(unprotectedIn(build.network())).toEqual([]);
    build.cable(bus, panel.feed, { ...thin });
    expect(unprotectedIn(build.network())).toEqual(["3 near+far from 0+1 over 0"]);
  });

  test("a string in series: its links are left to other rules, what hangs on it is not", () => {
    const build = sampleNetwork();
    const [low, high, load, half] = [build.battery(), build.battery(), build.load(), build.load()];
    build.cable(low.positive, high.negative);
    build.cable(high.positive, load.positive);
    build.cable(load.negative, low.negative);
    build.cable(low.positive, half.positive);
    build.cable(half.negative, low.negative);
    expect(unprotectedIn(build.network())).toEqual(["1 near from 1", "3 near from 0"]);
  });

  test("the return is not judged, through metal or not", () => {
    const build = sampleNetwork();
    const [battery, chassis, load] = [build.battery(), build.chassis(), build.load()];
    build.cable(battery.positive, load.positive, { near: 100 });
    build.cable(load.negative, chassis.metal, thin);
    build.cable(chassis.bond, battery.negative);
    expect(unprotectedIn(build.network())).toEqual([]);
  });

  test("a place that is too hot gives no ampacity, and nothing to judge by", () => {
    const build = sampleNetwork();
    const [battery, load] = [build.battery(), build.load()];
    build.cable(battery.positive, load.positive, { ambientC: 90, ambientStated: true });
    expect(unprotectedIn(build.network())).toEqual([]);
  });
});

describe("sides", () => {
  test("positive and negative reach through conductors, switches, shunts, panels, metal; not through loads", () => {
    const build = sampleNetwork();
    const [battery, disconnect, shunt, load, chassis, alone] = [
      build.battery(),
      build.disconnect(),
      build.shunt(),
      build.load(),
      build.chassis(),
      build.load(),
    ];
    const panel = build.panel();
    const positive = build.cable(battery.positive, disconnect.line);
    build.cable(panel.feed, disconnect.load);
    build.cable(panel.branch, load.positive);
    const negative = build.cable(load.negative, chassis.metal);
    build.cable(chassis.bond, shunt.systemSide);
    build.cable(shunt.batterySide, battery.negative);
    const nowhere = build.cable(alone.positive, build.busBar());
    const { sides, conductorSides } = topologyOf(build.network());
    expect(sides[load.positive]).toBe("positive");
    expect(sides[panel.branch]).toBe("positive");
    expect(sides[shunt.batterySide]).toBe("negative");
    expect(sides[chassis.metal]).toBe("negative");
    expect(sides[alone.positive]).toBe("none");
    expect([positive, negative, nowhere].map((conductor) => conductorSides[conductor])).toEqual([
      "positive",
      "negative",
      "none",
    ]);
  });

  test("links between batteries are told apart", () => {
    const build = sampleNetwork();
    const [a, b, c, d] = [build.battery(), build.battery(), build.battery(), build.battery()];
    build.cable(a.positive, b.negative);
    build.cable(c.positive, d.negative);
    build.cable(b.positive, d.positive);
    build.cable(a.negative, c.negative);
    const { conductorSides, shorts, banks, sides } = topologyOf(build.network());
    expect(conductorSides).toEqual(["series-link", "series-link", "parallel-link", "parallel-link"]);
    expect(shorts).toEqual([]);
    expect([sides[a.positive], sides[b.negative], sides[a.negative]]).toEqual([
      "positive",
      "negative",
      "negative",
    ]);
    expect(banks).toEqual([
      {
        batteries: [0, 1, 2, 3],
        strings: [
          [0, 1],
          [2, 3],
        ],
        positives: [b.positive, d.positive],
        negatives: [a.negative, c.negative],
      },
    ]);
  });

  test("strings that are tied in the middle as well keep their own batteries", () => {
    const build = sampleNetwork();
    const [a, b, c, d] = [build.battery(), build.battery(), build.battery(), build.battery()];
    build.cable(a.positive, d.negative);
    build.cable(c.positive, b.negative);
    build.cable(a.positive, c.positive);
    build.cable(b.positive, d.positive);
    build.cable(a.negative, c.negative);
    const { conductorSides, banks } = topologyOf(build.network());
    expect(conductorSides.slice(0, 3)).toEqual(["series-link", "series-link", "series-link"]);
    expect(banks[0]?.strings).toEqual([
      [0, 3],
      [2, 1],
    ]);
  });

  test("the negatives of a charger that is not isolated are one", () => {
    for (const isolated of [false, true]) {
      const build = sampleNetwork();
      const [house, starter, charger] = [build.battery(), build.battery(), build.dcDcCharger({ isolated })];
      const load = build.load();
      build.cable(charger.outputPositive, house.positive);
      build.cable(charger.outputNegative, load.negative);
      build.cable(starter.positive, charger.inputPositive);
      build.cable(starter.negative, charger.inputNegative);
      expect(topologyOf(build.network()).shorts).toEqual([]);
    }
  });
});

describe("shorts", () => {
  test("a battery across itself, told with the shortest way", () => {
    const build = sampleNetwork();
    const [battery, bus] = [build.battery(), build.busBar()];
    build.cable(battery.positive, bus);
    build.cable(bus, battery.negative);
    build.cable(battery.negative, battery.positive);
    const { shorts, sides, conductorSides, unprotected } = topologyOf(build.network());
    expect(shorts).toEqual([{ source: 0, conductors: [2], through: [] }]);
    expect(sides).toEqual(["both", "both", "both"]);
    expect(new Set(conductorSides)).toEqual(new Set(["shorted"]));
    expect(unprotected).toEqual([]);
  });

  test("one wrong cable is one short, however many batteries are on the bus", () => {
    const build = sampleNetwork();
    const [one, two, plus, minus] = [build.battery(), build.battery(), build.busBar(), build.busBar()];
    build.cable(one.positive, plus);
    build.cable(two.positive, plus);
    build.cable(one.negative, minus);
    build.cable(two.negative, minus);
    build.cable(plus, minus);
    expect(topologyOf(build.network()).shorts).toEqual([{ source: 0, conductors: [0, 4, 2], through: [] }]);
  });

  test("a battery the wrong way round beside another is a ring of two", () => {
    const build = sampleNetwork();
    const [one, two] = [build.battery(), build.battery()];
    build.cable(one.positive, two.negative);
    build.cable(two.positive, one.negative);
    expect(topologyOf(build.network()).shorts).toEqual([{ source: 0, conductors: [0, 1], through: [1] }]);
  });

  test("a short of one battery of a string leaves the string a string", () => {
    const build = sampleNetwork();
    const [low, high] = [build.battery(), build.battery()];
    build.cable(low.positive, high.negative);
    build.cable(high.positive, high.negative);
    const { shorts } = topologyOf(build.network());
    expect(shorts).toEqual([{ source: high.part, conductors: [1], through: [] }]);
  });

  test.each([["a load"], ["a fuse in a part that joins nothing"]])("not through %s", (between) => {
    const build = sampleNetwork();
    const battery = build.battery();
    const [plus, minus] =
      between === "a load"
        ? [build.load()].flatMap(({ positive, negative }) => [positive, negative])
        : [build.other(["in", "out"])].flatMap((part) => [part.in, part.out]);
    build.cable(battery.positive, plus as number);
    build.cable(minus as number, battery.negative);
    expect(topologyOf(build.network()).shorts).toEqual([]);
  });
});

describe("ways from the sources", () => {
  test("to any terminal, on its own side, from the source outwards", () => {
    const build = radial({ main: 100, branch: 20 });
    const { wayFromSource } = topologyOf(build.network());
    const [battery, panel, load] = build.network().parts;
    expect(wayFromSource(load?.terminals["positive" as never] as unknown as number)).toEqual({
      source: battery?.index,
      conductors: [0, 1],
    });
    expect(wayFromSource(load?.terminals["negative" as never] as unknown as number)).toEqual({
      source: battery?.index,
      conductors: [3, 2],
    });
    expect(wayFromSource(panel?.terminals["branch" as never] as unknown as number)?.conductors).toEqual([0]);
    expect(wayFromSource(battery?.terminals["positive" as never] as unknown as number)?.conductors).toEqual(
      [],
    );
  });

  test("none to what hangs on nothing", () => {
    const build = sampleNetwork();
    const load = build.load();
    expect(topologyOf(build.network()).wayFromSource(load.positive)).toBeUndefined();
  });
});

describe("pairs of devices", () => {
  test("those that follow one another outwards, whichever way their conductors are written", () => {
    const build = sampleNetwork();
    const [battery, bus, panel, load] = [build.battery(), build.busBar(), build.panel(), build.load()];
    build.cable(bus, battery.positive, { far: 200 });
    build.cable(bus, panel.feed, { near: 100 });
    build.cable(load.positive, panel.branch, { far: 10 });
    const alternator = build.alternator();
    build.cable(alternator.positive, bus, { far: 120 });
    const network = build.network();
    const pairs = topologyOf(network).devicePairs.map(
      ({ upstream, downstream }) => `${placeIn(network, upstream)} before ${placeIn(network, downstream)}`,
    );
    expect(pairs.sort()).toEqual(["0 far before 1 near", "0 far before 3 far", "1 near before 2 far"]);
  });

  test("of two equal fuses side by side one stands for both, and neither is before the other", () => {
    const build = sampleNetwork();
    const [one, two, bus, load] = [build.battery(), build.battery(), build.busBar(), build.load()];
    build.cable(one.positive, bus, { near: 100 });
    build.cable(two.positive, bus, { near: 100 });
    build.cable(bus, load.positive, { near: 20 });
    expect(topologyOf(build.network()).devicePairs).toEqual([{ upstream: 0, downstream: 2 }]);
  });
});

describe("banks", () => {
  test("side by side on bus bars, through shunts; not through a disconnect, a charger or one pole alone", () => {
    const build = sampleNetwork();
    const [one, two, starter, plus, minus] = [
      build.battery(),
      build.battery(),
      build.battery(),
      build.busBar(),
      build.busBar(),
    ];
    const [shunt, parallelSwitch] = [build.shunt(), build.disconnect()];
    build.cable(one.positive, plus);
    build.cable(two.positive, plus);
    build.cable(one.negative, minus);
    build.cable(two.negative, shunt.batterySide);
    build.cable(shunt.systemSide, minus);
    build.cable(plus, parallelSwitch.line);
    build.cable(parallelSwitch.load, starter.positive);
    build.cable(starter.negative, minus);
    expect(topologyOf(build.network()).banks.map(({ strings }) => strings)).toEqual([[[0], [1]], [[2]]]);
  });

  test("a string of three above two side by side", () => {
    const build = sampleNetwork();
    const [a, b, c, d] = [build.battery(), build.battery(), build.battery(), build.battery()];
    build.cable(a.positive, b.positive);
    build.cable(a.negative, b.negative);
    build.cable(b.positive, c.negative);
    build.cable(c.positive, d.negative);
    expect(topologyOf(build.network()).banks).toMatchObject([
      { batteries: [0, 1, 2, 3], strings: [[0, 2, 3], [1]] },
    ]);
  });
});
