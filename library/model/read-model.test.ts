import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { sampledRuns } from "../../tests/setup/sampled.ts";
import { build, circuit } from "../plan/index.ts";
import { ordinaryDropLimit } from "../standards/drop-limits.ts";
import { defaultBench } from "./bench-settings.ts";
import { buildProperties } from "./build-properties.ts";
import { circuitProperties } from "./circuit-properties.ts";
import { readModel } from "./read-model.ts";
import type { PlanRecord } from "./record.ts";

type Input = Readonly<Record<string, unknown>>;

const good: Input = { name: "Heater", load: 40, oneWayFt: 15, gauge: 4, protect: 50 };

const circuitRecord = (input: unknown, fallbackName = "plan.ts line 3"): PlanRecord => ({
  word: "circuit",
  input,
  fallbackName,
});
const buildRecord = (input: unknown): PlanRecord => ({
  word: "build",
  input,
  fallbackName: "plan.ts line 1",
});
const readOne = (change: Input) => readModel([circuitRecord({ ...good, ...change })]);
/** Findings as one line each: "gauge: 5 is not …". */
const complaints = (records: readonly PlanRecord[]) =>
  readModel(records).invalid.map(({ path, given, wrong }) =>
    [path.join(" > ") + (given === undefined ? "" : `: ${given}`), wrong].join(" ").trim(),
  );

describe("a circuit in order", () => {
  it("has every default filled in", () => {
    const { circuits, unjudged, invalid } = readModel([circuitRecord(good)]);
    expect({ unjudged, invalid }).toEqual({ unjudged: [], invalid: [] });
    expect(circuits).toEqual([
      {
        record: 0,
        word: "circuit",
        inNetwork: false,
        name: "Heater",
        statesLoad: true,
        loadA: 40,
        loadAtV: 12,
        systemV: 12,
        lowestV: 10.5,
        lengthsGiven: { oneWayFt: 15 },
        lengthsFrom: "plan",
        lengthUnit: "ft",
        positiveM: 15 * 0.3048,
        negativeM: 15 * 0.3048,
        conductor: { parallel: 1, system: "awg", awg: 4 },
        insulationC: 75,
        insulationStated: false,
        nameStated: true,
        engineSpace: false,
        ambientC: 30,
        ambientStated: false,
        bundledWith: 1,
        bundledWithStated: false,
        sheathed: false,
        continuous: true,
        continuousStated: false,
        critical: false,
        dropLimitPercent: 10,
        dropLimitStated: false,
        dropLimitSource: ordinaryDropLimit.source,
        fedFromBothEnds: false,
        fromBattery: false,
        toBattery: false,
        protection: { ratingA: 50, writtenAs: "number" },
        protectionFarEnd: null,
        accept: {},
        partlyInvalid: false,
      },
    ]);
  });

  it.each<[string, Input, Input]>([
    [
      "metres one way",
      { oneWayFt: undefined, oneWayM: 4.5 },
      { lengthsGiven: { oneWayM: 4.5 }, positiveM: 4.5, negativeM: 4.5 },
    ],
    [
      "each conductor in feet",
      { oneWayFt: undefined, positiveFt: 10, negativeFt: 20 },
      { lengthsGiven: { positiveFt: 10, negativeFt: 20 }, positiveM: 10 * 0.3048, negativeM: 20 * 0.3048 },
    ],
    [
      "each conductor in metres",
      { oneWayFt: undefined, positiveM: 4, negativeM: 1 },
      { lengthsGiven: { positiveM: 4, negativeM: 1 }, positiveM: 4, negativeM: 1 },
    ],
    ["watts at the nominal voltage", { load: undefined, loadW: 480 }, { loadA: 40, loadW: 480, loadAtV: 12 }],
    [
      "watts at the device's own minimum voltage",
      { load: undefined, loadW: 480, minimumV: 10 },
      { loadA: 48, loadW: 480, loadAtV: 10, minimumV: 10 },
    ],
    ["the maximum voltage of the device", { maximumV: 32 }, { loadA: 40, maximumV: 32 }],
    [
      "amperes are not touched by a minimum voltage",
      { minimumV: 10 },
      { loadA: 40, loadAtV: 10, minimumV: 10 },
    ],
    ["a thick gauge", { gauge: "4/0" }, { conductor: { parallel: 1, system: "awg", awg: "4/0" } }],
    [
      "a metric size",
      { gauge: undefined, mm2: 2.5 },
      { conductor: { parallel: 1, system: "metric", mm2: 2.5 } },
    ],
    [
      "parallel wires lie together",
      { parallel: 2 },
      { conductor: { parallel: 2, system: "awg", awg: 4 }, bundledWith: 3 },
    ],
    ["a bundle of its own", { parallel: 2, bundledWith: 0 }, { bundledWith: 0, bundledWithStated: true }],
    ["critical", { critical: true }, { critical: true, dropLimitPercent: 3, dropLimitStated: false }],
    [
      "its own drop limit",
      { critical: true, dropLimitPercent: 5 },
      { dropLimitPercent: 5, dropLimitStated: true },
    ],
    ["stated insulation", { insulationC: 105 }, { insulationC: 105, insulationStated: true }],
    ["stated ambient", { ambientC: 30 }, { ambientC: 30, ambientStated: true }],
    [
      "protection as an object, in inches",
      {
        protect: {
          ratingA: 50,
          family: "ISO 8820-3 Type E",
          distanceIn: 7,
          interruptingA: 1000,
          ratedV: 58,
        },
      },
      {
        protection: {
          ratingA: 50,
          writtenAs: "object",
          family: "ISO 8820-3 Type E",
          distanceM: 7 * 0.0254,
          distanceGiven: { distanceIn: 7 },
          interruptingA: 1000,
          ratedV: 58,
        },
      },
    ],
    [
      "protection at the far end, in millimetres",
      { fedFromBothEnds: true, protectFarEnd: { ratingA: 50, distanceMm: 150 } },
      {
        fedFromBothEnds: true,
        protectionFarEnd: {
          ratingA: 50,
          writtenAs: "object",
          distanceM: 0.15,
          distanceGiven: { distanceMm: 150 },
        },
      },
    ],
    ["no protection", { protect: undefined }, { protection: null }],
    [
      "accepted findings, one without a reason",
      { accept: { "conductor/ampacity": "short bursts", "protection/missing": "" } },
      { accept: { "conductor/ampacity": "short bursts", "protection/missing": "" } },
    ],
    ["an unknown property that says nothing", { wallpaper: undefined }, { partlyInvalid: false }],
  ])("%s", (_, change, expected) => {
    const { circuits, invalid } = readOne(change);
    expect(invalid).toEqual([]);
    expect(circuits).toMatchObject([expected]);
  });

  it.each([
    ["no name", undefined, "heaterRun"],
    ["an empty name", "", "heaterRun"],
    ["a name of marks that cannot be seen", "\u202e\u200f", "heaterRun"],
    ["a name with a line break", "Heater\nrun", "Heater run"],
  ])("%s", (_, name, shown) => {
    const { circuits, invalid } = readModel([circuitRecord({ ...good, name }, "heaterRun")]);
    expect(invalid).toEqual([]);
    expect(circuits[0]?.name).toBe(shown);
  });
});

