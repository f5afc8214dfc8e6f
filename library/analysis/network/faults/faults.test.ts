import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { sampledRuns } from "../../../../tests/setup/sampled.ts";
import type { BatteryPart, Network } from "../../../model/network.ts";
import { ampacityOf } from "../../ampacity.ts";
import { resistanceAt, wireResistance } from "../../resistance.ts";
import { placeIn, sampleNetwork } from "../sample-network.tester.ts";
import { solveDense } from "../solver/dense-solution.tester.ts";
import { topologyOf } from "../topology/topology.ts";
import { faultsOf } from "./faults.ts";

const faultsIn = (network: Network) => faultsOf(network, topologyOf(network));

/** Resistance of one of the sample cables (4 AWG, 75 °C) of a length, Ω. */
function cableOhm(lengthM: number, temperatureC: number): number {
  const wire = wireResistance({ parallel: 1, system: "awg", awg: 4 });
  return resistanceAt(wire?.ohmPerM20C as number, temperatureC) * lengthM;
}

/** The sample battery: 4 mΩ, stated; 13.6 V when full, 12.8 V nominal. */
const bankOhm = 0.004;

describe("worked by hand", () => {
  function oneCircuit() {
    const build = sampleNetwork();
    const [battery, load] = [build.battery(), build.load()];
    build.cable(battery.positive, load.positive, { near: 100, lengthM: 3 });
    build.cable(load.negative, battery.negative, { lengthM: 5 });
    return build.network();
  }

  test("a short at the battery: the voltage when full over the internal resistance", () => {
    const { devices, conductors } = faultsIn(oneCircuit());
    expect(devices[0]?.greatestA).toBeCloseTo(13.6 / bankOhm, 6);
    expect(devices[0]).toMatchObject({ sources: [0], estimated: false, behind: [0] });
    expect(conductors[0]?.greatestA).toBeCloseTo(13.6 / bankOhm, 6);
    expect(conductors[0]?.protectedBy).toEqual([0]);
    // A return is behind the load.
    expect(conductors[1]).toEqual({ greatestA: undefined, protectedBy: [], estimated: false });
  });

  test("a short at the load: nominal voltage over the battery and both conductors at 75 °C", () => {
    const [device] = faultsIn(oneCircuit()).devices;
    expect(device?.least?.currentA).toBeCloseTo(12.8 / (bankOhm + cableOhm(8, 75)), 6);
    expect(device?.least?.conductor).toBe(0);
  });

  // I = E / (R_bank + R_cable), behind 3 m of cold cable.
  test("a device further out sees the cable too", () => {
    const build = sampleNetwork();
    const [battery, bus, load] = [build.battery(), build.busBar(), build.load()];
    build.cable(bus, battery.positive, { far: 150, lengthM: 3 });
    build.cable(bus, load.positive, { near: 40, lengthM: 2 });
    build.cable(load.negative, battery.negative, { lengthM: 1 });
    const { devices, conductors } = faultsIn(build.network());
    const atBus = 13.6 / (bankOhm + cableOhm(3, 20));
    expect(devices.map(({ greatestA }) => greatestA)).toEqual([
      expect.closeTo(13.6 / bankOhm, 6),
      expect.closeTo(atBus, 6),
    ]);
    expect(conductors[1]?.greatestA).toBeCloseTo(atBus, 6);
    expect(conductors.map(({ protectedBy }) => protectedBy)).toEqual([[0], [1], []]);
    // At the bus there is no negative: the return path is assumed to be as long as the supply path.
    expect(devices[0]?.least?.currentA).toBeCloseTo(12.8 / (bankOhm + 2 * cableOhm(3, 75)), 6);
    expect(devices[1]?.least?.currentA).toBeCloseTo(12.8 / (bankOhm + cableOhm(6, 75)), 6);
  });

  test("batteries side by side, each with its own fuse", () => {
    const build = sampleNetwork();
    const [one, two, bus, load] = [build.battery(), build.battery(), build.busBar(), build.load()];
    build.cable(one.positive, bus, { near: 150, lengthM: 1 });
    build.cable(two.positive, bus, { near: 150, lengthM: 1 });
    build.cable(one.negative, two.negative, { lengthM: 0.5 });
    build.cable(bus, load.positive, { near: 40, lengthM: 2 });
    build.cable(load.negative, two.negative, { lengthM: 2 });
    const { devices } = faultsIn(build.network());
    const leg = bankOhm + cableOhm(1, 20);
    // Behind its own fuse each battery is alone; before it, the other one comes through both fuses and both cables.
    expect(devices[0]?.greatestA).toBeCloseTo(13.6 / bankOhm, 6);
    expect(devices[0]?.sources).toEqual([0]);
    expect(devices[2]?.greatestA).toBeCloseTo((2 * 13.6) / leg, 6);
    expect(devices[2]?.sources).toEqual([0, 1]);
    // For a short at the bus, each fuse carries its own battery's share only.
    expect(devices[0]?.behind).toEqual([0, 1]);
    expect(devices[1]?.behind).toEqual([0, 1]);
  });

  test.each([
    [64, "worked out"],
    [65, "not worked out"],
  ])("of %i batteries side by side the share of each is %s", (count, expected) => {
    const build = sampleNetwork();
    const [plus, minus, load] = [build.busBar(), build.busBar(), build.load()];
    for (let index = 0; index < count; index++) {
      const battery = build.battery();
      build.cable(battery.positive, plus, { near: 100, lengthM: 1 });
      build.cable(battery.negative, minus, { lengthM: 1 });
    }
    build.cable(plus, load.positive, { lengthM: 3 });
    build.cable(load.negative, minus, { lengthM: 3 });
    for (const { least, leastNotWorkedOut } of faultsIn(build.network()).devices) {
      expect(leastNotWorkedOut ? "not worked out" : "worked out").toBe(expected);
      expect(least === undefined).toBe(expected === "not worked out");
    }
  });

  test("batteries in series: voltages and resistances add up", () => {
    const build = sampleNetwork();
    const [low, high, load] = [build.battery(), build.battery(), build.load()];
    build.cable(low.positive, high.negative, { lengthM: 0.3 });
    build.cable(high.positive, load.positive, { near: 100, lengthM: 2 });
    build.cable(load.negative, low.negative, { lengthM: 2 });
    const [device] = faultsIn(build.network()).devices;
    expect(device?.greatestA).toBeCloseTo((2 * 13.6) / (2 * bankOhm + cableOhm(0.3, 20)), 6);
    expect(device?.sources).toEqual([0, 1]);
    expect(device?.least?.currentA).toBeCloseTo((2 * 12.8) / (2 * bankOhm + cableOhm(4.3, 75)), 6);
  });

  test("a charger adds its limit to the greatest, nothing to the least", () => {
    const build = sampleNetwork();
    const [battery, charger, load] = [build.battery(), build.shoreCharger(30), build.load()];
    build.cable(battery.positive, load.positive, { near: 100, lengthM: 2 });
    build.cable(load.negative, battery.negative, { lengthM: 2 });
    const before = faultsIn(build.network()).devices[0];
    build.cable(charger.positive, battery.positive, { far: 40, lengthM: 1 });
    build.cable(charger.negative, battery.negative, { lengthM: 1 });
    const after = faultsIn(build.network()).devices;
    expect(after[0]?.greatestA).toBeCloseTo((before?.greatestA as number) + 30, 6);
    expect(after[0]?.sources).toEqual([0, 1]);
    expect(after[0]?.least?.currentA).toBeCloseTo(before?.least?.currentA as number, 6);
    // The charger's own fuse, at the battery: the battery pushes back through it.
    expect(after[1]?.greatestA).toBeCloseTo(13.6 / bankOhm, 6);
  });

  test("a charger alone, with no battery anywhere", () => {
    const build = sampleNetwork();
    const [charger, load] = [build.shoreCharger(30), build.load()];
    build.cable(charger.positive, load.positive, { near: 40, lengthM: 4 });
    build.cable(load.negative, charger.negative, { lengthM: 4 });
    const [device] = faultsIn(build.network()).devices;
    // Less than a millionth of it goes through the resistance that models "no battery".
    expect(device?.greatestA).toBeCloseTo(30, 4);
    expect(device).toMatchObject({ sources: [0], estimated: false, least: undefined });
  });

  test.each([
    ["a stated short-circuit current overrules the resistance", { shortCircuitA: 5000 }, 5000, false],
    [
      "the low end of a usual range, and said so",
      { internal: { stated: false, lowOhm: 0.002, highOhm: 0.008, source: {} as never } },
      6800,
      true,
    ],
  ])("%s", (_, change: Partial<BatteryPart>, greatestA, estimated) => {
    const build = sampleNetwork();
    const [battery, load] = [build.battery(change), build.load()];
    build.cable(battery.positive, load.positive, { near: 100, lengthM: 2 });
    build.cable(load.negative, battery.negative, { lengthM: 2 });
    const { devices, conductors } = faultsIn(build.network());
    expect(devices[0]?.greatestA).toBeCloseTo(greatestA, 6);
    expect(devices[0]?.estimated).toBe(estimated);
    expect(conductors[0]?.estimated).toBe(estimated);
    const weakOhm = estimated ? 0.008 : 0.004;
    expect(devices[0]?.least?.currentA).toBeCloseTo(12.8 / (weakOhm + cableOhm(4, 75)), 6);
  });

  test("a fuse in the negative conductor interrupts the same current", () => {
    const build = sampleNetwork();
    const [battery, load] = [build.battery(), build.load()];
    build.cable(battery.positive, load.positive, { lengthM: 2 });
    build.cable(load.negative, battery.negative, { far: 100, lengthM: 2 });
    const { devices } = faultsIn(build.network());
    expect(devices).toHaveLength(1);
    expect(devices[0]?.greatestA).toBeCloseTo(13.6 / bankOhm, 6);
  });

  test("devices that nothing feeds, and those in a short, are left out", () => {
    const build = sampleNetwork();
    const [battery, load, alone] = [build.battery(), build.load(), build.load()];
    build.cable(battery.positive, battery.negative, { near: 100 });
    build.cable(alone.positive, load.positive, { near: 100 });
    const { devices, conductors } = faultsIn(build.network());
    expect(devices).toEqual([]);
    expect(conductors.map(({ greatestA }) => greatestA)).toEqual([undefined, undefined]);
  });

  test("a switch that is open in use is closed here, a panel and a bus bar resist nothing", () => {
    const build = sampleNetwork();
    const [battery, disconnect, panel, load] = [
      build.battery(),
      build.disconnect(),
      build.panel(),
      build.load(),
    ];
    build.cable(battery.positive, disconnect.line, { near: 150, lengthM: 1 });
    build.cable(disconnect.load, panel.feed, { lengthM: 2 });
    build.cable(panel.branch, load.positive, { near: 20, lengthM: 4 });
    build.cable(load.negative, panel.negative, { lengthM: 4 });
    build.cable(panel.negative, battery.negative, { lengthM: 3 });
    const { devices } = faultsIn(build.network());
    expect(devices[1]?.greatestA).toBeCloseTo(13.6 / (bankOhm + cableOhm(3, 20)), 6);
    // The farthest short before the next device is at the panel, back through the panel's own negative bus.
    expect(devices[0]?.least).toEqual({
      currentA: expect.closeTo(12.8 / (bankOhm + cableOhm(6, 75)), 6),
      conductor: 1,
    });
  });
});

