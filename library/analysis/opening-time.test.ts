import { describe, expect, test } from "vitest";
import { letThrough, opensFirst } from "./let-through.ts";
import { earliestOpening, middleOpening, openingTime } from "./opening-time.ts";

const blade = { ratingA: 20, family: "ISO 8820-3 Type C" } as const;
const strip = { ratingA: 100, family: "ISO 8820-5 Type SF 51" } as const;

describe("time to open, without interpolation", () => {
  test.each([
    ["just below 135 %", 26.99, undefined],
    ["at 135 %", 27, 600],
    ["just below 160 %", 31.99, 600],
    ["at 160 %", 32, 50],
    ["at 200 %", 40, 5],
    ["just below 350 %", 69.9, 5],
    ["at 350 %", 70, 0.5],
    ["at 600 %", 120, 0.1],
    ["far beyond", 5000, 0.1],
  ])("a blade fuse of 20 A %s, %d A", (_, currentA, openingS) => {
    const time = openingTime(blade, currentA);
    expect(time.judged ? time.openingS : undefined).toBe(openingS);
    expect(time.judged ? undefined : time.why).toBe(openingS === undefined ? "need-not-open" : undefined);
  });

  // ISO 8820-3, makers' data sheets: each type has gates of its own, and so have 35 and 40 A of Type C.
  test.each([
    ["Type F has no gate at 160 %", { ratingA: 20, family: "ISO 8820-3 Type F" }, 36, 600, "read"],
    ["Type C of 20 A at 160 %", blade, 36, 50, "read"],
    ["Type C of 20 A at 600 %", blade, 120, 0.1, "memory"],
    ["Type C of 40 A at 160 %", { ...blade, ratingA: 40 }, 72, 600, "read"],
    ["Type C of 40 A at 600 %", { ...blade, ratingA: 40 }, 240, 0.15, "read"],
    ["Type E at 350 %", { ratingA: 60, family: "ISO 8820-3 Type E" }, 210, 7, "read"],
    ["Type E at 200 %", { ratingA: 60, family: "ISO 8820-3 Type E" }, 120, 60, "memory"],
  ] as const)("%s, and how far that is confirmed", (_, device, currentA, openingS, confirmed) => {
    expect(openingTime(device, currentA)).toMatchObject({ openingS, source: { confirmed } });
  });

  test("Type E need not open at 134 %, which was read", () => {
    const device = { ratingA: 60, family: "ISO 8820-3 Type E" } as const;
    expect(openingTime(device, 80)).toMatchObject({ why: "need-not-open", source: { confirmed: "read" } });
  });

  test("135 % of 7.5 A is not missed by a binary fraction", () => {
    expect(openingTime({ ...blade, ratingA: 7.5 }, 1.35 * 7.5)).toMatchObject({
      judged: true,
      atPercent: 135,
    });
  });

  test.each([
    ["no family is stated", { ratingA: 20 }, "no-family"],
    ["a breaker", { ratingA: 20, family: "circuit breaker" as const }, "no-gates"],
    ["a Class T fuse above 600 A", { ratingA: 700, family: "UL 248-15 Class T" as const }, "no-gates"],
  ])("not judged: %s", (_, device, why) => {
    expect(openingTime(device, 1000)).toEqual({ judged: false, why, source: undefined });
  });

  test.each([
    [60, 3600],
    [61, 7200],
  ])("a Class T fuse of %d A has opened within %d s", (ratingA, openingS) => {
    expect(openingTime({ ratingA, family: "UL 248-15 Class T" }, 5000)).toMatchObject({ openingS });
  });
});

describe("not sooner than", () => {
  test.each([
    ["at 110 %", 22, 360000],
    ["just above 110 %", 22.1, 0.75],
    ["at 600 %", 120, 0.02],
    // 0.02 s · (600 / 1200)²
    ["at 1200 %", 240, 0.005],
  ])("a blade fuse of 20 A %s", (_, currentA, leastS) => {
    expect(earliestOpening(blade, currentA)?.notBeforeS).toBeCloseTo(leastS, 12);
  });

  test("nothing is said of a Class T fuse", () => {
    expect(earliestOpening({ ratingA: 100, family: "UL 248-15 Class T" }, 5000)).toBeUndefined();
  });
});

describe("let-through", () => {
  test.each([
    ["at 350 %", 70, 70 ** 2 * 0.5],
    ["just below 600 %", 119, 119 ** 2 * 0.5],
    ["at 600 %", 120, 120 ** 2 * 0.1],
    ["beyond 600 % it stays what it is there", 2000, 120 ** 2 * 0.1],
  ])("a blade fuse of 20 A %s", (_, currentA, letThroughA2s) => {
    expect(letThrough(blade, currentA)).toMatchObject({ judged: true, letThroughA2s });
  });
});

