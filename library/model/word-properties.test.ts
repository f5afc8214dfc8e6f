import { describe, expect, it } from "vitest";
import { readValues } from "./read-values.ts";
import { type Word, words } from "./record.ts";
import { sampleParts } from "./sample-parts.tester.ts";
import { isPartWord } from "./terminals.ts";
import { wordProperties } from "./word-properties.ts";

const partWords = words.filter(isPartWord);

/** Each amount with its limits: the lower one is inclusive (`from`) or exclusive (`above`), the upper one inclusive. */
const amounts: readonly [Word, string, { from: number } | { above: number }, number][] = [
  ["cable", "lengthFt", { from: 0.03 }, 1_000],
  ["cable", "lengthM", { from: 0.01 }, 300],
  ["cable", "protect", { above: 0 }, 6_000],
  ["cable", "protectFarEnd", { above: 0 }, 6_000],
  ["cable", "ambientC", { from: -50 }, 200],
  ["cable", "bundledWith", { from: 0 }, 200],
  ["cable", "parallel", { from: 1 }, 8],
  ["scenario", "sunPercent", { from: 0 }, 100],
  ["scenario", "chargePercent", { from: 0 }, 100],
  ["scenario", "bankV", { from: 1 }, 100],
  ["period", "latitudeDeg", { from: -90 }, 90],
  ["period", "longitudeDeg", { from: -180 }, 180],
  ["period", "startPercent", { from: 0 }, 100],
  ["period", "clockAheadH", { from: -4 }, 4],
  ["cable", "fromStud", { from: 1 }, 200],
  ["cable", "toStud", { from: 1 }, 200],
  ["cable", "outsideMm", { above: 0 }, 200],
  ["build", "lowestC", { from: -60 }, 50],
  ["build", "slackPercent", { from: 0 }, 100],
  ["build", "endSlackMm", { from: 0 }, 1_000],
  ["build", "endSlackIn", { from: 0 }, 40],
  ["build", "spareFuses", { from: 0 }, 100],
  // `tests/types/manual.test.ts` holds these to the limits in the doc comments of the plan.
  ...[...partWords, ...(["surface", "channel", "compartment"] as const)].flatMap((word) =>
    [...wordProperties[word].properties].flatMap(([name, { limits }]): typeof amounts =>
      limits ? [[word, name, limits, limits.upTo]] : [],
    ),
  ),
];

describe("amounts, on both sides of each limit", () => {
  it.each(amounts)("%s.%s", (word, property, lower, upTo) => {
    const least = "from" in lower ? lower.from : lower.above;
    const above = "from" in lower ? least : least + 1e-6;
    for (const value of [above, upTo])
      expect(wrongWith(word, property, value), String(value)).toBeUndefined();
    const below = "from" in lower ? (least > 0 ? least * 0.99 : least - 1) : least;
    for (const value of [below, upTo + 1])
      expect(wrongWith(word, property, value), String(value)).toMatch(/^is /);
    expect(wrongWith(word, property, "12")).toBe("is text, not a number");
    expect(wrongWith(word, property, { $strange: "NaN" })).toBe("is not a number");
    expect(wrongWith(word, property, Number.POSITIVE_INFINITY)).toBe("is not a finite number");
  });

  it.each<[Word, string, (ohm: number) => unknown]>([
    ["chassis", "milliohm", (milliohm) => milliohm],
    ["part", "joins", (milliohm) => [{ between: ["a", "b"], milliohm }]],
  ])(
    "the resistance of %s.%s may be none, or one that numbers can tell from none",
    (word, property, given) => {
      for (const ohm of [0, 0.001, 1_000]) expect(wrongWith(word, property, given(ohm))).toBeUndefined();
      for (const ohm of [1e-300, 0.000_99])
        expect(wrongWith(word, property, given(ohm))).toBe("is too small");
      expect(wrongWith(word, property, given(-1))).toBe("is negative");
    },
  );

  it("names every amount that there is", () => {
    const other = new Set(amounts.map(([word, property]) => `${word}.${property}`));
    const all = words
      .filter((word) => word !== "circuit")
      .flatMap((word) =>
        [...wordProperties[word].properties].flatMap(([name, { schema }]) =>
          schema.safeParse(4).success ? [`${word}.${name}`] : [],
        ),
      );
    // Sizes and insulation ratings are one of a list; the settings of a build have tests with their reader.
    const listed =
      /\.(gauge|mm2|[a-zA-Z]*[lL]argest(Gauge|Mm2))$|^build\.(voltage|ambientC|criticalDropPercent|dropPercent)$/;
    expect(all.filter((name) => !listed.test(name) && !other.has(name))).toEqual([]);
  });

  it.each([
    ["busBar", "studs"],
    ["fusePanel", "positions"],
    ["solarArray", "series"],
    ["solarArray", "parallel"],
    ["cable", "parallel"],
    ["cable", "bundledWith"],
    ["build", "spareFuses"],
  ] as const)("%s.%s is a whole number", (word, property) => {
    expect(wrongWith(word, property, 2.5)).toBe("is not a whole number");
  });
});

