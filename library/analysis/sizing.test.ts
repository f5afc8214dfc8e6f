import { describe, expect, test } from "vitest";
import type { CircuitRun, Conductor, Protection } from "../model/run.ts";
import { madeSizes, sizesAbove, sizesFrom } from "./made-sizes.ts";
import { meetsMinimumSize, minimumSizeOf } from "./minimum-size.ts";
import { sampleCircuit } from "./sample-circuit.tester.ts";
import { thinnestNeeded, thinnestSufficient } from "./sizing.ts";

describe("the thinnest sufficient conductor, never thinner than the plan's", () => {
  test.each<[string, Partial<CircuitRun>, Awg | undefined, number | undefined]>([
    ["all met: stays", { conductor: awg(4) }, 4, 50],
    ["thicker than needed: stays", { conductor: awg("4/0") }, "4/0", 50],
    // 3 % of 12 V: 6 AWG drops 4.24 %, 4 AWG 2.68 %.
    ["drop", { conductor: awg(12), critical: true, dropLimitPercent: 3 }, 4, 50],
    // Met up to 0.05 percentage points above the limit.
    ["drop, limit just met", { conductor: awg(12), dropLimitPercent: 2.63 }, 4, 50],
    ["drop, limit just missed", { conductor: awg(12), dropLimitPercent: 2.629 }, 2, 50],
    // 12 V − 0.3216 V arrives over 4 AWG.
    ["device's own minimum just met", { conductor: awg(12), minimumV: 11.678 }, 4, 50],
    ["device's own minimum just missed", { conductor: awg(12), minimumV: 11.679 }, 2, 50],
    [
      "ampacity, no rating between on 10 AWG",
      { conductor: awg(14), protection: null, dropLimitPercent: 20 },
      8,
      50,
    ],
    [
      "stated rating at a continuous load is replaced",
      { conductor: awg(10), protection: fuse(40), dropLimitPercent: 20 },
      8,
      50,
    ],
    [
      "it is kept where the builder accepts that",
      {
        conductor: awg(10),
        protection: fuse(40),
        dropLimitPercent: 20,
        accept: { "protection/headroom": "runs for minutes" },
      },
      10,
      40,
    ],
    [
      "an accepted drop asks for no thicker conductor",
      {
        conductor: awg(8),
        dropLimitPercent: 1,
        accept: { "conductor/voltage-drop": "a short run in winter" },
      },
      8,
      50,
    ],
    ["rating below the load is replaced", { conductor: awg(8), protection: fuse(30) }, 8, 50],
    [
      "rating above the conductor is replaced by the largest that is not",
      { conductor: awg(8), protection: fuse(70) },
      8,
      60,
    ],
    ["rating that is not made is replaced", { conductor: awg(8), protection: fuse(55) }, 8, 50],
    [
      "replacing needs room for the aim: grows",
      { conductor: awg(10), protection: fuse(30), dropLimitPercent: 20 },
      8,
      50,
    ],
    [
      "not continuous: no headroom asked",
      { conductor: awg(10), protection: fuse(30), continuous: false, dropLimitPercent: 20 },
      10,
      40,
    ],
    ["a drop that no size meets", { positiveM: 300, negativeM: 300 }, undefined, undefined],
    ["a place that is too hot", { ambientC: 75, ambientStated: true }, undefined, undefined],
    [
      "no protection yet, and the far end's family is not made so great: its conductor is found all the same",
      {
        conductor: awg(12),
        protection: null,
        protectionFarEnd: fuse(30, "ISO 8820-3 Type F"),
        dropLimitPercent: 3,
      },
      4,
      undefined,
    ],
    [
      "a family not made so great is left alone",
      { conductor: awg(12), protection: fuse(30, "ISO 8820-3 Type F"), dropLimitPercent: 3 },
      4,
      30,
    ],
  ])("%s", (_, change, size, ratingA) => {
    const sizing = thinnestSufficient(sampleCircuit(change));
    expect(sizing && { size: sizeOf(sizing.conductor), ratingA: sizing.ratingA }).toEqual(
      size && { size, ratingA },
    );
  });

  test("stays in its system, with its number of parallel wires", () => {
    const conductor = { parallel: 2, system: "metric", mm2: 1 } as const;
    const sizing = thinnestSufficient(sampleCircuit({ conductor, bundledWith: 3 }));
    // Four together: 0.7 · 2 · 35 A = 49 A on 4 mm² is too little for 50 A; 6 mm² carries 63 A.
    expect(sizing).toEqual({
      conductor: { parallel: 2, system: "metric", mm2: 6 },
      ratingA: 50,
      ratingFarEndA: undefined,
    });
  });
});

