import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import ts from "typescript";
import { describe, expect, it } from "vitest";
import { descriptorOfWord, type PartWord } from "../../library/model/parts/index.ts";
import { protection } from "../../library/model/protection-properties.ts";
import { readModel } from "../../library/model/read-model.ts";
import { type Word, words } from "../../library/model/record.ts";
import { sampleParts } from "../../library/model/sample-parts.tester.ts";
import { isPartWord } from "../../library/model/terminals.ts";
import { wordProperties } from "../../library/model/word-properties.ts";
import { runExample } from "../../library/rules/page.tester.ts";
import { planCompiler } from "./compiler.ts";

/*
 * The doc comment of a property is its manual: the editor shows it on hover. These tests verify its promises, and run every
 * example in it.
 */

const planFolder = fileURLToPath(new URL("../../library/plan", import.meta.url));
const properties = readdirSync(planFolder).flatMap((file) => propertiesIn(file));
const compiler = planCompiler();

describe.each(properties)("$name ($holder)", ({ name, optional, manual, examples, holder }) => {
  it("says what is taken when it is left out, and shows an example that holds", () => {
    expect(manual.length).toBeGreaterThan(80);
    if (optional) expect(manual).toMatch(/Left out: taken (as|from) /);
    else expect(manual).toMatch(/needed|Give `/);
    expect(examples.length).toBeGreaterThan(0);
    for (const example of examples) {
      expect(example).toContain(`${name}: `);
      for (const plan of plansOf(holder, example)) {
        expect(messagesByPlan().get(plan)).toEqual([]);
        const { records, problems } = runExample(plan);
        expect(problems).toEqual([]);
        expect(readModel(records).invalid).toEqual([]);
      }
    }
  });
});

it("the compiler refuses an example that does not hold, beside those that do", () => {
  const [holds = ""] = messagesByPlan().keys();
  const wrong = holds.replace('chemistry: "LiFePO4"', 'chemistry: "straw"');
  const [first, second, third] = compiler.diagnosticsOfEach([holds, wrong, holds].map((plan) => head + plan));
  expect([first?.length, second?.length, third?.length]).toEqual([0, 1, 0]);
});

it.each(words)("covers every property of %s that the check knows", (word) => {
  const told = properties.filter(({ holder }) => wordsOf(holder).includes(word) && !nested.has(holder));
  const known = [...wordProperties[word].properties.keys()];
  expect([...new Set(told.map(({ name }) => name))].sort()).toEqual(known.sort());
});

it("covers every property of protection that the check knows", () => {
  const told = properties
    .filter(({ file, holder }) => file === "protection.ts" || holder === "DeviceInShort")
    .map(({ name }) => name);
  expect(told.sort()).toEqual([...(protection.parts?.properties.keys() ?? [])].sort());
});

it("covers every property of a spool that the check knows", () => {
  const told = properties.filter(({ file, holder }) => file === "spool.ts" || sizes.includes(holder));
  expect(told.map(({ name }) => name).sort()).toEqual([...(spool?.properties.keys() ?? [])].sort());
});

it.each([
  ["circuit({ name|: 'Lamp', load: 40, oneWayFt: 15, gauge: 4 });", "Name of the circuit"],
  ["circuit({ load|: 40, oneWayFt: 15, gauge: 4 });", "Current that the load draws, A"],
  ["circuit({ loadW|: 40, oneWayFt: 15, gauge: 4 });", "Power that the load draws, W"],
  [
    "circuit({ load: 40, oneWayFt|: 15, gauge: 4 });",
    "Length of the run from the source to the load, one way, in feet",
  ],
  [
    "circuit({ load: 40, oneWayM|: 15, mm2: 4 });",
    "Length of the run from the source to the load, one way, in metres",
  ],
  [
    "circuit({ load: 40, positiveFt|: 15, negativeFt: 3, gauge: 4 });",
    "Length of the positive conductor, in feet",
  ],
  [
    "circuit({ load: 40, positiveM: 15, negativeM|: 3, gauge: 4 });",
    "Length of the return (negative) conductor, in metres",
  ],
  ["circuit({ load: 40, oneWayFt: 15, gauge|: 4 });", "Size of the conductors, AWG"],
  ["circuit({ load: 40, oneWayFt: 15, mm2|: 4 });", "Cross-section of the conductors, mm²"],
  ["circuit({ load: 40, oneWayFt: 15, gauge: 4, protect|: 50 });", "The fuse or breaker that protects"],
  [
    "circuit({ load: 40, oneWayFt: 15, gauge: 4, protect: { ratingA|: 50 } });",
    "Rating of the fuse or breaker, A",
  ],
  [
    "circuit({ load: 40, oneWayFt: 15, gauge: 4, protect: { ratingA: 50, distanceMm|: 9 } });",
    "in millimetres",
  ],
  ["build({ voltage|: 24 });", "Nominal voltage of the system, V"],
  [
    "circuit({ from: panel.branch, to|: windlass, oneWayFt: 15, gauge: 4 });",
    "The part that the circuit feeds",
  ],
  [
    "circuit({ from|: panel.branch, load: 4, oneWayFt: 15, gauge: 4 });",
    "The terminal where its positive conductor",
  ],
  [
    "cable({ from|: house.positive, to: panel.feed, lengthFt: 4, gauge: 4 });",
    "The terminal where it begins",
  ],
  ["cable({ from: house.positive, to|: panel.feed, lengthM: 4, mm2: 4 });", "The terminal where it ends"],
  [
    "cable({ from: house.positive, to: panel.feed, lengthFt|: 4, gauge: 4 });",
    "Length of the conductor, in feet",
  ],
  [
    "cable({ from: house.positive, to: panel.feed, lengthM|: 4, gauge: 4 });",
    "Length of the conductor, in metres",
  ],
  [
    "cable({ from: house.positive, to: panel.feed, lengthM: 4, mm2|: 4 });",
    "Cross-section of the conductors, mm²",
  ],
  ['battery({ chemistry|: "AGM", capacityAh: 100 });', "The battery's chemistry"],
  ["load({ powerW|: 40 });", "Power that the load draws at any voltage"],
  ["motor({ runningA: 4, startingA|: 40 });", "Current that it draws while it starts"],
  ['scenario({ name: "Night", off|: [fridge] });', "Parts that are off"],
  ['scenario({ name: "Night", bankV|: 12 });', "Voltage of the bank at rest"],
  ['part({ terminals|: ["in"] });', "The names of its terminals"],
  ["build({ endSlackMm|: 50 });", "in millimetres"],
  ["build({ endSlackIn|: 2 });", "in inches"],
  [
    "build({ endSlackIn: 2, spools: [{ gauge: 4, lengthFt|: 100 }] });",
    "Length of the conductor on it, in feet",
  ],
  ["build({ spools: [{ mm2: 4, lengthM|: 100 }] });", "Length of the conductor on it, in metres"],
  ['build({ spools: [{ mm2|: 4, lengthM: 100, colour: "red" }] });', "Cross-section of the conductors, mm²"],
  ['busBar({ termination|: "M8" });', "How conductors are fastened to its terminals"],
])("is what the editor shows: %s", (plan, start) => {
  const shown = compiler.hover(`${head}${parts}${plan}`);
  expect(shown).toContain(start);
  // One manual, not also that of an alternative.
  expect(shown.match(/Example:/g)).toHaveLength(1);
});

it("quotes the same limits as the check", () => {
  let compared = 0;
  for (const { name, manual, file, holder } of properties) {
    for (const word of wordsOf(holder)) {
      const table = tablesByFile.get(file) ?? wordProperties[word];
      // The resistance of a join is explained with the list of joins.
      const told = holder === "JoinInput" && name === "milliohm" ? "joins" : name;
      const allowed = (name !== "joins" && table?.properties.get(told)?.allowed) || "";
      const limits = /(?:above (?<above>\S+) and up to|from (?<from>\S+) to) (?<upTo>[\d,.]+)/.exec(
        allowed,
      )?.groups;
      // Limits that depend on another value are stated in words, and the far end is written like the near one.
      if (!limits || name === "minimumV" || name === "protectFarEnd") continue;
      const lowest = limits.above ?? limits.from ?? "";
      const stated = new RegExp(
        `(above|from|number,|\\.) ?${lowest}( and|,)? (up )?to ${limits.upTo}(?![\\d,]*\\d)`,
        "i",
      );
      expect(manual, `${name}: ${allowed}`).toMatch(stated);
      compared++;
    }
  }
  expect(compared).toBeGreaterThan(90);
});

const spool = wordProperties.build.properties.get("spools")?.elements?.table;
const tablesByFile = new Map([
  ["protection.ts", protection.parts],
  ["spool.ts", spool],
]);

interface ManualEntry {
  readonly file: string;
  /** The interface that contains it. */
  readonly holder: string;
  readonly name: string;
  readonly optional: boolean;
  readonly manual: string;
  readonly examples: readonly string[];
}

/**
 * Every property that a builder may give. The forbidden alternatives have no manual, because they are never written, and the
 * returned objects have another one.
 */
function propertiesIn(file: string): ManualEntry[] {
  const text = readFileSync(`${planFolder}/${file}`, "utf8");
  const source = ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true);
  return source.statements.filter(ts.isInterfaceDeclaration).flatMap(({ name: holder, members }) => {
    if (
      /^Planned|^BuildSettings$|^PartWithPoles$|^LengthLeftOut$|Terminal$|^Battery(Positive|Negative)$/.test(
        holder.text,
      )
    )
      return [];
    return members.filter(ts.isPropertySignature).flatMap((property) => {
      const name = property.name.getText();
      const type = property.type?.getText() ?? "";
      if (/^GiveOnlyOneOf|^OneLength$/.test(type)) return [];
      const manual = ts
        .getJSDocCommentsAndTags(property)
        .map((doc) => ts.getTextOfJSDocComment(doc.comment) ?? "")
        .join("\n");
      const afterWord = /Example: ([\s\S]*)$/.exec(manual)?.[1] ?? "";
      const examples = [...afterWord.matchAll(/`([^`]+)`/g)].map(([, example = ""]) => example);
      const optional = property.questionToken !== undefined;
      return [{ file, holder: holder.text, name, optional, manual, examples }];
    });
  });
}

