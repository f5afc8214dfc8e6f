import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { madeSizes } from "../../analysis/made-sizes.ts";
import type { Conductor } from "../../model/run.ts";
import { type Bounds, type Refusal, sparedSizes } from "./search.ts";
import { copperOf, type SizedRun, sizeKey } from "./sized-runs.ts";

/** Runs of made sizes, each with up to two thicker choices among the sizes in use. */
const someRuns = fc
  .record({
    sizes: fc.array(
      fc.record({ place: fc.nat({ max: 6 }), metric: fc.boolean(), held: fc.nat({ max: 5 }) }),
      {
        minLength: 1,
        maxLength: 5,
      },
    ),
    lengths: fc.array(fc.integer({ min: 1, max: 20 }), { minLength: 5, maxLength: 5 }),
  })
  .map(({ sizes, lengths }): readonly SizedRun[] => {
    const inUse = new Set(sizes.map(({ place, metric }) => `${metric} ${place}`));
    return sizes.map(({ place, metric, held }, record) => {
      const all: readonly Conductor[] = madeSizes(
        metric ? { parallel: 1, system: "metric", mm2: 1 } : { parallel: 1, system: "awg", awg: 4 },
      );
      const thicker = [place + 1, place + 2].filter((other) => held > 0 && inUse.has(`${metric} ${other}`));
      const choices: [Conductor, ...Conductor[]] = [all[place]!, ...thicker.map((other) => all[other]!)];
      return { record, name: `run ${record}`, choices, wireM: lengths[record]!, heldByTerminal: false };
    });
  });

/** Refused combinations: random pairs of choices that may not meet. The plan as it is is always allowed. */
const somePairs = fc.array(
  fc.tuple(
    fc.nat({ max: 4 }),
    fc.nat({ max: 2 }),
    fc.nat({ max: 4 }),
    fc.integer({ min: 1, max: 2 }),
    fc.boolean(),
  ),
  { maxLength: 6 },
);

type Pairs = ReturnType<typeof somePairs.generate>["value"];

const refusedBy =
  (pairs: Pairs) =>
  (choices: readonly number[]): Refusal | undefined => {
    const met = pairs.filter(([one, a, other, b]) => choices[one] === a && choices[other] === b);
    if (met.length === 0) return undefined;
    // Some findings are on a run, others elsewhere.
    return { runs: new Set(met.some(([, , , , blamed]) => !blamed) ? [] : met.map(([, , other]) => other)) };
  };

/** Every combination, one by one. */
function* everyWay(runs: readonly SizedRun[], from = 0): Generator<readonly number[]> {
  if (from === runs.length) return yield [];
  for (const rest of everyWay(runs, from + 1))
    for (let choice = 0; choice < runs[from]!.choices.length; choice++) yield [choice, ...rest];
}

const sizesOf = (runs: readonly SizedRun[], choices: readonly number[]) =>
  new Set(runs.map((run, index) => sizeKey(run.choices[choices[index]!]!))).size;
const copper = (runs: readonly SizedRun[], choices: readonly number[]) =>
  runs.reduce((sum, run, index) => sum + copperOf(run, choices[index]!), 0);

/** By the maximum number of sizes: the least copper that is not refused. */
function leastByCount(runs: readonly SizedRun[], refusalOf: ReturnType<typeof refusedBy>) {
  const inUse = sizesOf(
    runs,
    runs.map(() => 0),
  );
  const good = [...everyWay(runs)].filter((choices) => !refusalOf(choices));
  return Array.from({ length: inUse - 1 }, (_, index) => index + 1).flatMap((count) => {
    const few = good.filter((choices) => sizesOf(runs, choices) <= count);
    return few.length === 0
      ? []
      : [{ count, copper: Math.min(...few.map((choices) => copper(runs, choices))) }];
  });
}

const unbounded: Bounds = { sets: 1e6, judged: 1e6, judgedForEachCount: 1e6, triedAtOnce: 1e6 };

describe("the sizes that can be spared", () => {
  it("are those that going through every way finds", () => {
    let spared = 0;
    fc.assert(
      fc.property(someRuns, somePairs, (runs, pairs) => {
        const refusalOf = refusedBy(pairs);
        const { ways, stoppedEarly } = sparedSizes(runs, refusalOf, unbounded);
        const least = leastByCount(runs, refusalOf);
        expect(stoppedEarly).toBe(false);
        expect(ways.length).toBe(least.length);
        ways.forEach((choices, index) => {
          expect(refusalOf(choices)).toBeUndefined();
          expect(sizesOf(runs, choices)).toBeLessThanOrEqual(least[index]!.count);
          expect(copper(runs, choices)).toBeCloseTo(least[index]!.copper, 9);
        });
        spared += ways.length;
      }),
      { numRuns: 500 },
    );
    expect(spared).toBeGreaterThan(100);
  });

  it("are never better than there is, and exact where nothing stopped the search, within the usual bounds and closer ones", () => {
    const close: Bounds = { sets: 3, judged: 5, judgedForEachCount: 2, triedAtOnce: 1 };
    let stopped = 0;
    for (const bounds of [undefined, close]) {
      fc.assert(
        fc.property(someRuns, somePairs, (runs, pairs) => {
          const refusalOf = refusedBy(pairs);
          let asked = 0;
          const { ways, triedWays, stoppedEarly } = sparedSizes(
            runs,
            (choices) => {
              asked++;
              return refusalOf(choices);
            },
            bounds,
          );
          const least = leastByCount(runs, refusalOf);
          expect(asked).toBe(triedWays);
          expect(asked).toBeLessThanOrEqual(bounds?.judged ?? 160);
          if (stoppedEarly) stopped++;
          else
            expect(ways.map((choices) => copper(runs, choices))).toEqual(
              least.map(({ copper }) => expect.closeTo(copper, 9)),
            );
          for (const choices of ways) {
            expect(refusalOf(choices)).toBeUndefined();
            expect(sizesOf(runs, choices)).toBeGreaterThanOrEqual(least[0]!.count);
          }
        }),
        { numRuns: 300 },
      );
    }
    expect(stopped).toBeGreaterThan(0);
  });

  it("are asked for once where nothing speaks against the fewest, and a hundred runs are no trouble", () => {
    const all = madeSizes({ parallel: 1, system: "awg", awg: 4 });
    const runs = Array.from({ length: 100 }, (_, record): SizedRun => {
      const place = record % all.length;
      const choices: [Conductor, ...Conductor[]] = [all[place]!, ...all.slice(place + 1, place + 3)];
      return { record, name: "", choices, wireM: 1 + record, heldByTerminal: false };
    });
    const { ways, triedWays, stoppedEarly } = sparedSizes(runs, () => undefined);
    expect(stoppedEarly).toBe(false);
    // Fourteen sizes in a row; every third one is enough.
    expect(ways.map((choices) => sizesOf(runs, choices))).toEqual([5, 6, 7, 8, 9, 10, 11, 12, 13]);
    expect(triedWays).toBe(ways.length);
    expect(
      sparedSizes(runs, (choices) => (choices.some(Boolean) ? { runs: new Set() } : undefined)),
    ).toMatchObject({
      ways: [],
      stoppedEarly: true,
    });
  });
});