describe("the settings of a build", () => {
  const settings = {
    name: "Library bus",
    voltage: 24,
    ambientC: 40,
    insulationC: 105,
    engineSpace: true,
    continuous: false,
    criticalDropPercent: 2,
    dropPercent: 5,
  };
  const taken = {
    systemV: 24,
    ambientC: 40,
    ambientStated: true,
    insulationC: 105,
    insulationStated: true,
    engineSpace: true,
    continuous: false,
    continuousStated: true,
    dropLimitPercent: 5,
    dropLimitStated: true,
  };

  it("hold for circuits before and after it", () => {
    const { build, circuits } = readModel([circuitRecord(good), buildRecord(settings), circuitRecord(good)]);
    expect(build).toEqual({ record: 1, name: "Library bus", voltageStated: true, bench: defaultBench });
    expect(circuits).toMatchObject([
      { record: 0, ...taken },
      { record: 2, ...taken },
    ]);
  });

  it("give way to what the circuit says itself", () => {
    const own = {
      ambientC: 30,
      insulationC: 75,
      engineSpace: false,
      continuous: true,
      dropLimitPercent: 10,
    };
    const { circuits } = readModel([buildRecord(settings), circuitRecord({ ...good, voltage: 12, ...own })]);
    expect(circuits).toMatchObject([{ systemV: 12, ...own, dropLimitStated: true }]);
  });

  it("know critical circuits from others", () => {
    const { circuits } = readModel([buildRecord(settings), circuitRecord({ ...good, critical: true })]);
    expect(circuits).toMatchObject([{ dropLimitPercent: 2 }]);
  });

  it("are nothing when no build is called", () => {
    expect(readModel([circuitRecord(good)]).build).toEqual({ voltageStated: false, bench: defaultBench });
  });

  it.each<[string, Input, Input, "judged" | "not judged"]>([
    ["a refused voltage that the circuit relies on", { voltage: 0 }, {}, "not judged"],
    ["a refused voltage that the circuit does not need", { voltage: 0 }, { voltage: 12 }, "judged"],
    ["a refused ambient that the circuit relies on", { ambientC: "40" }, {}, "not judged"],
    ["a refused ambient that the circuit does not need", { ambientC: "40" }, { ambientC: 40 }, "judged"],
    ["a refused drop limit of ordinary circuits", { dropPercent: 0 }, {}, "not judged"],
    [
      "a refused drop limit of ordinary circuits, for a critical one",
      { dropPercent: 0 },
      { critical: true },
      "judged",
    ],
    [
      "a refused drop limit of critical circuits",
      { criticalDropPercent: 0 },
      { critical: true },
      "not judged",
    ],
    [
      "a refused drop limit of critical circuits, for an ordinary one",
      { criticalDropPercent: 0 },
      {},
      "judged",
    ],
    [
      "a refused drop limit, where the circuit has its own",
      { dropPercent: 0 },
      { dropLimitPercent: 5 },
      "judged",
    ],
    ["a misspelt property", { enginSpace: true }, {}, "not judged"],
    [
      "a misspelt property that the circuit states itself",
      { enginSpace: true },
      { engineSpace: true },
      "judged",
    ],
    ["a property that nobody knows", { heat: 50 }, { engineSpace: true }, "not judged"],
    ["a remark", { remark: "mine" }, {}, "judged"],
    ["a refused name", { name: 7 }, {}, "judged"],
  ])("%s: the circuit is %4$s", (_, settings, change, outcome) => {
    const { circuits, unjudged, invalid } = readModel([
      buildRecord(settings),
      circuitRecord({ ...good, ...change }),
    ]);
    expect(invalid).toMatchObject([{ record: 0, name: "the build" }]);
    expect([circuits.length, unjudged.length]).toEqual(outcome === "judged" ? [1, 0] : [0, 1]);
  });

  it("are refused when they are given twice, and hold only where both agree", () => {
    const records = [
      buildRecord({ voltage: 12, ambientC: 40 }),
      circuitRecord(good),
      circuitRecord({ ...good, ambientC: 30 }),
      buildRecord({ voltage: 12, ambientC: 50 }),
    ];
    const { circuits, unjudged, invalid } = readModel(records);
    expect(invalid).toEqual([
      {
        record: 3,
        path: [],
        name: "the build",
        given: undefined,
        wrong: "build is called a second time",
        allowed: "one call of build in a plan",
      },
    ]);
    expect(unjudged).toEqual([{ record: 1, name: "Heater" }]);
    expect(circuits).toMatchObject([{ record: 2, ambientC: 30 }]);
  });
});

