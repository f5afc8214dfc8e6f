import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { LoadPart, Network } from "../model/network.ts";
import type { Conductor } from "../model/run.ts";
import { analyseNetwork } from "./analyse-network.ts";
import { copperMm2M } from "./copper-area.ts";
import { madeSizes } from "./made-sizes.ts";
import { sampleNetwork } from "./network/sample-network.tester.ts";
import type { NetworkResult, SupplyPath } from "./network-result.ts";
import { allowedOn, dropWith, pathIn, thickeningOf } from "./way-thickening.ts";

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
      const { least } = thickeningOf({ network, result }, [{ way, allowedV: allowedOn(way) }]);
      const cheapest = cheapestByTrying(network);
      if (!least) {
        expect(cheapest).toBeUndefined();
        beyondHelp++;
        return;
      }
      mended++;
      expect(least.addedMm2M).toBeCloseTo(cheapest ?? 0, 9);
      const taken = new Map(least.runs.map(({ run, conductor }) => [run.record, conductor]));
      const again = wayOf(thickened(network, taken)).way;
      expect(again.dropPercent).toBeLessThanOrEqual(metUpTo(again));
    }),
    // A fixed seed: some of both kinds are among them.
    { numRuns: 30, seed: 7 },
  );
  expect(mended).toBeGreaterThan(5);
  expect(beyondHelp).toBeGreaterThan(0);
});

/** Every combination of made sizes that is nowhere thinner, each solved as a whole network. Undefined: none is enough. */
function cheapestByTrying(network: Network): number | undefined {
  let combinations: ReadonlyMap<number, Conductor>[] = [new Map()];
  for (const { record, run } of network.conductors) {
    const thicker = sizes.slice(sizes.findIndex((made) => sameSize(made, run.conductor)));
    combinations = combinations.flatMap((taken) =>
      thicker.map((conductor) => new Map(taken).set(record, conductor)),
    );
  }
  const added = combinations
    .map((taken) => ({
      taken,
      addedMm2M: network.conductors
        .map(({ record, run }) => copperMm2M(run, taken.get(record)!) - copperMm2M(run, run.conductor))
        .reduce((sum, more) => sum + more, 0),
    }))
    .sort((one, other) => one.addedMm2M - other.addedMm2M);
  const enough = added.find(({ taken }) => {
    const { way } = wayOf(thickened(network, taken));
    return way.dropPercent <= metUpTo(way);
  });
  return enough?.addedMm2M;
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
        const { result, way } = wayOf(network);
        const { least } = thickeningOf({ network, result }, [{ way, allowedV: allowedOn(way) }]);
        if (!least) return;
        mended++;
        const taken = new Map(least.runs.map(({ run, conductor }) => [run.record, conductor]));
        const again = wayOf(thickened(network, taken)).way;
        expect(again.dropPercent).toBeLessThanOrEqual(metUpTo(again));
      }),
      { numRuns: 100 },
    );
    expect(mended, "ways that a thicker conductor brings within the limit").toBeGreaterThan(5);
  });
});

const even = [size(8), size(8), size(8)].map((conductor) => ({ lengthM: 2, conductor }));

test("what a conductor is shared with is told, and there is an answer without it", () => {
  const legs = [{ lengthM: 3, conductor: size(8) }, ...even.slice(1)];
  const network = chain({ legs, beside: true, dropLimitPercent: 4 });
  const { result, way } = wayOf(network);
  const { least, own } = thickeningOf({ network, result }, [{ way, allowedV: allowedOn(way) }]);
  expect(least?.touchesOthers).toBe(true);
  expect(own?.touchesOthers).toBe(false);
  expect(own?.runs.map(({ run }) => run.record)).not.toContain(0);
  expect(own!.addedMm2M).toBeGreaterThan(least!.addedMm2M);
});

test("nothing is thinner, and a size that is asked for is there", () => {
  const network = chain({ legs: even, dropLimitPercent: 2.9 });
  const { result, way } = wayOf(network);
  const asked = new Map([[1, size("2/0")]]);
  const { least } = thickeningOf({ network, result }, [{ way, allowedV: allowedOn(way) }], asked);
  expect(least?.runs.find(({ run }) => run.record === 1)?.conductor).toEqual(size("2/0"));
  expect(dropWith({ network, result }, way, asked)).toBeLessThan(way.dropV);
});

test("several demands are all met", () => {
  const network = chain({ legs: even, dropLimitPercent: 3 });
  const { result, way } = wayOf(network);
  const alone = thickeningOf({ network, result }, [{ way, allowedV: 0.3 }]);
  const both = thickeningOf({ network, result }, [
    { way, allowedV: 0.3 },
    { way, allowedV: 0.2 },
  ]);
  const hardest = thickeningOf({ network, result }, [{ way, allowedV: 0.2 }]);
  expect(both.least?.addedMm2M).toBe(hardest.least?.addedMm2M);
  expect(hardest.least!.addedMm2M).toBeGreaterThan(alone.least!.addedMm2M);
});

test("a way that is within its limit needs nothing", () => {
  const network = chain({ legs: even, draws: { as: "current", currentA: 1 } });
  const { result, way } = wayOf(network);
  expect(thickeningOf({ network, result }, [{ way, allowedV: allowedOn(way) }])).toEqual({
    least: undefined,
    own: undefined,
  });
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
  const then = pathIn(result, way, 1)!;
  // Twice the current, on conductors that are a little warmer.
  expect(then.dropV / way.dropV).toBeGreaterThan(2);
  expect(then.dropV / way.dropV).toBeLessThan(2.2);
  expect(then.dropPercent).toBeCloseTo((100 * then.dropV) / 12, 9);
  expect(pathIn(result, way, 7)).toBeUndefined();
});