describe("what is neither number nor text", () => {
  it.each<[Word, string, readonly unknown[], unknown, string]>([
    [
      "battery",
      "chemistry",
      ["LiFePO4", "AGM", "gel", "flooded lead-acid"],
      "lithium",
      "is not a chemistry in the tables",
    ],
    ["busBar", "side", ["positive", "negative"], "plus", "is neither side of the system"],
    ["dcDcCharger", "runs", ["with the engine", "always"], true, "is not a time at which it runs"],
    ["fusePanel", "negativeBus", [true, false], "no", "is neither true nor false"],
    ["dcDcCharger", "isolated", [true, false], 1, "is neither true nor false"],
    ["alternator", "selfLimiting", [true, false], null, "is neither true nor false"],
    ["solarController", "tracking", [true, false], "yes", "is neither true nor false"],
    ["load", "critical", [true, false], 0, "is neither true nor false"],
    ["motor", "continuous", [true, false], [], "is neither true nor false"],
    ["scenario", "engine", [true, false], "on", "is neither true nor false"],
    ["scenario", "shore", [true, false], {}, "is neither true nor false"],
    ["cable", "gauge", [18, "4/0"], 3, "is not one of the sizes"],
    ["cable", "mm2", [0.75, 150], 3, "is not one of the sizes"],
    ["cable", "insulationC", [60, 200], 100, "is not an insulation rating in the tables"],
    ["battery", "source", ["data sheet p. 3"], 3, "is not text"],
    ["battery", "name", ["House"], 3, "is not text"],
    [
      "battery",
      "termination",
      ["#6", "M8", "screw clamp", "6.3 mm tab"],
      "M7",
      "is not one of the terminations",
    ],
    ["fusePanel", "branchTermination", ["#8"], 8, "is not one of the terminations"],
    ["circuit", "termination", ["M4"], {}, "is not one of the terminations"],
    ["cable", "colour", ["red", "x".repeat(40)], "x".repeat(41), "is too long"],
    ["circuit", "returnColour", ["yellow"], "", "is empty"],
    ["circuit", "colour", ["violet with white dots"], ["red"], "is not text"],
    ["cable", "label", ["A 1", "x".repeat(40)], "x".repeat(41), "is too long"],
    ["build", "positiveColour", ["red"], 7, "is not text"],
    ["build", "negativeColour", ["yellow"], null, "is not text"],
    ["build", "currency", ["EUR", "x".repeat(10)], "x".repeat(11), "is too long"],
    ["build", "spools", [[], [{ gauge: 4, lengthFt: 100 }]], { gauge: 4, lengthFt: 100 }, "is not a list"],
    ["build", "spools", [], Array.from({ length: 201 }, () => 5), "is too long"],
    ["scenario", "name", ["Night"], true, "is not text"],
    ["part", "terminals", [["in"], ["in", "out"]], "in", "is not a list"],
    ["part", "terminals", [], [], "is empty"],
    ["part", "terminals", [], Array.from({ length: 101 }, (_, i) => `t${i}`), "is too long"],
    [
      "part",
      "joins",
      [[], [{ between: ["a", "b"] }], [{ between: ["a", "b"], milliohm: 0 }]],
      {},
      "is not a list",
    ],
    ["scenario", "off", [[], [{ kind: "load", id: 3 }]], "all", "is not a list"],
    ["circuit", "to", [{ kind: "inverter", id: 0, continuousW: 5 }], 4, "is not a part"],
    [
      "cable",
      "from",
      [{ kind: "terminal", part: 0, of: "battery", terminal: "positive" }],
      4,
      "is not a terminal of a part",
    ],
  ])("%s.%s", (word, property, allowed, refused, wrong) => {
    for (const value of allowed)
      expect(wrongWith(word, property, value), JSON.stringify(value)).toBeUndefined();
    expect(wrongWith(word, property, refused)).toBe(wrong);
  });

  it("tells each wrong element of a list by its place", () => {
    const input = {
      terminals: ["in", "", 4],
      joins: [
        { between: ["in"] },
        { between: ["in", "out"], milliohm: -1 },
        { between: ["in", "out"], ohm: 3 },
        5,
      ],
    };
    const { invalid } = readValues(input, wordProperties.part);
    expect(invalid.map(({ path, given, wrong }) => [path.join("."), given, wrong])).toEqual([
      ["terminals.1", '""', "is empty"],
      ["terminals.2", "4", "is not text"],
      ["joins.0.between", "a list", "is not a list of two terminals"],
      ["joins.1.milliohm", "-1", "is negative"],
      ["joins.2", "an object", "has a property that a join does not have"],
      ["joins.3", "5", "is not an object"],
    ]);
  });

  it("tells what is wrong with each spool, and keeps the others", () => {
    const spools = [
      { gauge: 10, lengthFt: 100, colour: "red", price: 58 },
      { gauge: 3, lengthFt: 100 },
      { gauge: 4, mm2: 25, lengthM: 10 },
      { mm2: 2.5 },
      { mm2: 4, lenghtM: 50 },
      { mm2: 6, lengthM: 0, price: "58" },
      { mm2: 10, lengthM: 25, color: "red" },
      { mm2: 16, lengthM: 25, colour: 5 },
      "2.5 mm²",
    ];
    const { values, invalid, unusable } = readValues({ spools }, wordProperties.build);
    expect(invalid.map(({ path, given, wrong }) => [path.join("."), given, wrong])).toEqual([
      ["spools.1.gauge", "3", "is not one of the sizes"],
      ["spools.2.mm2", "25", "cannot be given together with gauge"],
      ["spools.3", undefined, "a length is missing"],
      ["spools.4.lenghtM", undefined, "is not a property of a spool"],
      ["spools.5.lengthM", "0", "is zero"],
      ["spools.5.price", '"58"', "is text, not a number"],
      ["spools.6.color", undefined, "is not a property of a spool"],
      ["spools.7.colour", "5", "is not text"],
      ["spools.8", '"2.5 mm²"', "is not an object"],
    ]);
    expect(invalid.map(({ serves }) => serves)).toEqual(invalid.map(() => "lists"));
    expect(unusable.size).toBe(0);
    expect(values).toEqual({ spools: [spools[0], { mm2: 10, lengthM: 25 }, { mm2: 16, lengthM: 25 }] });
  });

  it("does not make two hundred findings of two hundred wrong spools", () => {
    const spools = Array.from({ length: 200 }, () => ({ gauge: 3, price: -1 }));
    const { values, invalid } = readValues({ spools }, wordProperties.build);
    expect([values, invalid.length]).toEqual([{ spools: [] }, 20]);
  });

  it("calls parts and terminals by their words", () => {
    const whole = { kind: "inverter", id: 2, continuousW: 500 };
    const one = { kind: "terminal", part: 2, of: "inverter", terminal: "positive" };
    const cable = readValues({ from: whole, to: { kind: "circuit", id: 1 } }, wordProperties.cable).invalid;
    expect(cable.slice(0, 2)).toMatchObject([
      { path: ["from"], given: "an inverter", wrong: "is the whole part, not one of its terminals" },
      { path: ["to"], given: "a circuit", wrong: "is not a terminal of a part" },
    ]);
    const { invalid } = readValues({ to: one }, wordProperties.circuit);
    expect(invalid).toContainEqual(
      expect.objectContaining({
        given: "the terminal positive of an inverter",
        wrong: "is one terminal, not the whole part",
      }),
    );
  });
});