describe("amounts, on both sides of each limit", () => {
  const each = (other: string): Input => ({ oneWayFt: undefined, [other]: 1 });
  it.each<[string, readonly number[], readonly [number, string][], Input?]>([
    [
      "load",
      [1e-6, 2_000],
      [
        [2_000.001, "is too large"],
        [0, "is zero"],
        [-4, "is negative"],
        [1e308, "is too large"],
      ],
    ],
    [
      "loadW",
      [1e-6, 24_000],
      [
        [24_000.1, "is too large: more than 2,000 A"],
        [100_001, "is too large"],
        [0, "is zero"],
        [-1, "is negative"],
      ],
      { load: undefined },
    ],
    [
      "voltage",
      [1, 12, 24, 48, 50],
      [
        [50.01, "is too large"],
        [0.99, "is too small"],
        [0, "is zero"],
        [-12, "is negative"],
      ],
    ],
    [
      "oneWayFt",
      [0.03, 1_000],
      [
        [1_000.1, "is too large"],
        [1e-300, "is too small"],
        [0, "is zero"],
        [-1, "is negative"],
        [1e308, "is too large"],
      ],
    ],
    [
      "oneWayM",
      [0.01, 300],
      [
        [300.1, "is too large"],
        [0.0099, "is too small"],
        [0, "is zero"],
        [-1, "is negative"],
      ],
      { oneWayFt: undefined },
    ],
    [
      "positiveFt",
      [0.03, 1_000],
      [
        [1_000.1, "is too large"],
        [1e-300, "is too small"],
        [0, "is zero"],
      ],
      each("negativeFt"),
    ],
    [
      "negativeFt",
      [0.03, 1_000],
      [
        [1_000.1, "is too large"],
        [1e-300, "is too small"],
        [0, "is zero"],
      ],
      each("positiveFt"),
    ],
    [
      "positiveM",
      [0.01, 300],
      [
        [300.1, "is too large"],
        [0.0099, "is too small"],
        [0, "is zero"],
      ],
      each("negativeM"),
    ],
    [
      "negativeM",
      [0.01, 300],
      [
        [300.1, "is too large"],
        [0.0099, "is too small"],
        [0, "is zero"],
      ],
      each("positiveM"),
    ],
    [
      "protect",
      [0.5, 6_000],
      [
        [6_000.1, "is too large"],
        [0, "is zero"],
        [-50, "is negative"],
        [1e308, "is too large"],
      ],
    ],
    [
      "protectFarEnd",
      [0.5, 6_000],
      [
        [6_000.1, "is too large"],
        [0, "is zero"],
        [-50, "is negative"],
      ],
    ],
    [
      "dropLimitPercent",
      [0.01, 20],
      [
        [20.1, "is too large"],
        [0, "is zero"],
        [-3, "is negative"],
      ],
    ],
    [
      "ambientC",
      [-50, 0, 200],
      [
        [200.1, "is too large"],
        [-50.1, "is too small"],
        [1e308, "is too large"],
      ],
    ],
    [
      "bundledWith",
      [0, 1, 200],
      [
        [201, "is too large"],
        [-1, "is negative"],
        [2.5, "is not a whole number"],
      ],
    ],
    [
      "parallel",
      [1, 8],
      [
        [9, "is too large"],
        [0, "is zero"],
        [1.5, "is not a whole number"],
        [-1, "is negative"],
      ],
    ],
    [
      "minimumV",
      [1, 10.5, 12],
      [
        [12.01, "is above the nominal voltage, 12 V"],
        [50.1, "is too large"],
        [0.9, "is too small"],
        [0, "is zero"],
      ],
    ],
  ])("%s", (property, allowed, refused, beside = {}) => {
    for (const value of allowed)
      expect(readOne({ ...beside, [property]: value }).invalid, String(value)).toEqual([]);
    for (const [value, wrong] of [...refused, ...neverANumber]) {
      const { circuits, invalid } = readOne({ ...beside, [property]: value });
      expect(invalid, String(value)).toMatchObject([{ path: [property], wrong }]);
      expect(circuits).toEqual([]);
    }
  });

  it.each<[string, readonly number[], readonly [number, string][], "judged" | "not judged"]>([
    [
      "ratingA",
      [0.5, 6_000],
      [
        [6_000.1, "is too large"],
        [0, "is zero"],
        [-1, "is negative"],
      ],
      "not judged",
    ],
    [
      "distanceIn",
      [0, 12_000],
      [
        [12_000.1, "is too large"],
        [-1, "is negative"],
      ],
      "judged",
    ],
    [
      "distanceMm",
      [0, 300_000],
      [
        [300_000.1, "is too large"],
        [-1, "is negative"],
      ],
      "judged",
    ],
    [
      "interruptingA",
      [1, 200_000],
      [
        [200_001, "is too large"],
        [0, "is zero"],
        [-1, "is negative"],
      ],
      "judged",
    ],
    [
      "ratedV",
      [12, 1_500],
      [
        [1_501, "is too large"],
        [0, "is zero"],
        [-1, "is negative"],
      ],
      "judged",
    ],
  ])("protect.%s", (property, allowed, refused, outcome) => {
    for (const value of allowed)
      expect(readOne({ protect: { ratingA: 50, [property]: value } }).invalid, String(value)).toEqual([]);
    for (const [value, wrong] of [...refused, ...neverANumber]) {
      const { circuits, invalid } = readOne({ protect: { ratingA: 50, [property]: value } });
      expect(invalid, String(value)).toMatchObject([{ path: ["protect", property], wrong }]);
      expect(circuits.map(({ partlyInvalid }) => partlyInvalid)).toEqual(outcome === "judged" ? [true] : []);
    }
  });

  it.each<[string, readonly number[], readonly [number, string][]]>([
    [
      "voltage",
      [1, 50],
      [
        [50.1, "is too large"],
        [0.9, "is too small"],
      ],
    ],
    [
      "ambientC",
      [-50, 200],
      [
        [200.1, "is too large"],
        [-50.1, "is too small"],
      ],
    ],
    [
      "criticalDropPercent",
      [0.01, 20],
      [
        [20.1, "is too large"],
        [0, "is zero"],
      ],
    ],
    [
      "dropPercent",
      [0.01, 20],
      [
        [20.1, "is too large"],
        [0, "is zero"],
      ],
    ],
  ])("%s of a build", (property, allowed, refused) => {
    for (const value of allowed) expect(readModel([buildRecord({ [property]: value })]).invalid).toEqual([]);
    for (const [value, wrong] of [...refused, ...neverANumber])
      expect(readModel([buildRecord({ [property]: value })]).invalid).toMatchObject([
        { path: [property], wrong },
      ]);
  });
});

