import { beforeAll, describe, expect, it, test } from "vitest";
import { isMadeRating } from "../../library/analysis/made-ratings.ts";
import { judge } from "../../library/judge.ts";
import { fuseFamilies } from "../../library/model/allowed-values.ts";
import { protection } from "../../library/model/protection-properties.ts";
import type { Word } from "../../library/model/record.ts";
import { wordProperties } from "../../library/model/word-properties.ts";
import { runExample } from "../../library/rules/page.tester.ts";
import { sampled } from "../setup/sampled.ts";

/**
 * To state the truth is never worse than to leave it out: a property of a device or battery that is in order adds no finding, and
 * makes none more severe. Each kind is tried in a plan around it, with values as they are on the labels of things that suit it.
 */

/** By property: values that are in order; or the reason why the property says nothing about the thing. */
type Truths = Readonly<Record<string, readonly string[] | string>>;

const notAboutIt: Truths = {
  name: "a name",
  accept: "a reason",
  on: "a place",
  source: ['"data sheet"'],
  price: ["12.5"],
  termination: ['"M8"'],
  torqueNm: ["9"],
  largestGauge: ['"2/0"', "4"],
  largestMm2: ["70"],
  at: "a place",
  terminalsAt: "the places of its own terminals",
  size: ["{ widthMm: 100, heightMm: 50 }"],
  air: ["{ topMm: 10 }"],
  mountingPositions: ['["upright"]'],
  heatW: ["5"],
  keepCool: ["true"],
  massKg: ["1.5"],
  terminalsCovered: ["true"],
};

const inAShort: Truths = {
  interruptingA: ["10_000"],
  interruptingAtV: ["32, interruptingA: 10_000", "58, interruptingA: 10_000"],
  ratedV: ["32", "58", "125"],
  terminalC: ["75", "90", "105"],
  ambientC: ["20", "30", "45"],
  letThroughA2s: ["500"],
  withstandA2s: ["500"],
  testedBehind: ['{ family: "UL 248-15 Class T", ratingA: 110, interruptingA: 10_000 }'],
};
const ofDevice: Truths = { ...inAShort, milliohm: ["0", "0.5"], continuous: ["true", "false"] };
const openingTimes = ["[{ atPercent: 135, afterS: 1, withinS: 1800 }, { atPercent: 600, withinS: 0.02 }]"];

/**
 * A fuse of 20 A behind a bus bar or at the battery. Its family is the one that it is bought in: any that is made in this rating,
 * whether it interrupts the short there or not. A breaker is another device, whose marking is looked for.
 */
const familiesOf20A = fuseFamilies.filter(
  (family) => family !== "circuit breaker" && isMadeRating(20, family),
);
const families = familiesOf20A.map((family) => JSON.stringify(family));
const inProtect: Truths = {
  ...notAboutIt,
  ...inAShort,
  ratingA: "always stated",
  family: families,
  distanceIn: ["5"],
  distanceMm: ["120"],
  holderRatedA: ["20", "30"],
  openingTimes,
};

const ofBattery: Truths = {
  ...notAboutIt,
  chemistry: "always stated",
  capacityAh: "always stated",
  nominalV: ["12"],
  internalMilliohm: ["2", "4", "6"],
  shortCircuitA: ["2_200", "4_000"],
  maxDischargeA: ["120", "300"],
  maxChargeA: ["20", "40"],
  lowestC: ["5"],
  chargeCutOffC: ["0", "5"],
  reservePercent: ["20", "50"],
  minimumChargePercent: ["0", "10"],
  stateOfHealthPercent: ["80", "100"],
  standbyW: ["0.24", "5"],
};

const contacts: Truths = { ...notAboutIt, ratedA: ["150", "300"], terminalC: ["75", "90", "105"] };
const ofBusBar: Truths = { ...contacts, side: ['"positive"'], studs: ["6", "12"] };
const ofPanel: Truths = {
  ...contacts,
  positions: "always stated",
  branchRatedA: ["20", "30"],
  negativeBus: ["true"],
  branchFamily: ['"ISO 8820-3 Type C"'],
  testedBehind: inAShort.testedBehind!,
  branchTermination: ['"M6"'],
  branchTorqueNm: ["4"],
  branchLargestGauge: ["8", "4"],
  branchLargestMm2: ["25"],
};