describe("what must be given", () => {
  const missingFrom: Readonly<Record<string, readonly string[]>> = {
    // The first sample has the properties that the type of its input requires.
    ...Object.fromEntries(
      partWords.map((word) => [word, Object.keys(sampleParts[word][0]).map((name) => `${name} is missing`)]),
    ),
    load: ["its draw is missing"],
    cable: ["a size is missing", "from is missing", "to is missing"],
    scenario: ["name is missing"],
  };

  it.each(Object.entries(missingFrom) as [Word, readonly string[]][])("%s", (word, missing) => {
    expect(readValues({}, wordProperties[word]).invalid.map(({ wrong }) => wrong)).toEqual(missing);
  });

  it.each<[Word, Readonly<Record<string, unknown>>, string]>([
    ["load", { currentA: 4, powerW: 50 }, "powerW cannot be given together with currentA"],
    ["load", { powerW: 50, resistanceOhm: 3 }, "resistanceOhm cannot be given together with powerW"],
    ["scenario", { name: "x", on: [], off: [] }, "off cannot be given together with on"],
    [
      "scenario",
      { name: "x", bankV: 12, chargePercent: 50 },
      "chargePercent cannot be given together with bankV",
    ],
  ])("%s with two where one will do", (word, input, wrong) => {
    const { invalid } = readValues(input, wordProperties[word]);
    expect(invalid.map(({ path, wrong }) => `${path.join(".")} ${wrong}`)).toEqual([wrong]);
  });
});