const neverANumber: readonly [never, string][] = (
  [
    [Number.NaN, "is not a number"],
    [{ $strange: "NaN" }, "is not a number"],
    [Number.POSITIVE_INFINITY, "is not a finite number"],
    [{ $strange: "Infinity" }, "is not a finite number"],
    [{ $strange: "-Infinity" }, "is not a finite number"],
    [{ $strange: "a function" }, "is not a number"],
    ["12", "is text, not a number"],
    ["", "is text, not a number"],
    [null, "is not a number"],
    [true, "is not a number"],
    [[12], "is not a number"],
  ] as const
).map(([value, wrong]) => [value as never, wrong]);

describe("choices, and what is neither number nor text", () => {
  const sizes = '18, 16, 14, 12, 10, 8, 6, 4, 2, 1, "1/0", "2/0", "3/0", "4/0"';
  it.each<[string, unknown, string, string?]>([
    ["gauge", 5, "gauge: 5 is not one of the sizes"],
    ["gauge", 0, "gauge: 0 is not one of the sizes", "1/0"],
    ["gauge", "00", 'gauge: "00" is not one of the sizes', "2/0"],
    ["gauge", "4", 'gauge: "4" is text, and should be a number'],
    ["gauge", "4 AWG", 'gauge: "4 AWG" is not one of the sizes'],
    ["gauge", { $strange: "NaN" }, "gauge: NaN is not one of the sizes"],
    ["gauge", Number.NaN, "gauge: NaN is not a number"],
    ["gauge", Number.POSITIVE_INFINITY, "gauge: Infinity is not a finite number"],
    ["gauge", null, "gauge: null is not one of the sizes"],
    ["gauge", 1e308, "gauge: 1e+308 is not one of the sizes"],
    ["insulationC", 100, "insulationC: 100 is not an insulation rating in the tables"],
    ["insulationC", "105", 'insulationC: "105" is text, and should be a number'],
    ["critical", "yes", 'critical: "yes" is neither true nor false'],
    ["critical", 1, "critical: 1 is neither true nor false"],
    ["continuous", null, "continuous: null is neither true nor false"],
    ["engineSpace", "true", 'engineSpace: "true" is neither true nor false'],
    ["sheathed", 0, "sheathed: 0 is neither true, false nor one of the names"],
    [
      "sheathed",
      "flat duplx",
      'sheathed: "flat duplx" is neither true, false nor one of the names',
      "flat duplex",
    ],
    ["fromBattery", {}, "fromBattery: an object is neither true nor false"],
    ["fedFromBothEnds", [], "fedFromBothEnds: a list is neither true nor false"],
    ["protect", "50", 'protect: "50" is text, not a number'],
    ["protect", [50], "protect: a list is not a number"],
    ["protect", { $strange: "a function" }, "protect: a function is not a number"],
    ["protectFarEnd", true, "protectFarEnd: true is not a number"],
  ])("%s: %j stops the circuit", (property, value, complaint, nearest) => {
    const { circuits, invalid } = readOne({ [property]: value });
    expect(complaints([circuitRecord({ ...good, [property]: value })])).toEqual([complaint]);
    expect(invalid[0]?.nearest).toBe(nearest);
    expect(circuits).toEqual([]);
    if (property === "gauge") expect(invalid[0]?.allowed).toBe(sizes);
  });

  it.each([
    ["mm2: 3", { mm2: 3 }, "mm2: 3 is not one of the sizes"],
    ["mm2 as text", { mm2: "2.5" }, 'mm2: "2.5" is text, and should be a number'],
  ])("%s", (_, change, complaint) => {
    expect(complaints([circuitRecord({ ...good, gauge: undefined, ...change })])).toEqual([complaint]);
  });

  it.each<[string, Input, string[]]>([
    [
      "a family that does not exist",
      { ratingA: 50, family: "ISO 8820-3 Type X" },
      ['protect > family: "ISO 8820-3 Type X" is not a family of fuses or breakers'],
    ],
    ["no rating", {}, ["protect ratingA is missing"]],
    ["no rating, but a family", { family: "circuit breaker" }, ["protect ratingA is missing"]],
    [
      "a misspelt rating is not also missing",
      { ratinga: 50 },
      ["protect > ratinga is not a property of protection"],
    ],
    [
      "a property that nobody knows",
      { ratingA: 50, slow: true },
      ["protect > slow is not a property of protection"],
    ],
    [
      "everything wrong at once",
      { ratingA: "x", family: 5, amps: 3 },
      [
        'protect > ratingA: "x" is text, not a number',
        "protect > family: 5 is not a family of fuses or breakers",
        "protect > amps is not a property of protection",
      ],
    ],
  ])("protection with %s stops the circuit", (_, protect, expected) => {
    expect(complaints([circuitRecord({ ...good, protect })])).toEqual(expected);
    expect(readOne({ protect }).circuits).toEqual([]);
  });

  it("protection with two distances is judged without either", () => {
    const { circuits, invalid } = readOne({ protect: { ratingA: 50, distanceIn: 4, distanceMm: 100 } });
    expect(invalid).toMatchObject([
      { path: ["protect", "distanceMm"], wrong: "cannot be given together with distanceIn" },
    ]);
    expect(circuits).toMatchObject([
      { partlyInvalid: true, protection: { ratingA: 50, writtenAs: "object" } },
    ]);
    expect(circuits[0]?.protection).not.toHaveProperty("distanceM");
  });

  it.each<[string, Input, string[], Input]>([
    ["a name that is no text", { name: 7 }, ["name: 7 is not text"], { name: "plan.ts line 3" }],
    [
      "an accepted rule that does not exist",
      { accept: { "conductor/voltage-drap": "x", "conductor/ampacity": "y" } },
      ["accept > conductor/voltage-drap is not a rule that can be accepted"],
      { accept: { "conductor/ampacity": "y" } },
    ],
    [
      "a rule that cannot be accepted",
      { accept: { "plan/invalid-value": "x" } },
      ["accept > plan/invalid-value is not a rule that can be accepted"],
      { accept: {} },
    ],
    [
      "a reason that is no text",
      { accept: { "conductor/ampacity": true } },
      ["accept > conductor/ampacity: true is not text"],
      { accept: {} },
    ],
    [
      "accepting as a list",
      { accept: ["conductor/ampacity"] },
      ["accept: a list is not an object"],
      { accept: {} },
    ],
    ["accepting as text", { accept: "all" }, ['accept: "all" is not an object'], { accept: {} }],
    [
      "accepting as a function",
      { accept: { $strange: "a function" } },
      ["accept: a function is not an object"],
      { accept: {} },
    ],
    [
      "a remark in a property that does not exist",
      { remark: "behind the stove" },
      ["remark is not a property of circuit"],
      { name: "Heater" },
    ],
  ])("%s: judged on the rest", (_, change, expected, taken) => {
    expect(complaints([circuitRecord({ ...good, ...change })])).toEqual(expected);
    const { circuits, unjudged } = readOne(change);
    expect(unjudged).toEqual([]);
    expect(circuits).toMatchObject([{ ...taken, partlyInvalid: true }]);
    if (taken.accept) expect(circuits[0]?.accept).toEqual(taken.accept);
  });
});

