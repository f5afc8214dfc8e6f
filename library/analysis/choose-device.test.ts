import { describe, expect, it, test } from "vitest";
import type { Protection } from "../model/run.ts";
import { chooseDevice, chooseDeviceBetween, interruptsA, markingFor, oneMoreLike } from "./choose-device.ts";

// ISO 8820-3, -12 and -13: 1,000 A, 32 V or 58 V (scopes, read); ISO 8820-5: 2,000 A (from memory).
describe("a fuse of a given rating", () => {
  test.each([
    ["a blade up to 1,000 A", 10, 12, 1000, { family: "ISO 8820-3 Type F", demanded: false }],
    [
      "marked beyond that, and the least strip begins at 30 A",
      10,
      12,
      1001,
      { family: "UL 248-15 Class T", interruptingA: 2000, demanded: true },
    ],
    ["a strip up to 2,000 A", 30, 12, 2000, { family: "ISO 8820-5 Type SF 30", demanded: false }],
    ["the strip for 70 V up to 2,500 A", 30, 12, 2001, { family: "ISO 20934", demanded: false }],
    [
      "marked beyond that too",
      30,
      12,
      2501,
      { family: "UL 248-15 Class T", interruptingA: 3000, demanded: true },
    ],
    [
      "the single bolt for 58 V on 48 V, up to 2,000 A",
      60,
      48,
      2000,
      { family: "ISO 8820-6", demanded: false },
    ],
    ["the strip for 70 V on 48 V, above that", 60, 48, 2001, { family: "ISO 20934", demanded: false }],
    ["the longer strip above 200 A", 250, 12, 1500, { family: "ISO 8820-5 Type SF 51", demanded: false }],
    [
      "the version for 58 V on 48 V",
      10,
      48,
      500,
      { family: "ISO 8820-3 Type F", ratedV: 58, demanded: false },
    ],
    [
      "marked for the voltage too, above 32 V",
      250,
      48,
      9000,
      { family: "UL 248-15 Class T", interruptingA: 9000, ratedV: 48, demanded: true },
    ],
    ["nothing: neither made so by a standard nor in Class T", 7.5, 12, 3000, undefined],
  ])("is %s", (_, ratingA, systemV, interruptA, chosen) => {
    expect(chooseDevice({ ratingA, systemV, interruptA })).toEqual(chosen && { ratingA, ...chosen });
  });

  it("is of the family that is asked for, where that one suits", () => {
    const need = { ratingA: 60, systemV: 12, interruptA: 900 };
    expect(chooseDevice(need)?.family).toBe("ISO 8820-3 Type E");
    expect(chooseDevice(need, "ISO 8820-5 Type SF 30")?.family).toBe("ISO 8820-5 Type SF 30");
    expect(chooseDevice({ ...need, interruptA: 1500 }, "ISO 8820-3 Type E")?.family).toBe(
      "ISO 8820-5 Type SF 30",
    );
  });
});

describe("a fuse within a range", () => {
  test.each([
    ["the least rating", 48, 90, 900, 50, "ISO 8820-3 Type E"],
    [
      "the next one that a family is made in which interrupts enough",
      41,
      90,
      1500,
      50,
      "ISO 8820-5 Type SF 30",
    ],
    [
      "a marked one, where the standard's would be more than twice the least",
      5,
      90,
      1500,
      6,
      "UL 248-15 Class T",
    ],
    ["the standard's again, up to twice the least", 15, 90, 1500, 30, "ISO 8820-5 Type SF 30"],
    ["the standard's where there is none that could be marked", 7.1, 7.9, 900, 7.5, "ISO 8820-3 Type F"],
  ])("has %s", (_, fromA, toA, interruptA, ratingA, family) => {
    expect(chooseDeviceBetween({ fromA, toA }, { systemV: 12, interruptA })).toMatchObject({
      ratingA,
      family,
    });
  });

  it("is none where none is made", () => {
    expect(chooseDeviceBetween({ fromA: 31, toA: 34 }, { systemV: 12, interruptA: 0 })).toBeUndefined();
    expect(chooseDeviceBetween({ fromA: 50, toA: 40 }, { systemV: 12, interruptA: 0 })).toBeUndefined();
  });
});

describe("one more like another", () => {
  const like = (device: Partial<Protection>): Protection => ({ ratingA: 50, writtenAs: "object", ...device });

  test.each<[string, Partial<Protection>, number, object | undefined]>([
    ["no family", {}, 12, undefined],
    ["the family", { family: "ISO 8820-3 Type E" }, 12, { family: "ISO 8820-3 Type E", demanded: false }],
    [
      "its version for the voltage",
      { family: "ISO 8820-3 Type E" },
      48,
      { family: "ISO 8820-3 Type E", ratedV: 58, demanded: false },
    ],
    ["nothing of a family that is made for less", { family: "ISO 8820-5 Type SF 30" }, 48, undefined],
    [
      "the voltage to look for, of a family that is made for both",
      { family: "ISO 8820-4 Type A" },
      48,
      { family: "ISO 8820-4 Type A", ratedV: 58, demanded: false },
    ],
    [
      "the markings that are stated",
      { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125 },
      48,
      { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, demanded: false },
    ],
    [
      "a voltage to look for",
      { family: "circuit breaker", ratedV: 24 },
      48,
      { family: "circuit breaker", ratedV: 48, demanded: true },
    ],
  ])("has %s", (_, device, systemV, again) => {
    expect(oneMoreLike(like(device), systemV)).toEqual(again);
  });

  it("interrupts what the plan says before what the family says", () => {
    expect(interruptsA(like({ family: "ISO 8820-3 Type E", interruptingA: 900 }))).toBe(900);
    expect(interruptsA(like({ family: "ISO 8820-3 Type E" }))).toBe(1000);
    expect(interruptsA(like({ family: "circuit breaker" }))).toBeUndefined();
    expect(interruptsA(like({}))).toBeUndefined();
  });
});

test("a marking is asked for up to the next thousand", () => {
  expect([1, 1000, 1000.1, 20_000].map(markingFor)).toEqual([1000, 1000, 2000, 20_000]);
});