/** The names that the examples use besides their own. */
const head = `import { ${words.join(", ")} } from "loomwright";\n`;
const parts = `const house = battery({ chemistry: "LiFePO4", capacityAh: 200 });
const panel = fusePanel({ positions: 12 });
const negativeBus = busBar({ side: "negative" });
const windlass = motor({ runningA: 40, startingA: 120 });
const selector = selectorSwitch({ ratedA: 250 });
const fridge = circuit({ from: panel.branch, load: 4, oneWayFt: 15, gauge: 12 });
const board = surface({ size: { widthMm: 1_200, heightMm: 800 } });
const floor = surface({ size: { widthMm: 1_200, heightMm: 800 }, orientation: "floor" });
const locker = compartment({});
const mastConduit = channel({ from: { on: board, leftMm: 10, topMm: 10 }, lengthM: 8 });
`;

/** An example in a plan of its own, for each function that it applies to. */
function plansOf(holder: string, example: string): readonly string[] {
  // Its example names a terminal that not every part has.
  const words = example.startsWith("terminalsAt: { positive")
    ? wordsOf(holder).filter((word) => isPartWord(word) && "positive" in descriptorOfWord(word).terminals)
    : wordsOf(holder);
  return words.map((word) => `${parts}${word}(${argumentOf(word, holder, example)});\n`);
}