describe("protection at both ends", () => {
  test.each<[string, Partial<CircuitRun>, Awg, number, number | undefined]>([
    ["one end stated, one missing", { fedFromBothEnds: true }, 4, 50, 50],
    ["both sound", { fedFromBothEnds: true, protectionFarEnd: fuse(60) }, 4, 50, 60],
    ["far end above the conductor", { conductor: awg(8), protectionFarEnd: fuse(70) }, 8, 50, 60],
    ["near end missing", { conductor: awg(8), protection: null, protectionFarEnd: fuse(60) }, 8, 50, 60],
    [
      "the missing end takes the family of the stated one",
      { loadA: 66, conductor: awg(4), protection: fuse(90, "UL 248-15 Class T"), fedFromBothEnds: true },
      4,
      90,
      90,
    ],
    [
      "the family of the stated one has no 90",
      { loadA: 66, conductor: awg(4), protection: fuse(100, "ISO 8820-3 Type E"), fedFromBothEnds: true },
      4,
      100,
      100,
    ],
    // 40 A carries a load that is not continuous, on 10 AWG; the far end's family begins at 60 A, which needs 8 AWG.
    [
      "the far end makes the conductor grow",
      {
        conductor: awg(10),
        loadA: 36,
        protection: fuse(40),
        continuous: false,
        protectionFarEnd: fuse(50, "ISO 8820-5 Type SF 51"),
        dropLimitPercent: 20,
      },
      8,
      40,
      60,
    ],
    [
      "the far end is not made so great: left to its rule",
      { conductor: awg(4), protection: fuse(40, "ISO 8820-3 Type C"), fedFromBothEnds: true },
      4,
      40,
      undefined,
    ],
  ])("%s", (_, change, size, ratingA, ratingFarEndA) => {
    expect(thinnestSufficient(sampleCircuit(change))).toEqual({
      conductor: awg(size),
      ratingA,
      ratingFarEndA,
    });
  });
});

describe("with headroom", () => {
  test.each<[string, Partial<CircuitRun>, Awg, number]>([
    ["room on the conductor", { conductor: awg(8), protection: fuse(40) }, 8, 50],
    [
      "no room on the conductor: both change",
      { conductor: awg(10), protection: fuse(40), dropLimitPercent: 20 },
      8,
      50,
    ],
    ["headroom there already", { conductor: awg(8), protection: fuse(60) }, 8, 60],
  ])("%s", (_, change, size, ratingA) => {
    expect(thinnestSufficient(sampleCircuit(change))).toMatchObject({ conductor: awg(size), ratingA });
  });
});

describe("the size that is needed, whatever the plan has", () => {
  test.each<[string, Partial<CircuitRun>, Awg, number]>([
    ["much thinner", { loadA: 5, conductor: awg(4), protection: fuse(7.5) }, 16, 7.5],
    ["sheathed, down to 18 AWG", { loadA: 5, sheathed: true, protection: fuse(7.5) }, 18, 7.5],
    ["a sound rating must be borne", { loadA: 5, conductor: awg(4), protection: fuse(50) }, 8, 50],
    ["a rating below the load is replaced", { loadA: 5, conductor: awg(4), protection: fuse(4) }, 16, 7.5],
    ["thicker than the plan's", { conductor: awg(16) }, 8, 50],
  ])("%s", (_, change, size, ratingA) => {
    expect(thinnestNeeded(sampleCircuit(change))).toMatchObject({ conductor: awg(size), ratingA });
  });
});

describe("minimum size", () => {
  test.each<[Conductor, Partial<CircuitRun>, boolean]>([
    // 33 CFR 183.425(d), (e)
    [awg(18), {}, false],
    [awg(16), {}, true],
    [awg(18), { sheathed: true }, true],
    // ISO 10133:2012, 7.7
    [mm2(0.75), {}, false],
    [mm2(1), {}, true],
    [mm2(0.75), { sheathed: true }, true],
    [mm2(0.75), { positiveM: 0.2, negativeM: 0.2 }, true],
    [mm2(0.75), { positiveM: 0.2, negativeM: 0.201 }, false],
  ])("%o %o", (conductor, change, met) => {
    expect(meetsMinimumSize(sampleCircuit({ conductor, ...change }))).toBe(met);
  });

  test("none is set for short metric conductors", () => {
    expect(minimumSizeOf(sampleCircuit({ conductor: mm2(0.75), positiveM: 0.2, negativeM: 0.2 }))).toBe(
      undefined,
    );
  });
});

describe("made sizes", () => {
  test("thinnest first, 3 AWG left out", () => {
    expect(madeSizes(awg(4)).map(sizeOf).join(" ")).toBe("18 16 14 12 10 8 6 4 2 1 1/0 2/0 3/0 4/0");
    expect(madeSizes(mm2(4)).map(sizeOf).join(" ")).toBe("0.75 1 1.5 2.5 4 6 10 16 25 35 50 70 95 120 150");
  });

  test("from one upward, itself first", () => {
    expect(sizesFrom(awg("2/0")).map(sizeOf)).toEqual(["2/0", "3/0", "4/0"]);
  });

  test("counted in steps", () => {
    expect(sizesAbove(awg(2), awg(4))).toBe(1);
    expect(sizesAbove(awg(12), awg(4))).toBe(-4);
    expect(sizesAbove(mm2(6), mm2(6))).toBe(0);
  });
});

type Awg = Extract<Conductor, { system: "awg" }>["awg"];
type Mm2 = Extract<Conductor, { system: "metric" }>["mm2"];

function awg(size: Awg): Conductor {
  return { parallel: 1, system: "awg", awg: size };
}

function mm2(size: Mm2): Conductor {
  return { parallel: 1, system: "metric", mm2: size };
}

function fuse(ratingA: number, family?: Protection["family"]): Protection {
  return { ratingA, writtenAs: "object", ...(family ? { family } : {}) };
}

function sizeOf(conductor: Conductor): Awg | Mm2 {
  return conductor.system === "awg" ? conductor.awg : conductor.mm2;
}