describe("either-or", () => {
  it.each<[string, Input, [path: string[], wrong: string, allowed: string][]]>([
    ["both sizes", { mm2: 25 }, [[["mm2"], "cannot be given together with gauge", "only one of gauge, mm2"]]],
    ["no size", { gauge: undefined }, [[[], "a size is missing", "gauge or mm2"]]],
    [
      "both loads",
      { loadW: 480 },
      [[["loadW"], "cannot be given together with load", "only one of load, loadW"]],
    ],
    ["no load", { load: undefined }, [[[], "a load is missing", "load or loadW"]]],
    [
      "no length",
      { oneWayFt: undefined },
      [[[], "a length is missing", "oneWayFt, oneWayM, positiveFt + negativeFt or positiveM + negativeM"]],
    ],
    [
      "two lengths",
      { oneWayM: 5 },
      [
        [
          ["oneWayM"],
          "cannot be given together with oneWayFt",
          "only one of oneWayFt, oneWayM, positiveFt + negativeFt, positiveM + negativeM",
        ],
      ],
    ],
    [
      "one conductor only",
      { oneWayFt: undefined, positiveFt: 12 },
      [[[], "negativeFt is missing", "positiveFt + negativeFt together"]],
    ],
    [
      "the other conductor only",
      { oneWayFt: undefined, negativeM: 3 },
      [[[], "positiveM is missing", "positiveM + negativeM together"]],
    ],
    [
      "conductors in two units",
      { oneWayFt: undefined, positiveFt: 12, negativeM: 3 },
      [
        [
          ["negativeM"],
          "cannot be given together with positiveFt",
          "only one of oneWayFt, oneWayM, positiveFt + negativeFt, positiveM + negativeM",
        ],
      ],
    ],
    [
      "a pair and one way",
      { positiveFt: 12, negativeFt: 3 },
      [
        [
          ["positiveFt"],
          "cannot be given together with oneWayFt",
          "only one of oneWayFt, oneWayM, positiveFt + negativeFt, positiveM + negativeM",
        ],
        [
          ["negativeFt"],
          "cannot be given together with oneWayFt",
          "only one of oneWayFt, oneWayM, positiveFt + negativeFt, positiveM + negativeM",
        ],
      ],
    ],
    [
      "a misspelt size is not also missing",
      { gauge: undefined, gague: 4 },
      [[["gague"], "is not a property of circuit", "gauge"]],
    ],
    [
      "a misspelt load is not also missing",
      { load: undefined, amps: 40 },
      [[["amps"], "is not a property of circuit", "load"]],
    ],
    [
      "a misspelt conductor is not also missing",
      { oneWayFt: undefined, positiveFt: 12, negitiveFt: 3 },
      [[["negitiveFt"], "is not a property of circuit", "negativeFt"]],
    ],
  ])("%s", (_, change, expected) => {
    const { circuits, unjudged, invalid } = readOne(change);
    expect(invalid.map(({ path, wrong, allowed }) => [path, wrong, allowed])).toEqual(expected);
    expect([circuits.length, unjudged]).toEqual([0, [{ record: 0, name: "Heater" }]]);
  });

  it("reports everything that is missing at once", () => {
    expect(complaints([circuitRecord({})])).toEqual([
      "a load is missing",
      "a length is missing",
      "a size is missing",
    ]);
  });
});

