import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { sampledRuns } from "../../../tests/setup/sampled.ts";
import { nestPieces, type Offer } from "./nest-pieces.ts";

const metres = (...lengths: number[]) => lengths.map((lengthM) => ({ lengthM }));

describe("cases by hand", () => {
  test.each<[string, number[], Offer[], number[], number[]]>([
    ["nothing", [], metres(10), [], []],
    ["one that fits to the millimetre", [10], metres(10), [10], []],
    ["one that is too long", [10.01], metres(10), [], [10.01]],
    ["the shortest that does", [4.9], metres(5, 10, 25), [5], []],
    ["two on one rather than one each", [5, 5], metres(10, 8), [10], []],
    ["two short ones rather than one long", [4.9, 4.8], metres(5, 25), [5, 5], []],
    ["six on two, where first-fit decreasing takes three", [6, 5, 5, 4, 4, 3, 3], metres(15), [15, 15], []],
    [
      "the least price, also where that is more wire",
      [4.9, 4.8],
      [
        { lengthM: 5, price: 20 },
        { lengthM: 25, price: 30 },
      ],
      [25],
      [],
    ],
    [
      "a long spool that costs less than a short one",
      [4],
      [
        { lengthM: 5, price: 9 },
        { lengthM: 10, price: 8 },
      ],
      [10],
      [],
    ],
    [
      "without a price for each, the least wire",
      [4.9, 4.8],
      [{ lengthM: 5 }, { lengthM: 25, price: 1 }],
      [5, 5],
      [],
    ],
    ["no spools at all", [3], [], [], [3]],
  ])("%s", (_, pieces, offers, bought, tooLong) => {
    const found = nestPieces(metres(...pieces), offers);
    expect(found.spools.map(({ offer }) => offer.lengthM)).toEqual(bought);
    expect(found.tooLong.map(({ lengthM }) => lengthM)).toEqual(tooLong);
  });
});

/** In centimetres, as pieces are cut. */
const lengths = fc.array(
  fc.integer({ min: 1, max: 1_000 }).map((cm) => cm / 100),
  { maxLength: 40 },
);
const someOffers = fc.array(
  fc.record({ lengthM: fc.integer({ min: 1, max: 60 }), price: fc.option(fc.nat(500), { nil: undefined }) }),
  { minLength: 1, maxLength: 5 },
);

describe("for any pieces and spools", () => {
  test("every piece is on one spool, whole, or too long for all; no spool holds more than it has", () => {
    fc.assert(
      fc.property(lengths, someOffers, (wanted, offers) => {
        const pieces = metres(...wanted);
        const { spools, tooLong } = nestPieces(pieces, offers);
        const placed = [...spools.flatMap(({ pieces: on }) => on), ...tooLong];
        expect(placed).toHaveLength(pieces.length);
        expect(new Set(placed)).toEqual(new Set(pieces));
        const longest = Math.max(...offers.map(({ lengthM }) => lengthM));
        for (const { lengthM } of tooLong) expect(lengthM).toBeGreaterThan(longest);
        for (const { offer, pieces: on } of spools) {
          expect(offers).toContain(offer);
          expect(on.length).toBeGreaterThan(0);
          expect(sum(on.map(({ lengthM }) => lengthM))).toBeLessThanOrEqual(offer.lengthM + 1e-6);
        }
      }),
    );
  });

  test("the same pieces in another order cost the same", () => {
    fc.assert(
      fc.property(lengths, someOffers, (wanted, offers) => {
        const bought = (all: readonly number[]) =>
          nestPieces(metres(...all), offers).spools.map(({ offer }) => offer.lengthM);
        expect(bought([...wanted].reverse())).toEqual(bought(wanted));
      }),
    );
  });

  // Dósa, "The tight bound of First Fit Decreasing bin-packing algorithm is FFD(I) ≤ 11/9 OPT(I) + 6/9", ESCAPE 2007.
  test("on equal spools never more than 11/9 of the fewest and 6/9 of one", () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 1, max: 100 }), { minLength: 1, maxLength: 9 }),
        fc.integer({ min: 100, max: 150 }),
        (wanted, spool) => {
          const { spools } = nestPieces(metres(...wanted), metres(spool));
          const fewest = fewestSpools(wanted, spool);
          expect(spools.length).toBeGreaterThanOrEqual(fewest);
          expect(spools.length).toBeLessThanOrEqual(Math.floor((11 / 9) * fewest + 6 / 9));
        },
      ),
      { numRuns: sampledRuns(300) },
    );
  });

  test("with several spools, never less wire than the best of all ways, and no more than each piece alone", () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 1, max: 30 }), { minLength: 1, maxLength: 6 }),
        fc.uniqueArray(fc.integer({ min: 5, max: 60 }), { minLength: 1, maxLength: 3 }),
        (wanted, spools) => {
          fc.pre(Math.max(...wanted) <= Math.max(...spools));
          const found = nestPieces(metres(...wanted), metres(...spools));
          const boughtM = sum(found.spools.map(({ offer }) => offer.lengthM));
          const shortest = (lengthM: number) => Math.min(...spools.filter((one) => one >= lengthM));
          expect(boughtM).toBeGreaterThanOrEqual(leastBought(wanted, spools));
          expect(boughtM).toBeLessThanOrEqual(sum(wanted.map(shortest)));
        },
      ),
    );
  });
});

/** By trying every way. */
function fewestSpools(pieces: readonly number[], spool: number): number {
  let fewest = pieces.length;
  const place = (index: number, used: readonly number[]) => {
    if (used.length >= fewest) return;
    if (index === pieces.length) {
      fewest = used.length;
      return;
    }
    used.forEach((length, at) => {
      if (length + pieces[index]! <= spool) place(index + 1, used.with(at, length + pieces[index]!));
    });
    place(index + 1, [...used, pieces[index]!]);
  };
  place(0, []);
  return fewest;
}

/** By trying every way to divide the pieces among spools. */
function leastBought(pieces: readonly number[], spools: readonly number[]): number {
  let least = Number.POSITIVE_INFINITY;
  const shortest = (lengthM: number) => Math.min(...spools.filter((one) => one >= lengthM));
  const place = (index: number, used: readonly number[]) => {
    if (index === pieces.length) {
      least = Math.min(least, sum(used.map(shortest)));
      return;
    }
    used.forEach((length, at) => {
      place(index + 1, used.with(at, length + pieces[index]!));
    });
    place(index + 1, [...used, pieces[index]!]);
  };
  place(0, []);
  return least;
}

function sum(all: readonly number[]): number {
  return all.reduce((total, one) => total + one, 0);
}