/**
 * Any network of batteries, chargers, solar arrays and loads: a tree of cables on the positive side and one on the negative.
 * Some more cables anywhere on the two sides make rings, parallel cables and fuses in all places.
 */
const anyNetwork = fc
  .record({
    batteries: fc.array(
      fc.record({
        volt: fc.double({ min: 12, max: 14, noNaN: true }),
        ohm: fc.double({ min: 0.001, max: 0.02, noNaN: true }),
        series: fc.boolean(),
      }),
      { minLength: 1, maxLength: 3 },
    ),
    chargers: fc.array(fc.integer({ min: 5, max: 60 }), { maxLength: 2 }),
    panels: fc.integer({ min: 0, max: 3 }),
    loads: fc.integer({ min: 1, max: 4 }),
    ways: fc.array(
      fc.record({
        to: fc.nat(),
        length: fc.integer({ min: 2, max: 80 }),
        near: fc.option(fc.integer({ min: 5, max: 200 })),
        far: fc.option(fc.integer({ min: 5, max: 200 })),
        swapped: fc.boolean(),
      }),
      { minLength: 30, maxLength: 30 },
    ),
    more: fc.array(fc.tuple(fc.nat(), fc.nat()), { maxLength: 5 }),
  })
  .map(({ batteries, chargers, panels, loads, ways, more }) => {
    const build = sampleNetwork();
    const [positives, negatives]: [number[], number[]] = [[], []];
    let used = 0;
    const wire = (from: number, to: number, withDevices: boolean) => {
      const { length, near, far, swapped } = ways[used++ % ways.length]!;
      const devices = withDevices
        ? { ...(near === null ? {} : { near }), ...(far === null ? {} : { far }) }
        : {};
      build.cable(swapped ? to : from, swapped ? from : to, { lengthM: length / 10, ...devices });
    };
    for (const { volt, ohm, series } of batteries) {
      const internal = { stated: true, lowOhm: ohm, highOhm: 1.5 * ohm, source: {} as never };
      const low = build.battery({ fullV: volt, nominalV: 0.9 * volt, internal });
      if (series) {
        const high = build.battery({ fullV: volt, nominalV: 0.9 * volt, internal });
        wire(low.positive, high.negative, false);
        positives.push(high.positive);
      } else positives.push(low.positive);
      negatives.push(low.negative);
    }
    for (const limitA of chargers) {
      const { positive, negative } = build.shoreCharger(limitA);
      positives.push(positive);
      negatives.push(negative);
    }
    for (let panel = 0; panel < panels; panel++) {
      const { feed, negative } = build.panel();
      positives.push(feed);
      negatives.push(negative);
    }
    for (let load = 0; load < loads; load++) {
      const { positive, negative } = build.load();
      positives.push(positive);
      negatives.push(negative);
    }
    for (let at = 1; at < positives.length; at++) {
      wire(positives[at]!, positives[ways[at]!.to % at]!, true);
      wire(negatives[at]!, negatives[ways[at + 12]!.to % at]!, false);
    }
    for (const [one, other] of more) {
      const [a, b] = [one % positives.length, other % positives.length];
      if (a !== b) wire(positives[a]!, positives[b]!, true);
    }
    return build.network();
  });