describe("names that no property has", () => {
  it.each<[string, unknown, string | undefined]>([
    ["bundledwith", 6, "bundledWith"],
    ["enginespace", true, "engineSpace"],
    ["ambient", 50, "ambientC"],
    ["fuse", 50, "protect"],
    ["note", 5, undefined],
    ["bundle of wires", { three: 3 }, undefined],
  ])("%s: %j could have made a figure too good, so the circuit is not judged", (name, value, nearest) => {
    const { circuits, invalid } = readOne({ [name]: value });
    expect(invalid).toMatchObject([
      { path: [name], given: undefined, wrong: "is not a property of circuit" },
    ]);
    expect(invalid[0]?.nearest).toBe(nearest);
    expect(circuits).toEqual([]);
  });

  it("harm nobody when they are those that JavaScript itself uses", () => {
    const input = JSON.parse(
      '{"load":40,"oneWayFt":15,"gauge":4,"__proto__":{"gauge":18,"polluted":1},"constructor":"x","hasOwnProperty":null}',
    );
    expect(complaints([circuitRecord(input)])).toEqual([
      "__proto__ is not a property of circuit",
      "constructor is not a property of circuit",
      "hasOwnProperty is not a property of circuit",
    ]);
    const accept = JSON.parse('{"__proto__":"x","constructor":"y","toString":"z"}');
    expect(readOne({ accept }).invalid).toHaveLength(3);
    expect(readOne({ accept }).circuits[0]?.accept).toEqual({});
    expect(({} as Input).polluted).toBeUndefined();
  });

  it("are not all listed when there are thousands of them", () => {
    const input = Object.fromEntries(Array.from({ length: 5_000 }, (_, i) => [`p${i}`, "x"]));
    const { circuits, invalid } = readModel([circuitRecord({ ...good, ...input })]);
    expect(invalid).toHaveLength(20);
    expect(circuits).toEqual([]);
  });
});