let compiled: ReadonlyMap<string, readonly unknown[]> | undefined;

/** The compiler's messages about the plan of each example; all examples are compiled together. */
function messagesByPlan(): ReadonlyMap<string, readonly unknown[]> {
  if (!compiled) {
    const plans = properties.flatMap(({ holder, examples }) =>
      examples.flatMap((example) => plansOf(holder, example)),
    );
    const found = compiler.diagnosticsOfEach(plans.map((plan) => head + plan));
    compiled = new Map(
      plans.map((plan, index) => [plan, found[index]!.map(({ messageText }) => messageText)]),
    );
  }
  return compiled;
}

const rectangle = "leftMm: 1, topMm: 2, widthMm: 3, heightMm: 4";

/** Objects with places and sizes: the function that an example is tried in, and the text around it. */
const placedWithin = new Map<string, readonly [word: Word, around: (example: string) => string]>([
  ["PointInMillimetres", ["channel", (one) => `on: board, path: [{ leftMm: 0, topMm: 0 }, ${inPair(one)}]`]],
  ["PointInInches", ["channel", (one) => `on: board, path: [{ leftIn: 0, topIn: 0 }, ${inPair(one)}]`]],
  ["FlatSizeInMillimetres", ["surface", (one) => `size: ${inPair(one)}`]],
  ["FlatSizeInInches", ["surface", (one) => `size: ${inPair(one)}`]],
  ["DepthInMillimetres", ["busBar", (one) => `size: { widthMm: 1, heightMm: 2, ${one} }`]],
  ["DepthInInches", ["busBar", (one) => `size: { widthIn: 1, heightIn: 2, ${one} }`]],
  [
    "OnSurface",
    ["busBar", (one) => `at: { ${one.startsWith("on:") ? "" : "on: board, "}leftMm: 1, topMm: 2, ${one} }`],
  ],
  ["EndOfChannel", ["busBar", (one) => `at: { ${one} }`]],
  ["EndInMetres", ["busBar", (one) => `at: { endOf: mastConduit, ${one} }`]],
  ["EndInFeet", ["busBar", (one) => `at: { endOf: mastConduit, ${one} }`]],
  ["AirInMillimetres", ["busBar", (one) => `air: { ${one} }`]],
  ["AirInInches", ["busBar", (one) => `air: { ${one} }`]],
  ["LeavesTowards", ["busBar", (one) => `terminalsAt: { stud: { leftMm: 1, topMm: 2, ${one} } }`]],
  ["NamedThing", ["surface", (one) => `keepFree: [{ ${rectangle}, ${one} }]`]],
  [
    "FixtureKind",
    [
      "surface",
      (one) =>
        `fixtures: [{ ${rectangle}, ${one.startsWith("fixture") ? "" : 'fixture: "compass", '}${one} }]`,
    ],
  ],
  [
    "WallInput",
    [
      "compartment",
      (one) => `walls: [{ ${one.startsWith("areaM2") ? 'material: "plastic"' : "areaM2: 1"}, ${one} }]`,
    ],
  ],
  ["OnSurfaceOfEnd", ["channel", (one) => `from: { ${one}, leftMm: 1, topMm: 2 }, lengthM: 2`]],
  ["RectangleInMm", ["channel", (one) => `inside: ${inPair(one)}`]],
  ["RectangleInInches", ["channel", (one) => `inside: ${inPair(one)}`]],
  ["RoundInMm", ["channel", (one) => `inside: { ${one} }`]],
  ["RoundInInches", ["channel", (one) => `inside: { ${one} }`]],
]);