/**
 * A branch of a textbook circuit. `volt` is that of an ideal source from b to a; a short and a device are sources of 0 V,
 * which makes their current an unknown of its own.
 */
interface Branch {
  readonly a: number;
  readonly b: number;
  readonly ohm?: number;
  readonly volt?: number;
  readonly ampere?: number;
}

/** Modified nodal analysis, dense: the current in each branch that has a `volt`, from a to b. */
function currentsIn(nodes: number, branches: readonly Branch[]): Map<Branch, number> {
  const ideal = branches.filter(({ volt }) => volt !== undefined);
  const size = nodes + ideal.length;
  const matrix = Array.from({ length: size }, () => new Array<number>(size).fill(0));
  const right = new Array<number>(size).fill(0);
  const add = (row: number, column: number, value: number) => {
    if (row >= 0 && column >= 0) matrix[row]![column]! += value;
  };
  // Keeps every node from floating: a part of a million million of the conductance of cables.
  for (let node = 0; node < nodes; node++) add(node, node, 1e-9);
  for (const { a, b, ohm, ampere } of branches) {
    if (ohm !== undefined) {
      add(a, a, 1 / ohm);
      add(b, b, 1 / ohm);
      add(a, b, -1 / ohm);
      add(b, a, -1 / ohm);
    }
    if (ampere !== undefined) {
      if (a >= 0) right[a]! += ampere;
      if (b >= 0) right[b]! -= ampere;
    }
  }
  ideal.forEach(({ a, b, volt }, index) => {
    add(a, nodes + index, 1);
    add(b, nodes + index, -1);
    add(nodes + index, a, 1);
    add(nodes + index, b, -1);
    right[nodes + index] = volt as number;
  });
  const solution = solveDense(matrix, right);
  return new Map(ideal.map((branch, index) => [branch, solution[nodes + index]!]));
}

