import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { sampledRuns } from "../../../../tests/setup/sampled.ts";
import type { Network, NetworkConductor } from "../../../model/network.ts";
import { placeDevices, type StatedConductor } from "../../../model/protective-devices.ts";
import { ampacityOf } from "../../ampacity.ts";
import { asStated, placeIn, sampleNetwork } from "../sample-network.tester.ts";
import { internalConnectionsOf, sourcesOf } from "../topology/internal-connections.ts";
import type { NetworkTopology } from "../topology/network-topology.ts";
import { topologyOf } from "../topology/topology.ts";
import { faultsOf } from "./faults.ts";

/** Any parts, connected anyhow: sound networks, rings, strings, islands, shorts, cables from a terminal to itself. */
const anyWiring = fc
  .record({
    parts: fc.array(fc.nat({ max: 10 }), { minLength: 2, maxLength: 10 }),
    cables: fc.array(
      fc.record({
        from: fc.nat(),
        to: fc.nat(),
        sound: fc.integer({ min: 0, max: 9 }),
        size: fc.constantFrom(12, 8, 4, 2),
        near: fc.option(fc.constantFrom(5, 20, 25, 40, 60, 100, 130, 200)),
        far: fc.option(fc.constantFrom(5, 20, 25, 40, 60, 100, 130, 200)),
      }),
      { minLength: 1, maxLength: 18 },
    ),
  })
  .map(({ parts, cables }) => {
    const build = sampleNetwork();
    for (const kind of parts) {
      if (kind <= 2) build.battery();
      else if (kind === 3) build.alternator({ selfLimiting: false });
      else if (kind === 4) build.shoreCharger(30);
      else if (kind === 5) build.dcDcCharger({ outputA: 60 });
      else if (kind === 6) build.disconnect();
      else if (kind === 7) build.panel();
      else if (kind === 8) build.busBar();
      else build.load();
    }
    const { terminals } = build.network();
    const negatives = terminals.flatMap(({ side }, index) => (side === "negative" ? [index] : []));
    const others = terminals.flatMap(({ side }, index) => (side === "negative" ? [] : [index]));
    for (const { from, to, sound, size, near, far } of cables) {
      // Mostly like to like; one in ten anything to anything.
      const among = sound === 0 ? [...terminals.keys()] : sound < 4 ? negatives : others;
      if (among.length === 0) continue;
      build.cable(among[from % among.length]!, among[to % among.length]!, {
        conductor: { parallel: 1, system: "awg", awg: size as 12 },
        ...(near === null ? {} : { near }),
        ...(far === null ? {} : { far }),
      });
    }
    return build.network();
  });

/** Each conductor's end that is unprotected, with the sources that arrive there. */
function endsIn({ unprotected }: NetworkTopology): Set<string> {
  return new Set(unprotected.flatMap(({ conductor, ends }) => ends.map((end) => `${conductor} ${end}`)));
}

/** The same in the plainest way: from each end, walk over everything that lets a fault pass. */
function foundByWalking(network: Network, { conductorSides }: NetworkTopology) {
  const joins = internalConnectionsOf(network);
  return network.conductors.flatMap((own, conductor) => {
    const ampacity = ampacityOf(own.run);
    if (conductorSides[conductor] !== "positive" || !ampacity.judged) return [];
    const passes = ({ near, far }: NetworkConductor) =>
      [near, far].every((device) => !device || device.ratingA > ampacity.ampacityA);
    const reachable = (start: number) => {
      const reached = new Set([start]);
      for (let before = 0; before < reached.size; ) {
        before = reached.size;
        for (const { a, b } of joins) if (reached.has(a) || reached.has(b)) reached.add(a).add(b);
        for (const other of network.conductors) {
          if (other === own || !passes(other)) continue;
          if (reached.has(other.from) || reached.has(other.to)) reached.add(other.from).add(other.to);
        }
      }
      return sourcesOf(network)
        .filter(({ positive, limitA }) => reached.has(positive) && limitA > ampacity.ampacityA)
        .map(({ part }) => part);
    };
    const near = own.near ? [] : reachable(own.from);
    const far = own.far ? [] : reachable(own.to);
    if (near.length + far.length === 0) return [];
    return [
      {
        conductor,
        ends: [...(near.length > 0 ? ["near"] : []), ...(far.length > 0 ? ["far"] : [])],
        sources: [...new Set([...near, ...far])].sort((a, b) => a - b),
      },
    ];
  });
}