/** The other one of two lengths that belong together. */
function inPair(example: string): string {
  const others: Readonly<Record<string, string>> = {
    left: "top",
    top: "left",
    width: "height",
    height: "width",
  };
  const [, name = "", unit = ""] = /^([a-z]+)(Mm|In)/.exec(example) ?? [];
  return `{ ${others[name]}${unit}: 5, ${example} }`;
}

/** Objects within an argument. */
const ofSpool = ["SpoolOptions", "SpoolInFeet", "SpoolInMetres"];
const nested = new Set([
  "BatteryCharge",
  "JoinInput",
  "OpeningTimeInput",
  "TestedBehindInput",
  "ProtectionDetails",
  "DistanceInInches",
  "DistanceInMillimetres",
  ...ofSpool,
  "HoursOfUse",
  "Use",
  "Occasion",
  "AcDevice",
  ...placedWithin.keys(),
]);
const sizes = ["Gauge", "MetricSize"];

/** The functions whose argument contains an interface's properties. */
function wordsOf(holder: string): readonly Word[] {
  const word = wordsByHolder[holder];
  if (!word) throw new Error(`the test does not know where ${holder} belongs`);
  return word;
}

const partWords = words.filter(isPartWord);

const wordsByHolder: Readonly<Record<string, readonly Word[]>> = {
  ...Object.fromEntries(
    words.map((word) => [`${word[0]?.toUpperCase()}${word.slice(1)}Input`, [word]] as const),
  ),
  OtherPartInput: ["part"],
  BuildOptions: ["build"],
  EndSlackInInches: ["build"],
  EndSlackInMillimetres: ["build"],
  ...Object.fromEntries(ofSpool.map((holder) => [holder, ["build"]] as const)),
  JoinInput: ["part"],
  PartOptions: partWords,
  DevicePartOptions: ["fuseHolder", "breaker"],
  DeviceInShort: ["fuseHolder", "breaker"],
  OpeningTimeInput: ["fuseHolder", "breaker"],
  TestedBehindInput: ["fusePanel", "fuseHolder", "breaker"],
  ContactsForSeconds: ["disconnect", "relay", "selectorSwitch"],
  TerminalRating: ["busBar", "fusePanel", "disconnect", "relay", "selectorSwitch", "fuseHolder", "breaker"],
  LoadOptions: ["load", "motor"],
  PermittedFuse: ["inverter", "shoreCharger", "dcDcCharger", "solarController", "load", "motor"],
  ConstantCurrent: ["load"],
  ConstantPower: ["load"],
  ConstantResistance: ["load"],
  RunOptions: ["circuit", "cable"],
  CircuitOptions: ["circuit"],
  LoadInAmperes: ["circuit"],
  LoadInWatts: ["circuit"],
  LoadIsPart: ["circuit"],
  OneWayInFeet: ["circuit"],
  OneWayInMetres: ["circuit"],
  EachConductorInFeet: ["circuit"],
  EachConductorInMetres: ["circuit"],
  Gauge: ["circuit", "cable"],
  MetricSize: ["circuit", "cable"],
  ProtectionDetails: ["circuit", "cable"],
  DistanceInInches: ["circuit", "cable"],
  DistanceInMillimetres: ["circuit", "cable"],
  CableEnds: ["cable"],
  CableOptions: ["cable"],
  LengthInFeet: ["cable"],
  LengthInMetres: ["cable"],
  ScenarioOptions: ["scenario"],
  ListOfOn: ["scenario"],
  ListOfOff: ["scenario"],
  BankCharge: ["scenario"],
  BatteryCharge: ["scenario"],
  BankVoltage: ["scenario"],
  NamedPlace: ["period"],
  PlaceByDegrees: ["period"],
  ByMonths: ["period"],
  ByDays: ["period"],
  PeriodOptions: ["period"],
  Occasion: ["period"],
  HoursOfUse: ["load", "motor", "inverter", "circuit", "period"],
  Use: ["load", "motor", "circuit"],
  AcDevice: ["inverter"],
  ChannelOptions: ["channel"],
  AlongSurface: ["channel"],
  Between: ["channel"],
  BetweenInMetres: ["channel"],
  BetweenInFeet: ["channel"],
  ...Object.fromEntries([...placedWithin].map(([holder, [word]]) => [holder, [word]] as const)),
};

