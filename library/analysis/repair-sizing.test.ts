import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { sampledRuns } from "../../tests/setup/sampled.ts";
import type { LoadPart, Network } from "../model/network.ts";
import type { Conductor, Measured, Run } from "../model/run.ts";
import { ampacityOf } from "./ampacity.ts";
import { analyseNetwork } from "./analyse-network.ts";
import { copperMm2M } from "./copper-area.ts";
import { feedPairs } from "./feed-pairs.ts";
import { madeSizes } from "./made-sizes.ts";
import { sampleNetwork } from "./network/sample-network.tester.ts";
import type { NetworkResult, SupplyPath } from "./network-result.ts";
import { mostAboveNeed, type PathSizings, repairSizing } from "./repair-sizing.ts";
import { allowedOn, dropWith, pathOfDevice } from "./supply-path-drop.ts";
import { dropOf } from "./voltage-drop.ts";

const sizes = madeSizes({ parallel: 1, system: "awg", awg: 4 });
const size = (awg: Extract<Conductor, { system: "awg" }>["awg"]): Conductor => ({
  parallel: 1,
  system: "awg",
  awg,
});

/** A bank, a feed to a bus, a second cable to a load, and one cable back. */
function chain({
  legs,
  draws = { as: "current", currentA: 40 },
  dropLimitPercent = 3,
  beside = false,
}: {
  readonly legs: readonly { readonly lengthM: number; readonly conductor: Conductor }[];
  readonly draws?: LoadPart["draws"];
  readonly dropLimitPercent?: number;
  /** A second load on the bus. */
  readonly beside?: boolean;
}): Network {
  const build = sampleNetwork();
  const bank = build.battery();
  const load = build.load();
  const stops = [bank.positive, ...legs.slice(2).map(() => build.busBar()), load.positive];
  legs.forEach(({ lengthM, conductor }, index) => {
    const [from, to] =
      index === legs.length - 1 ? [load.negative, bank.negative] : [stops[index]!, stops[index + 1]!];
    build.cable(from, to, { lengthM, positiveM: lengthM, negativeM: 0, conductor });
  });
  if (beside) {
    const other = build.load(5);
    build.cable(stops[1]!, other.positive);
    build.cable(other.negative, bank.negative);
  }
  const network = build.network();
  return {
    ...network,
    parts: network.parts.map((part) =>
      part.index === load.part ? ({ ...part, draws, dropLimitPercent } as LoadPart) : part,
    ),
  };
}

function wayOf(network: Network): { readonly result: NetworkResult; readonly way: SupplyPath } {
  const result = analyseNetwork(network);
  return { result, way: result.supplyPaths[0]! };
}

/** The sizes for the first load, with the solved current in each run. */
function sizingsFor(network: Network, result: NetworkResult): PathSizings {
  const circuits = network.conductors.map(({ run }, index) => ({
    circuit: { ...run, loadA: result.conductors[index]?.worst?.currentA ?? 0 },
  }));
  return repairSizing({ circuits, network: { network, result } }).ofPath(result.supplyPaths[0]!.part, [
    "drop",
  ]);
}

function addedMm2M({ runs }: NonNullable<PathSizings["least"]>): number {
  return runs
    .map(({ run, conductor }) => copperMm2M(run, conductor) - copperMm2M(run, run.conductor))
    .reduce((sum, more) => sum + more, 0);
}

function thickened(network: Network, taken: ReadonlyMap<number, Conductor>): Network {
  return {
    ...network,
    conductors: network.conductors.map((conductor) => {
      const thicker = taken.get(conductor.record);
      return thicker ? { ...conductor, run: { ...conductor.run, conductor: thicker } } : conductor;
    }),
  };
}

/** A limit is met up to 0.05 percentage points above it: common practice, no source. */
function metUpTo({ dropLimitPercent }: { readonly dropLimitPercent: number }): number {
  return dropLimitPercent + 0.05 + 1e-9;
}

const threeLegs = fc.tuple(
  ...[0, 1, 2].map(() =>
    fc.record({
      lengthM: fc.integer({ min: 1, max: 60 }).map((tenths) => tenths / 10),
      conductor: fc.constantFrom(...sizes.slice(8, 13)),
    }),
  ),
);