describe("which of two opens first", () => {
  test.each([
    ["a blade fuse behind a strip fuse of five times as much", strip, blade, 800, "downstream"],
    ["the same two exchanged", blade, strip, 800, "upstream"],
    ["two strip fuses close to each other", { ...strip, ratingA: 125 }, strip, 800, "either"],
    // 600 % of 5 A for 0.1 s: 90 A²s; 600 % of 30 A for 0.02 s: 648 A²s.
    [
      "a great blade fuse behind a small one, deep short",
      { ...blade, ratingA: 5 },
      { ...blade, ratingA: 30 },
      1000,
      "upstream",
    ],
    // No least time is printed for 35 and 40 A at 600 %: they may be as quick.
    ["the same behind one of 40 A", { ...blade, ratingA: 5 }, { ...blade, ratingA: 40 }, 1000, "either"],
  ])("%s", (_, upstream, downstream, currentA, first) => {
    expect(opensFirst(upstream, downstream, currentA)).toMatchObject({ judged: true, first });
  });

  // Beyond both last gates: 36 · 0.1 · 20² = 1440 A²s, against 36 · 0.02 · In²: 44.72 A.
  test.each([
    [44, "either"],
    [45, "downstream"],
  ])("two blade fuses, 20 A behind %d A", (ratingA, first) => {
    // Half of both, because the family ends at 40 A.
    const upstream = { ...blade, ratingA: ratingA / 2 };
    expect(opensFirst(upstream, { ...blade, ratingA: 10 }, 1000)).toMatchObject({ first });
  });

  test("half of the short takes a fuse further up longer, and the one further out feels four times its heat", () => {
    // Blade, 20 A: 100 A for up to 0.5 s, 5000 A²s; downstream 20,000. A strip fuse of 80 A begins at 200² · 0.3 = 12,000.
    const downstream = { ratingA: 80, family: "ISO 8820-5 Type SF 30" } as const;
    expect(opensFirst(blade, downstream, 200, 100)).toMatchObject({ first: "either" });
    expect(opensFirst(blade, downstream, 200)).toMatchObject({ first: "upstream" });
  });

  test("batteries side by side: each fuse takes a share, and stays below its gate for longer", () => {
    const upstream = { ...strip, ratingA: 60 };
    const downstream = { ratingA: 60, family: "ISO 8820-3 Type E" } as const;
    expect(opensFirst(upstream, downstream, 1000)).toMatchObject({ first: "either" });
    expect(opensFirst(upstream, downstream, 1000, 50)).toMatchObject({ first: "downstream" });
  });

  test.each([
    ["no family", { ratingA: 100 }, blade, "no-family"],
    ["no gates", { ratingA: 100, family: "circuit breaker" as const }, blade, "no-gates"],
    [
      "a family of which nothing is known but the longest time",
      { ratingA: 100, family: "UL 248-15 Class T" as const },
      blade,
      "no-gates",
    ],
  ])("not judged: %s", (_, upstream, downstream, why) => {
    expect(opensFirst(upstream, downstream, 1000)).toEqual({ judged: false, why });
  });
});

describe("middle of the permitted times", () => {
  // ISO 8820-3, makers' data sheets: Type E 0.2 to 7 s at 350 %, 0.04 to 1 s at 600 %; Type C 0.15 to 5 s at 200 %.
  const slow = { ratingA: 40, family: "ISO 8820-3 Type E" } as const;
  test.each([
    ["below the first gate with both times", slow, 41, undefined],
    ["at a gate", slow, 140, Math.sqrt(0.2 * 7)],
    ["at the last gate", slow, 240, Math.sqrt(0.04 * 1)],
    ["at twice the last gate, a quarter of its time", slow, 480, Math.sqrt(0.04 * 1) / 4],
    ["at another gate", { ratingA: 10, family: "ISO 8820-3 Type C" } as const, 20, Math.sqrt(0.15 * 5)],
    [
      "of a family without least times",
      { ratingA: 40, family: "UL 248-15 Class T" } as const,
      200,
      undefined,
    ],
  ])("%s", (_, device, currentA, openingS) => {
    const middle = middleOpening(device, currentA);
    if (openingS === undefined) expect(middle).toBeUndefined();
    else expect(middle?.openingS).toBeCloseTo(openingS, 9);
  });

  test("between two gates it lies between their middles", () => {
    const { openingS } = middleOpening(slow, 180)!;
    expect(openingS).toBeGreaterThan(Math.sqrt(0.04 * 1));
    expect(openingS).toBeLessThan(Math.sqrt(0.2 * 7));
  });
});