/** The other requirements of a function for an example: each is added, unless the example has it or its alternative. */
const needs: Readonly<Record<Exclude<Word, PartWord>, readonly Need[]>> = {
  build: [],
  circuit: [
    ["load: 40", /\b(load(W)?|to):/],
    ["oneWayFt: 15", /\b(oneWay|positive|negative)(Ft|M):/],
    ["gauge: 4", /\b(gauge|mm2):/],
  ],
  cable: [
    ["from: house.positive"],
    ["to: panel.feed"],
    ["lengthFt: 4", /\blengthM:/],
    ["gauge: 4", /\bmm2:/],
  ],
  scenario: [['name: "Night"']],
  period: [['name: "Summer"'], ['place: "Tarifa, ES"', /latitudeDeg: .*longitudeDeg:/]],
  surface: [["size: { widthMm: 1_200, heightMm: 800 }"]],
  channel: [
    ["from: { on: board, leftMm: 0, topMm: 0 }", /\bpath:/],
    ["lengthM: 2", /\b(path|lengthFt):/],
  ],
  compartment: [],
};

/** The required properties of a part. The draw of a load may be given in another way. */
function needsOf(word: PartWord): readonly Need[] {
  return Object.entries(sampleParts[word][0]).map(([property, value]): Need => {
    const text = `${property}: ${JSON.stringify(value)}`;
    return word === "load" ? [text, /\b(powerW|resistanceOhm):/] : [text];
  });
}