/**
 * The network with every device as a branch of its own: terminals first, then two nodes inside each conductor. −1 is the
 * reference of the currents.
 */
function drawn(
  network: Network,
  ohmAtC: (conductor: number) => number,
  grounded: (terminal: number) => boolean,
) {
  const node = (terminal: number) => (grounded(terminal) ? -1 : terminal);
  const terminals = network.terminals.length;
  const devices = new Map<string, Branch>();
  const branches: Branch[] = [];
  network.conductors.forEach(({ from, to, near, far, lengthM, run }, conductor) => {
    if (grounded(from) && grounded(to)) return;
    const wire = wireResistance(run.conductor);
    const ohm = resistanceAt(wire?.ohmPerM20C as number, ohmAtC(conductor)) * lengthM!;
    const [a, b] = [terminals + 2 * conductor, terminals + 2 * conductor + 1];
    branches.push({ a, b, ohm });
    const [atNear, atFar]: Branch[] = [
      { a: node(from), b: a, volt: 0 },
      { a: node(to), b, volt: 0 },
    ] as const;
    branches.push(atNear!, atFar!);
    if (near) devices.set(`${conductor} near`, atNear!);
    if (far) devices.set(`${conductor} far`, atFar!);
  });
  for (const part of network.parts) {
    if (part.kind !== "fusePanel") continue;
    branches.push({ a: node(part.terminals.feed), b: node(part.terminals.branch), volt: 0 });
  }
  return { node, nodes: terminals + 2 * network.conductors.length, branches, devices };
}