it("knows what its own words give back, spread into a further call", () => {
  const lamp = circuit({ name: "Lamp", load: 2, oneWayFt: 15, gauge: 16, protect: 5 });
  const records = [
    buildRecord({ ...build({ voltage: 24 }) }),
    circuitRecord({ ...lamp, name: "Second lamp" }),
  ];
  expect(readModel(records)).toMatchObject({
    invalid: [],
    circuits: [{ name: "Second lamp", systemV: 24, partlyInvalid: false }],
  });
  // Also found if there is another error, and properties are read one by one.
  expect(complaints([circuitRecord({ ...lamp, gauge: 5 })])).toEqual(["gauge: 5 is not one of the sizes"]);
  expect(complaints([circuitRecord({ ...lamp, kind: "build" })])).toEqual([
    "kind is not a property of circuit",
  ]);
});

describe("an argument that is no object", () => {
  it.each<[unknown, string]>([
    [undefined, "the object with its properties is missing"],
    [null, ": null is not an object"],
    [40, ": 40 is not an object"],
    ["4 AWG", ': "4 AWG" is not an object'],
    [[good], ": a list is not an object"],
    [{ $strange: "an object of class Date" }, ": an object of class Date is not an object"],
  ])("%j", (input, complaint) => {
    expect(complaints([circuitRecord(input)])).toEqual([complaint]);
    expect(readModel([circuitRecord(input)]).unjudged).toEqual([{ record: 0, name: "plan.ts line 3" }]);
    expect(complaints([buildRecord(input)])).toEqual([complaint]);
    expect(readModel([buildRecord(input), circuitRecord(good)]).circuits).toEqual([]);
  });
});