interface Bank {
  readonly battery?: string;
  readonly branch?: string;
  readonly inBranch?: string;
}

/** A main fuse, a switch, a bus bar with a lamp and a pump, and a charger, in order with every rule. */
function plan({ battery = "", branch = "protect: { ratingA: 20 }", inBranch = "" }: Bank): string {
  return `
    build({ insulationC: 105 });
    const classT = { family: "UL 248-15 Class T", interruptingA: 20_000, ratedV: 125, distanceIn: 5 };
    const bank = battery({ name: "bank", capacityAh: 100, ${battery || 'chemistry: "AGM"'} });
    const off = disconnect({ name: "switch", ratedA: 150 });
    const plus = busBar({ name: "plus", side: "positive", ratedA: 150, studs: 6 });
    cable({ name: "feed", from: bank.positive, to: off.line, lengthFt: 2, gauge: 4, protect: { ...classT, ratingA: 110 } });
    cable({ name: "to bus", from: off.load, to: plus.stud, lengthFt: 1, gauge: 4 });
    const run = { from: plus.stud, returnTo: bank.negative, oneWayFt: 6, gauge: 8 };
    circuit({ ...run, name: "lamp", load: 10, ${branch} });
    ${inBranch}
    const shore = shoreCharger({ name: "shore", outputA: 15 });
    cable({ name: "shore plus", from: shore.positive, to: plus.stud, lengthFt: 3, gauge: 8, protectFarEnd: { ...classT, ratingA: 40 } });
    cable({ name: "shore minus", from: shore.negative, to: bank.negative, lengthFt: 3, gauge: 8 });`;
}

const weak = 'chemistry: "AGM", shortCircuitA: 900';
const strong = 'chemistry: "LiFePO4", internalMilliohm: 3';

interface Kind {
  readonly name: string;
  readonly properties: readonly string[];
  readonly truths: Truths;
  /** The plan with further properties of the thing. */
  readonly planWith: (more: string) => string;
}

const namesIn = (word: Word) => [...wordProperties[word].properties.keys()];
const inProtection = [...protection.parts!.properties.keys()];