describe("against the short drawn into the network and solved densely", () => {
  test("greatest current at every device, either side of it", () => {
    fc.assert(
      fc.property(anyNetwork, (network) => {
        const { sides } = topologyOf(network);
        const isMiddle = (terminal: number) =>
          network.conductors.some(
            ({ from, to }) => (from === terminal || to === terminal) && sides[from] !== sides[to],
          );
        const grounded = (terminal: number) => sides[terminal] === "negative" && !isMiddle(terminal);
        const { node, nodes, branches, devices } = drawn(network, () => 20, grounded);
        const sources = network.parts.flatMap((part): Branch[] => {
          if (part.kind !== "battery" && part.kind !== "shoreCharger") return [];
          const [a, b] = [node(part.terminals.positive), node(part.terminals.negative)];
          if (part.kind === "shoreCharger") return [{ a, b, ampere: part.outputA }];
          return [{ a, b, ohm: part.internal.lowOhm, ampere: part.fullV / part.internal.lowOhm }];
        });
        const expected = new Map<string, number>();
        for (const [place, device] of devices) {
          const currents = [device.a, device.b].map((shorted) => {
            const all = [...branches, ...sources, { a: shorted, b: -1, volt: 0 }];
            const through = currentsIn(nodes, all).get(device) as number;
            return shorted === device.b ? through : -through;
          });
          expected.set(place, Math.max(...currents));
        }
        const found = new Map(
          faultsIn(network).devices.map(({ device, greatestA }) => [placeIn(network, device), greatestA]),
        );
        for (const [place, currentA] of expected) {
          // 1e-6: the large resistances that keep either way of solving from floating.
          expect(Math.abs((found.get(place) ?? 0) - currentA)).toBeLessThan(1e-5 + 1e-6 * currentA);
        }
        expect(found.size).toBeLessThanOrEqual(expected.size);
      }),
      { numRuns: sampledRuns(150) },
    );
  });

  test("least current through every device, for any short behind it", () => {
    fc.assert(
      fc.property(anyNetwork, (network) => {
        const hottest = (conductor: number) => ampacityOf(network.conductors[conductor]!.run).columnC;
        const { nodes, branches, devices } = drawn(network, hottest, () => false);
        const sources = network.parts.flatMap((part): Branch[] => {
          if (part.kind !== "battery") return [];
          const { positive: a, negative: b } = part.terminals;
          return [{ a, b, ohm: part.internal.highOhm, ampere: part.nominalV / part.internal.highOhm }];
        });
        const found = faultsIn(network).devices;
        for (const [place, device] of devices) {
          const currents: number[] = [];
          for (const side of [device.a, device.b]) {
            if (!reaches(network, branches, device, side)) continue;
            const other = side === device.a ? device.b : device.a;
            for (const shorted of withinZone(branches, [...devices.values()], other)) {
              const negative = negativeBeside(network, shorted);
              if (negative === undefined || isSamePiece(network, shorted, device.a)) continue;
              const short = { a: shorted, b: negative, volt: 0 };
              const through = currentsIn(nodes, [...branches, ...sources, short]).get(device) as number;
              currents.push(side === device.a ? through : -through);
            }
          }
          const told = found.find(({ device }) => placeIn(network, device) === place)?.least;
          if (currents.length === 0) expect(told).toBeUndefined();
          else {
            const least = Math.max(0, Math.min(...currents));
            expect(Math.abs((told?.currentA as number) - least)).toBeLessThan(1e-4 + 1e-6 * least);
          }
        }
      }),
      { numRuns: sampledRuns(60) },
    );
  });
});