/** The same network, except that each device at a near end is a part, mounted on the terminal where its conductor begins. */
function withDevicesAsParts(network: Network): Network {
  const terminals = [...network.terminals];
  const parts = [...network.parts];
  const conductors = network.conductors.map((conductor): StatedConductor => {
    const { near, from } = conductor;
    if (!near) return asStated(conductor);
    const index = parts.length;
    const [line, load] = ["line", "load"].map(
      (name) => terminals.push({ part: index, name, side: "either" }) - 1,
    ) as [number, number];
    parts.push({
      ...{ kind: "fuseHolder", index, record: 2000 + index, name: `fuse ${index}`, accept: {} },
      ...{ terminals: { line, load }, mountedOn: from, ratingA: near.ratingA, writtenAs: "object" },
      ...{ milliohm: 0, continuous: true, systemV: 12 },
    });
    return { ...asStated(conductor), from: load, near: null };
  });
  const { scenarios } = network;
  return { terminals, parts, ...placeDevices(conductors, parts), scenarios };
}

const runs = { numRuns: sampledRuns(200) };

describe("any wiring", () => {
  test("the same paths as by walking from every conductor", () => {
    fc.assert(
      fc.property(anyWiring, (network) => {
        const topology = topologyOf(network);
        expect(
          topology.unprotected.map(({ conductor, ends, sources }) => ({ conductor, ends, sources })),
        ).toEqual(foundByWalking(network, topology));
      }),
      runs,
    );
  });

  test("a way leads from one of its sources to the conductor, past nothing that would open", () => {
    fc.assert(
      fc.property(anyWiring, (network) => {
        const { unprotected } = topologyOf(network);
        const joins = internalConnectionsOf(network);
        const samePiece = (a: number, b: number) => {
          const piece = new Set([a]);
          for (let before = 0; before < piece.size; ) {
            before = piece.size;
            for (const join of joins) {
              if (piece.has(join.a) || piece.has(join.b)) piece.add(join.a).add(join.b);
            }
          }
          return piece.has(b);
        };
        for (const { conductor, ends, sources, way } of unprotected) {
          const own = network.conductors[conductor]!;
          const ampacity = ampacityOf(own.run);
          expect(way).not.toContain(conductor);
          expect(new Set(way).size).toBe(way.length);
          let heads = sourcesOf(network).flatMap(({ part, positive }) =>
            sources.includes(part) ? [positive] : [],
          );
          for (const step of way) {
            const { from, to, near, far } = network.conductors[step]!;
            for (const device of [near, far]) {
              if (device && ampacity.judged) expect(device.ratingA).toBeGreaterThan(ampacity.ampacityA);
            }
            heads = [
              ...(heads.some((head) => samePiece(head, from)) ? [to] : []),
              ...(heads.some((head) => samePiece(head, to)) ? [from] : []),
            ];
          }
          const goals = ends.map((end) => (end === "near" ? own.from : own.to));
          expect(heads.some((head) => goals.some((goal) => samePiece(head, goal)))).toBe(true);
        }
      }),
      runs,
    );
  });

  test("taking a device out never takes a path away, putting one in never makes one", () => {
    let changed = 0;
    fc.assert(
      fc.property(anyWiring, fc.nat(), (network, which) => {
        const device = network.devices[which % Math.max(1, network.devices.length)];
        if (!device) return;
        changed++;
        const { place } = device;
        if (place.at !== "conductor") return;
        const without = {
          ...network,
          ...placeDevices(
            network.conductors.map((conductor, index) =>
              index === place.conductor ? { ...asStated(conductor), [place.end]: null } : asStated(conductor),
            ),
            network.parts,
          ),
        };
        const before = endsIn(topologyOf(network));
        const after = endsIn(topologyOf(without));
        for (const end of before) expect(after).toContain(end);
      }),
      runs,
    );
    expect(changed, "wirings with a device to take out").toBeGreaterThan(0.8 * runs.numRuns);
  });

  test("a device of its own where a conductor begins is as good as one in the conductor", () => {
    let compared = 0;
    fc.assert(
      fc.property(anyWiring, (network) => {
        const changed = withDevicesAsParts(network);
        const [one, two] = [topologyOf(network), topologyOf(changed)];
        // At its own conductor, a device in the conductor counts at any rating, and one of its own by its rating.
        const bare = (end: string) => network.conductors[Number(end.split(" ")[0])]!.near === null;
        expect([...endsIn(two)].filter(bare)).toEqual([...endsIn(one)].filter(bare));
        const inOrder = ({ devices }: Network, at: "near" | "far" | "part") =>
          devices.filter(({ place }) => (place.at === "part" ? "part" : place.end) === at);
        const moved = new Map(
          (["near", "far"] as const).flatMap((end) => {
            const after = inOrder(changed, end === "near" ? "part" : "far");
            return inOrder(network, end).map(({ index }, at) => [after[at]!.index, index]);
          }),
        );
        const before = new Map(faultsOf(network, one).devices.map((fault) => [fault.device, fault]));
        const after = faultsOf(changed, two).devices;
        expect(new Set(after.map(({ device }) => moved.get(device)))).toEqual(new Set(before.keys()));
        for (const { device, greatestA, least } of after) {
          const same = before.get(moved.get(device)!)!;
          // A micro-ohm more beside the milli-ohms of a bank.
          expect(Math.abs(greatestA - same.greatestA)).toBeLessThan(1e-3 * greatestA + 1e-3);
          expect(least === undefined).toBe(same.least === undefined);
          const [leastA, sameA] = [least?.currentA ?? 0, same.least?.currentA ?? 0];
          expect(Math.abs(leastA - sameA)).toBeLessThan(1e-3 * Math.max(sameA, greatestA) + 1e-3);
          compared++;
        }
      }),
      runs,
    );
    expect(compared).toBeGreaterThan(runs.numRuns);
  });

  test("the order of conductors and their direction change nothing", () => {
    fc.assert(
      fc.property(anyWiring, fc.infiniteStream(fc.tuple(fc.nat(), fc.boolean())), (network, random) => {
        const order = network.conductors
          .map((_, index) => ({ index, random: random.next().value as [number, boolean] }))
          .sort((a, b) => a.random[0] - b.random[0]);
        const changed: Network = {
          ...network,
          ...placeDevices(
            order.map(({ index, random: [, turned] }) => {
              const conductor = asStated(network.conductors[index]!);
              const { from, to, near, far } = conductor;
              return turned ? { ...conductor, from: to, to: from, near: far, far: near } : conductor;
            }),
            network.parts,
          ),
        };
        const [one, two] = [topologyOf(network), topologyOf(changed)];
        expect(two.sides).toEqual(one.sides);
        order.forEach(({ index }, at) => {
          expect(two.conductorSides[at]).toBe(one.conductorSides[index]);
        });
        const turnedBack = (end: string) => {
          const [at, which] = end.split(" ");
          const { index, random } = order[Number(at)]!;
          return `${index} ${random[1] ? (which === "near" ? "far" : "near") : which}`;
        };
        expect(new Set([...endsIn(two)].map(turnedBack))).toEqual(endsIn(one));
        // Any of several equally short paths may be reported; the choice decides which others remain.
        const shortest = ({ shorts }: NetworkTopology) => shorts[0]?.conductors.length;
        expect(shortest(two)).toBe(shortest(one));
        const pairs = ({ devicePairs }: NetworkTopology) => devicePairs.length;
        expect(pairs(two)).toBe(pairs(one));
        const greatest = new Map(
          faultsOf(network, one).devices.map(({ device, ...rest }) => [placeIn(network, device), rest]),
        );
        const again = faultsOf(changed, two).devices;
        expect(again).toHaveLength(greatest.size);
        for (const { device, greatestA } of again) {
          const before = greatest.get(turnedBack(placeIn(changed, device)));
          // The order of elimination moves the last figures.
          expect(Math.abs(greatestA - (before?.greatestA ?? 0))).toBeLessThan(1e-6 * greatestA + 1e-3);
        }
      }),
      runs,
    );
  });

  test("no number is missing or without meaning, however it is wired", () => {
    fc.assert(
      fc.property(anyWiring, (network) => {
        const topology = topologyOf(network);
        const { devices, conductors } = faultsOf(network, topology);
        for (const { greatestA, least, behind, sources } of devices) {
          expect(greatestA).toBeGreaterThan(0);
          expect(greatestA).toBeLessThan(1e6);
          expect(sources.length).toBeGreaterThan(0);
          if (least) {
            expect(least.currentA).toBeGreaterThanOrEqual(0);
            expect(behind).toContain(least.conductor);
          }
        }
        for (const { greatestA, protectedBy } of conductors) {
          if (greatestA !== undefined) expect(greatestA).toBeGreaterThan(0);
          for (const device of protectedBy) expect(devices[device]).toBeDefined();
        }
        network.terminals.forEach((_, terminal) => {
          const way = topology.wayFromSource(terminal);
          expect(way === undefined).toBe(topology.sides[terminal] === "none");
        });
      }),
      runs,
    );
  });
});