const kinds: readonly Kind[] = [
  ...[weak, strong].map((battery) => ({
    name: `a fuse at a bus bar, on a battery of ${battery}`,
    properties: inProtection,
    truths: inProtect,
    planWith: (more: string) => plan({ battery, branch: `protect: { ratingA: 20, ${more} }` }),
  })),
  {
    name: "a fuse of a circuit without a network",
    properties: inProtection,
    truths: inProtect,
    planWith: (more) =>
      `circuit({ name: "lamp", load: 10, oneWayFt: 6, gauge: 8, insulationC: 105, protect: { ratingA: 20, ${more} } });`,
  },
  ...[weak, strong].map((battery) => ({
    name: `a fuse at the battery, of ${battery}`,
    properties: inProtection,
    truths: inProtect,
    planWith: (more: string) =>
      plan({
        battery,
        inBranch: `circuit({ name: "alarm bell", from: bank.positive, load: 10, oneWayFt: 6, gauge: 8,
          accept: { "disconnect/missing": "it stays on" }, protect: { ratingA: 20, ${more} } });`,
      }),
  })),
  ...[weak, strong].flatMap((battery) =>
    (["fuseHolder", "breaker"] as const).map((word) => ({
      name: `a ${word} on a bus bar, on a battery of ${battery}`,
      properties: namesIn(word),
      truths: {
        ...notAboutIt,
        ...ofDevice,
        ratingA: "always stated",
        openingTimes,
        ...(word === "fuseHolder" ? { family: families, holderRatedA: ["20", "30"] } : {}),
      },
      planWith: (more: string) =>
        plan({
          battery,
          inBranch: `
            const own = ${word}({ name: "own", ratingA: 20, on: plus.stud, ${more} });
            circuit({ name: "pump", from: own.load, returnTo: bank.negative, load: 10, oneWayFt: 6, gauge: 8 });`,
        }),
    })),
  ),
  {
    name: "a disconnect",
    properties: namesIn("disconnect"),
    truths: { ...contacts, ratedA: "always stated", momentaryA: ["100", "300"] },
    planWith: (more) =>
      plan({
        inBranch: `
          const own = disconnect({ name: "own", ratedA: 50, ${more} });
          cable({ name: "to own", from: plus.stud, to: own.line, lengthFt: 1, gauge: 8, protect: { ...classT, ratingA: 40 } });
          circuit({ name: "pump", from: own.load, returnTo: bank.negative, load: 10, oneWayFt: 6, gauge: 8 });`,
      }),
  },
  {
    name: "a bus bar",
    properties: namesIn("busBar"),
    truths: ofBusBar,
    planWith: (more) =>
      plan({
        inBranch: `
          const own = busBar({ name: "own", ${more} });
          cable({ name: "to own", from: plus.stud, to: own.stud, lengthFt: 1, gauge: 8, protect: { ...classT, ratingA: 40 } });
          circuit({ name: "pump", from: own.stud, returnTo: bank.negative, load: 10, oneWayFt: 6, gauge: 8 });`,
      }),
  },
  ...[weak, strong].map((battery) => ({
    name: `a fuse panel, on a battery of ${battery}`,
    properties: namesIn("fusePanel"),
    truths: ofPanel,
    planWith: (more: string) =>
      plan({
        battery,
        inBranch: `
          const own = fusePanel({ name: "own", positions: 6, ${more} });
          circuit({ name: "panel feed", from: plus.stud, returnTo: bank.negative, to: own, oneWayFt: 2, gauge: 4, protect: { ...classT, ratingA: 100 } });
          circuit({ name: "pump", from: own.branch, load: 10, oneWayFt: 6, gauge: 8, protect: { ratingA: 15, family: "ISO 8820-3 Type C" } });`,
      }),
  })),
  ...[
    { word: "load", made: "load({ currentA: 5, minimumV: 5,", maximum: "maximumV" },
    { word: "motor", made: "motor({ runningA: 4, startingA: 9, minimumV: 5,", maximum: "maximumV" },
    { word: "inverter", made: "inverter({ continuousW: 60, cutOffV: 9,", maximum: "maximumV" },
    {
      word: "dcDcCharger",
      made: "dcDcCharger({ outputA: 4, outputV: 13, inputMinV: 9,",
      maximum: "inputMaxV",
    },
  ].map(({ word, made, maximum }) => ({
    name: `the greatest voltage of a device: ${word}`,
    properties: [maximum],
    truths: { [maximum]: ["14.4", "15", "32"] },
    planWith: (more: string) =>
      plan({
        inBranch: `
          const own = ${made} name: "own", ${more} });
          circuit({ ...run, name: "wires of own", to: own, protect: { ratingA: 15 } });`,
      }),
  })),
  ...["AGM", "gel", "flooded lead-acid", "LiFePO4"].map((chemistry) => ({
    name: `a battery of ${chemistry}`,
    properties: namesIn("battery"),
    truths: ofBattery,
    planWith: (more: string) => plan({ battery: `chemistry: "${chemistry}", ${more}` }),
  })),
];

describe.each(kinds)("$name", ({ properties, truths, planWith }) => {
  it("has values for each property", () => {
    expect(Object.keys(truths).sort()).toEqual(expect.arrayContaining([...properties].sort()));
  });

  const cases = properties.flatMap((property) => {
    const values = truths[property];
    return Array.isArray(values) ? values.map((value: string) => [property, value] as const) : [];
  });

  let without: ReadonlyMap<string, number>;
  beforeAll(() => {
    without = worstOf(planWith(""));
  });

  test.each(sampled("true values of a property", cases))("%s: %s", (property, value) => {
    const stated = worstOf(planWith(`${property}: ${value}`));
    const worse = [...stated].filter(([finding, severity]) => severity > (without.get(finding) ?? 0));
    expect(worse).toEqual([]);
  });
});

const ranks = { hint: 0, info: 1, warning: 2, error: 3 };

/** By rule and subject: the severity of the worst finding. */
function worstOf(text: string): ReadonlyMap<string, number> {
  const { records, problems } = runExample(text);
  expect(problems).toEqual([]);
  const worst = new Map<string, number>();
  for (const { rule, subject, severity, accepted } of judge(records, problems).findings) {
    expect(rule).not.toBe("plan/invalid-value");
    const key = `${rule} at ${subject}`;
    if (accepted === undefined) worst.set(key, Math.max(worst.get(key) ?? 0, ranks[severity]));
  }
  return worst;
}