test("the network worked out again is within its limit, and no other sizes with less copper bring it there", () => {
  let [mended, beyondHelp] = [0, 0];
  fc.assert(
    fc.property(threeLegs, fc.integer({ min: 5, max: 30 }), (legs, tenths) => {
      const network = chain({ legs, draws: { as: "current", currentA: 60 }, dropLimitPercent: tenths / 10 });
      const { result, way } = wayOf(network);
      if (way.dropPercent <= metUpTo(way)) return;
      const { least } = sizingsFor(network, result);
      const cheapest = cheapestByTrying(network);
      if (!least) {
        expect(cheapest).toBeUndefined();
        beyondHelp++;
        return;
      }
      mended++;
      expect(addedMm2M(least)).toBeCloseTo(cheapest ?? 0, 9);
      const taken = new Map(least.runs.map(({ run, conductor }) => [run.record, conductor]));
      const again = wayOf(thickened(network, taken)).way;
      expect(again.dropPercent).toBeLessThanOrEqual(metUpTo(again));
    }),
    // A fixed seed: some of both kinds are among them.
    { numRuns: sampledRuns(30), seed: 7 },
  );
  expect(mended).toBeGreaterThan(sampledRuns(5));
  expect(beyondHelp).toBeGreaterThan(0);
});

/**
 * Every combination of made sizes that carry the current and are nowhere thinner, each solved as a whole network; none more than
 * two sizes above its own need as long as one of those is enough. The two cables of a feed have one size, unless each has the one that it
 * needs to carry the current. Undefined: none is.
 */
function cheapestByTrying(network: Network): number | undefined {
  const { result, way } = wayOf(network);
  const partners = feedPairs({ network, result });
  const isPaired = (taken: ReadonlyMap<number, Conductor>, least: ReadonlyMap<number, Conductor>) =>
    [...partners].every(([record, other]) => {
      const [one, two] = [taken.get(record)!, taken.get(other.record)!];
      const isLeast = sameSize(one, least.get(record)!) && sameSize(two, least.get(other.record)!);
      return sameSize(one, two) || isLeast;
    });
  for (let above = mostAboveNeed; above < sizes.length + mostAboveNeed; above++) {
    let combinations: ReadonlyMap<number, Conductor>[] = [new Map()];
    const least = new Map<number, Conductor>();
    for (const { record, run } of network.conductors) {
      const allowed = sizesAllowed(run, { allowedV: allowedOn(way), above });
      least.set(record, allowed[0]!);
      combinations = combinations.flatMap((taken) =>
        allowed.map((conductor) => new Map(taken).set(record, conductor)),
      );
    }
    const added = combinations
      .filter((taken) => isPaired(taken, least))
      .map((taken) => ({
        taken,
        addedMm2M: network.conductors
          .map(({ record, run }) => copperMm2M(run, taken.get(record)!) - copperMm2M(run, run.conductor))
          .reduce((sum, more) => sum + more, 0),
      }))
      .sort((one, other) => one.addedMm2M - other.addedMm2M);
    const enough = added.find(({ taken }) => {
      const again = wayOf(thickened(network, taken)).way;
      return again.dropPercent <= metUpTo(again);
    });
    if (enough) return enough.addedMm2M;
  }
  return undefined;
}

/** A run's own need: to carry 60 A, and to lose at most half of the limit. */
function sizesAllowed(
  run: Run,
  { allowedV, above }: { allowedV: number; above: number },
): readonly Conductor[] {
  const at = (conductor: Conductor) => ({ ...run, conductor, loadA: 60 }) as Measured;
  const carries = (conductor: Conductor) => {
    const ampacity = ampacityOf(at(conductor));
    return ampacity.judged && ampacity.ampacityA >= 60;
  };
  const losesLittle = (conductor: Conductor) =>
    dropOf(at(conductor), ampacityOf(at(conductor))).dropV <= allowedV / 2;
  const present = sizes.findIndex((made) => sameSize(made, run.conductor));
  const carrying = sizes.findIndex(carries);
  const losing = sizes.findIndex((size) => carries(size) && losesLittle(size));
  // No size is thick enough: then no more than to carry the current.
  const need = losing < 0 ? carrying : losing;
  const from = Math.max(present, carrying);
  return sizes.slice(from, Math.max(from, need + above) + 1);
}