it("judges the circuits beside a refused one", () => {
  const { circuits, unjudged } = readModel([circuitRecord({ ...good, gauge: 5 }), circuitRecord(good)]);
  expect(circuits.map(({ record }) => record)).toEqual([1]);
  expect(unjudged).toEqual([{ record: 0, name: "Heater" }]);
});

it("makes of anything at all either a circuit with finite numbers or a reason why not", () => {
  const value = fc.oneof(
    fc.constantFrom(
      1,
      4,
      12,
      50,
      105,
      true,
      false,
      "1/0",
      "4",
      "",
      null,
      undefined,
      0,
      -1,
      1e308,
      Number.NaN,
    ),
    fc.constantFrom({ ratingA: 50 }, { ratingA: 50, distanceIn: 5 }, { distanceMm: -5 }, [], {
      $strange: "NaN",
    }),
    fc.double(),
    fc.string(),
    fc.anything(),
  );
  const argument = (table: { readonly properties: ReadonlyMap<string, unknown> }) =>
    fc.dictionary(fc.oneof(fc.constantFrom(...table.properties.keys()), fc.string()), value, { maxKeys: 8 });
  const base = fc.constantFrom<Input>({}, good, { loadW: 60, oneWayM: 3, mm2: 2.5 });
  const circuit = fc
    .tuple(base, argument(circuitProperties))
    .map(([start, change]) => ({ ...start, ...change }));
  fc.assert(
    fc.property(fc.option(argument(buildProperties)), circuit, (settings, input) => {
      const records = [...(settings ? [buildRecord(settings)] : []), circuitRecord(input)];
      const { circuits, unjudged, invalid } = readModel(records);
      expect(circuits.length + unjudged.length).toBe(1);
      if (unjudged.length > 0) expect(invalid).not.toEqual([]);
      for (const circuit of circuits) {
        const { loadA, loadAtV, systemV, positiveM, negativeM, dropLimitPercent, protection } = circuit;
        const numbers = [loadA, loadAtV, systemV, positiveM, negativeM, dropLimitPercent];
        for (const number of [...numbers, protection?.ratingA ?? 1]) {
          expect(Number.isFinite(number)).toBe(true);
          expect(number).toBeGreaterThan(0);
        }
      }
    }),
    { numRuns: sampledRuns(2_000) },
  );
});