describe("names that no property has", () => {
  it.each<[Word, string, string | undefined]>([
    ["battery", "capacityah", "capacityAh"],
    ["battery", "capacity", "capacityAh"],
    ["inverter", "surge", "surgeW"],
    ["solarArray", "openCircuitv", "openCircuitV"],
    ["cable", "fuse", "protect"],
    ["scenario", "engin", "engine"],
    ["shunt", "ratedMv", "ratedMV"],
    ["chassis", "ohm", undefined],
  ])("%s: %s", (word, name, nearest) => {
    const refused = readValues({ [name]: 5 }, wordProperties[word]).invalid.find(
      ({ path }) => path[0] === name,
    );
    expect(refused).toMatchObject({ wrong: `is not a property of ${word}` });
    expect(refused?.nearest).toBe(nearest);
  });

  it("a word's own marks are let through, also those of a word that is spread into another's argument", () => {
    for (const word of words) {
      const marked = readValues({ kind: word, id: 7 }, wordProperties[word]).invalid;
      expect(marked.filter(({ path }) => path.length > 0)).toEqual([]);
      const other = readValues({ id: 7 }, wordProperties[word]).invalid;
      expect(other).toContainEqual(expect.objectContaining({ path: ["id"] }));
    }
  });
});

/** The error in one property, regardless of missing ones; undefined if there is none. */
function wrongWith(word: Word, property: string, value: unknown): string | undefined {
  const { invalid } = readValues({ [property]: value }, wordProperties[word]);
  return invalid.find(({ path }) => path[0] === property)?.wrong;
}