function sameSize(one: Conductor, other: Conductor): boolean {
  return one.system === "awg" && other.system === "awg" && one.awg === other.awg;
}

describe("whatever the load draws as, the network worked out again is within its limit", () => {
  test.each([
    { draws: { as: "power", powerW: 500 } },
    { draws: { as: "resistance", ohm: 0.3 } },
    { draws: { as: "motor", runningA: 40, startingA: 200 } },
  ] as const)("$draws.as", ({ draws }) => {
    let mended = 0;
    fc.assert(
      fc.property(threeLegs, fc.integer({ min: 5, max: 30 }), (legs, tenths) => {
        const network = chain({ legs, draws, dropLimitPercent: tenths / 10 });
        const { result } = wayOf(network);
        const { least } = sizingsFor(network, result);
        if (!least) return;
        mended++;
        const taken = new Map(least.runs.map(({ run, conductor }) => [run.record, conductor]));
        const again = wayOf(thickened(network, taken)).way;
        expect(again.dropPercent).toBeLessThanOrEqual(metUpTo(again));
      }),
      { numRuns: sampledRuns(100) },
    );
    expect(mended, "ways that a thicker conductor brings within the limit").toBeGreaterThan(sampledRuns(5));
  });
});

const even = [size(8), size(8), size(8)].map((conductor) => ({ lengthM: 2, conductor }));

test("what a conductor is shared with is told, and there is an answer without it", () => {
  const legs = [{ lengthM: 3, conductor: size(8) }, ...even.slice(1)];
  const network = chain({ legs, beside: true, dropLimitPercent: 4.2 });
  const { least, alone } = sizingsFor(network, wayOf(network).result);
  expect(least?.otherDevices).toBe(1);
  expect(alone?.otherDevices).toBe(0);
  expect(alone?.runs.map(({ run }) => run.record)).not.toContain(0);
  expect(addedMm2M(alone!)).toBeGreaterThan(addedMm2M(least!));
});

test("a size on the path saves as much as the drop says", () => {
  const network = chain({ legs: even, dropLimitPercent: 2.9 });
  const { result, way } = wayOf(network);
  expect(dropWith({ network, result }, way, new Map([[1, size("2/0")]]))).toBeLessThan(way.dropV);
});

test("beyond two sizes above the own need only if nothing else meets the limit, and it says so", () => {
  const beyondNeed = (legs: number) => {
    const network = chain({ legs: Array.from({ length: legs }, () => even[0]!), dropLimitPercent: 5 });
    return sizingsFor(network, wayOf(network).result).least?.runs.some((run) => run.beyondNeed);
  };
  // 8 AWG for 40 A and its fuse; on 4 AWG eight of these runs are within 5 %, and ten are not.
  expect(beyondNeed(8)).toBe(false);
  expect(beyondNeed(10)).toBe(true);
});

test("a way that is within its limit needs nothing", () => {
  const network = chain({ legs: even, draws: { as: "current", currentA: 1 } });
  expect(sizingsFor(network, wayOf(network).result)).toEqual({});
});

test("the same way in another scenario", () => {
  const network = chain({ legs: even });
  const starting: Network = {
    ...network,
    parts: network.parts.map((part) =>
      part.kind === "load" ? { ...part, draws: { as: "motor", runningA: 20, startingA: 40 } } : part,
    ),
    scenarios: [
      network.scenarios[0]!,
      {
        ...network.scenarios[0]!,
        name: "starting",
        starting: network.parts.map(() => true),
        momentary: true,
      },
    ],
  };
  const { result, way } = wayOf(starting);
  const then = pathOfDevice({ network: starting, result }, way.part, 1)!;
  // Twice the current, on conductors that are a little warmer.
  expect(then.dropV / way.dropV).toBeGreaterThan(2);
  expect(then.dropV / way.dropV).toBeLessThan(2.2);
  expect(then.dropPercent).toBeCloseTo((100 * then.dropV) / 12, 9);
  expect(pathOfDevice({ network: starting, result }, way.part, 7)).toBeUndefined();
});