type Need = readonly [property: string, or?: RegExp];

/** An example is one property, or several that belong together; the other requirements of the function are added. */
function argumentOf(word: Word, holder: string, example: string): string {
  const given = within(word, holder, example);
  // A property of an object within is none of the function's own.
  const outer = given.replaceAll(/\{[^{}]*\}/g, "");
  const rest = (isPartWord(word) ? needsOf(word) : needs[word]).flatMap(([property, or]) => {
    const own = new RegExp(`\\b${property.slice(0, property.indexOf(":"))}:`);
    return own.test(outer) || or?.test(outer) ? [] : [property];
  });
  // Only a circuit with a start ends at a part.
  const starts =
    word === "circuit" && /^(to|returnTo|purpose|use|at|size|through|fromStud|toStud|outsideMm):/.test(given)
      ? ["from: panel.branch"]
      : [];
  return `{ ${[...rest, ...starts, given].join(", ")} }`;
}

function within(word: Word, holder: string, example: string): string {
  if (!nested.has(holder)) return example;
  const placed = placedWithin.get(holder);
  if (placed) return placed[1](example);
  if (holder === "Occasion") return `driving: { ${example} }`;
  if (holder === "HoursOfUse") return word === "period" ? `driving: { ${example} }` : `use: { ${example} }`;
  if (holder === "Use") return `use: { ${example} }`;
  if (holder === "AcDevice") {
    const others = ['name: "Laptop"', "powerW: 60", "use: { hoursPerDay: 3 }"];
    return `devices: [{ ${[...others.filter((needed) => needed !== example), example].join(", ")} }]`;
  }
  if (holder === "JoinInput")
    return `joins: [{ ${example.startsWith("between") ? "" : 'between: ["in", "out"], '}${example} }]`;
  if (holder === "OpeningTimeInput") {
    const others = ["atPercent: 200", "withinS: 60"].filter((needed) => needed !== example);
    return `openingTimes: [{ ${[...others, example].join(", ")} }]`;
  }
  if (holder === "BatteryCharge")
    return `charges: [{ ${example.startsWith("battery") ? "percent: 90" : "battery: house"}, ${example} }]`;
  if (holder === "TestedBehindInput") {
    const others = ['family: "UL 248-15 Class T"', "ratingA: 200", "interruptingA: 10_000"];
    return `testedBehind: { ${[...others.filter((needed) => needed !== example), example].join(", ")} }`;
  }
  if (ofSpool.includes(holder))
    return `spools: [{ gauge: 4, ${example.startsWith("length") ? "" : "lengthFt: 100, "}${example} }]`;
  return `protect: { ${example.startsWith("ratingA") ? "" : "ratingA: 50, "}${example} }`;
}