const isWithoutResistance = ({ volt }: Branch) => volt === 0;

/** Whether a battery's positive is on that side of a device, when the device is taken out. */
function reaches(network: Network, branches: readonly Branch[], device: Branch, side: number): boolean {
  const reached = flood(
    branches.filter((branch) => branch !== device),
    [side],
  );
  return network.parts.some((part) => part.kind === "battery" && reached.has(part.terminals.positive));
}

/** Positive terminals at which a conductor of a device's zone ends, with only conductors between. */
function withinZone(branches: readonly Branch[], devices: readonly Branch[], start: number): number[] {
  const inside = flood(
    branches.filter((branch) => !devices.includes(branch)),
    [start],
  );
  const conductors = branches.filter(({ a, ohm }) => ohm !== undefined && inside.has(a));
  // A short just before the next device is the same as just behind it: its terminal represents both.
  return [
    ...new Set(
      conductors.flatMap(({ a, b }) =>
        [a, b].flatMap((end) =>
          branches.flatMap((branch) => (branch.b === end && isWithoutResistance(branch) ? [branch.a] : [])),
        ),
      ),
    ),
  ];
}

function flood(branches: readonly Branch[], start: readonly number[]): Set<number> {
  const reached = new Set(start);
  for (let grown = true; grown; ) {
    grown = false;
    for (const { a, b } of branches) {
      if (reached.has(a) === reached.has(b)) continue;
      reached.add(a).add(b);
      grown = true;
    }
  }
  return reached;
}

/** For the upper battery of a string, the negative of the whole string: here that of the battery made just before. */
function negativeBeside({ parts, terminals, conductors }: Network, terminal: number): number | undefined {
  const { part } = terminals[terminal]!;
  const { negative } = parts[part]!.terminals as { negative: number };
  const isUpper = conductors.some(
    ({ from, to }) =>
      [from, to].includes(negative) && [from, to].some((end) => terminals[end]!.name === "positive"),
  );
  const below = isUpper ? (parts[part - 1]!.terminals as { negative: number }).negative : negative;
  return below === terminal ? undefined : below;
}

/** The feed and the branches of a panel are one component; all other terminals are components of their own here. */
function isSamePiece({ parts, terminals }: Network, one: number, other: number): boolean {
  const [a, b] = [terminals[one]!, terminals[other]!];
  return one === other || (a.part === b.part && parts[a.part]!.kind === "fusePanel");
}