describe("much of one thing", () => {
  test("3,000 cables one after the other, and back in a ring", () => {
    const build = sampleNetwork();
    const battery = build.battery();
    const buses = Array.from({ length: 3000 }, () => build.busBar());
    build.cable(battery.positive, buses[0]!, { near: 130 });
    for (let at = 1; at < buses.length; at++) build.cable(buses[at - 1]!, buses[at]!);
    build.cable(buses.at(-1)!, buses[0]!);
    const network = build.network();
    const topology = topologyOf(network);
    // 130 A into cables for 125 A: all of the ring, from both ends.
    expect(topology.unprotected).toHaveLength(3000);
    expect(new Set(topology.unprotected.map(({ ends }) => ends.join()))).toEqual(new Set(["near,far"]));
    expect(faultsOf(network, topology).conductors.every(({ greatestA }) => (greatestA ?? 0) > 0)).toBe(true);
  });

  test("1,500 batteries on one bus, each with its fuse, and a load", () => {
    const build = sampleNetwork();
    const [plus, minus, load] = [build.busBar(), build.busBar(), build.load()];
    for (let at = 0; at < 1500; at++) {
      const battery = build.battery();
      build.cable(battery.positive, plus, { near: 100 });
      build.cable(battery.negative, minus);
    }
    build.cable(plus, load.positive, { near: 100 });
    build.cable(load.negative, minus);
    const network = build.network();
    const topology = topologyOf(network);
    expect(topology.unprotected).toEqual([]);
    expect(topology.banks).toHaveLength(1);
    expect(topology.devicePairs).toHaveLength(1);
    expect(faultsOf(network, topology).devices.at(-1)?.sources).toHaveLength(16);
  });

  test("a loop of parts without resistance", () => {
    const build = sampleNetwork();
    const [battery, load] = [build.battery(), build.load()];
    const switches = Array.from({ length: 4 }, () => build.disconnect());
    const bridge = build.other(
      ["a", "b", "c"],
      [
        { between: ["a", "b"], ohm: 0 },
        { between: ["b", "c"], ohm: 0 },
        { between: ["c", "a"], ohm: 0 },
      ],
    );
    build.cable(battery.positive, bridge.a as number, { near: 100 });
    for (const { line, load: out } of switches) {
      build.cable(bridge.b as number, line);
      build.cable(out, bridge.c as number);
    }
    build.cable(bridge.c as number, load.positive);
    build.cable(load.negative, battery.negative);
    const network = build.network();
    const { devices } = faultsOf(network, topologyOf(network));
    expect(devices[0]?.least?.currentA).toBeGreaterThan(0);
  });
});
