import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { sampledRuns } from "../../../tests/setup/sampled.ts";
import { analyseCircuit } from "../../analysis/analyse-circuit.ts";
import { madeRatings } from "../../analysis/made-ratings.ts";
import { sizesFrom } from "../../analysis/made-sizes.ts";
import { sampleCircuit } from "../../analysis/sample-circuit.tester.ts";
import { thinnestSufficient } from "../../analysis/sizing.ts";
import { defaultBench } from "../../model/bench-settings.ts";
import { testRule } from "../rule.tester.ts";
import { unitSuspect } from "./unit-suspect.ts";

const metric = { oneWayFt: undefined, gauge: undefined, mm2: 10 };
const tenA = { load: 10, gauge: 10, protect: 15 };

testRule(unitSuspect, [
  // Lengths. 6 AWG, 10 A of 95 A: it is at 30 + 45 · (10/95)² = 30.5 °C, 1.3765 mΩ/m; over 2 · 180 ft 1.5104 V are lost, 12.59 %
  // of 12 V, twice 6.293 %.
  {
    name: "a long run that is sized for it: 55 m to a solar panel",
    circuits: [{ load: 10, oneWayFt: 180, gauge: "1/0", protect: 15 }],
    finds: "nothing",
  },
  {
    name: "a long run that loses twice what it may, and no more",
    circuits: [{ load: 10, oneWayFt: 180, gauge: 6, protect: 15, dropLimitPercent: 6.3 }],
    finds: "nothing",
  },
  {
    name: "a long run that loses just more than twice what it may",
    circuits: [{ load: 10, oneWayFt: 180, gauge: 6, protect: 15, dropLimitPercent: 6.29 }],
    finds: [
      {
        on: "oneWayFt",
        message: "oneWayFt: 180 ft would lose",
        fixes: [{ title: "Read the number as inches", kind: "suggestion", gives: { oneWayFt: 15 } }],
      },
    ],
  },
  {
    name: "a run of 30 m is not doubted, whatever it loses",
    circuits: [{ ...metric, oneWayM: 30, load: 30, mm2: 6 }],
    finds: "nothing",
  },
  {
    name: "inches in a property of feet",
    circuits: [{ oneWayFt: 180 }],
    finds: [
      {
        subject: "Heater",
        on: "oneWayFt",
        severity: "warning",
        message: "oneWayFt: 180 ft would lose 32.2 %; 180 in would be 15 ft. Is the unit right?",
        fixes: [{ title: "Read the number as inches", kind: "suggestion", gives: { oneWayFt: 15 } }],
      },
    ],
  },
  {
    name: "centimetres in a property of metres",
    circuits: [{ ...metric, oneWayM: 250, load: 30 }],
    finds: [
      {
        on: "oneWayM",
        message: "oneWayM: 250 m would lose",
        fixes: [{ title: "Read the number as centimetres", kind: "suggestion", gives: { oneWayM: 2.5 } }],
      },
    ],
  },
  {
    name: "millimetres in a property of metres, more than any length may be",
    circuits: [{ ...metric, oneWayM: 4500 }],
    finds: [
      {
        on: "oneWayM",
        message: "oneWayM: 4,500 m is far beyond a small build; 4,500 mm would be 4.5 m. Is the unit right?",
        fixes: [{ title: "Read the number as millimetres", kind: "suggestion", gives: { oneWayM: 4.5 } }],
      },
    ],
  },
  {
    name: "millimetres in a property of feet",
    circuits: [{ oneWayFt: 4500 }],
    finds: [
      {
        on: "oneWayFt",
        message:
          "oneWayFt: 4,500 ft is far beyond a small build; 4,500 mm would be 4.5 m. Is the unit right?",
        fixes: [
          {
            title: "Read the number as millimetres",
            kind: "suggestion",
            gives: { oneWayFt: undefined, oneWayM: 4.5 },
          },
        ],
      },
    ],
  },
  {
    name: "both lengths of a pair",
    circuits: [{ ...metric, positiveM: 250, negativeM: 150, load: 30 }],
    finds: [
      {
        on: "positiveM",
        message: "positiveM: 250 m would lose",
        fixes: [
          {
            title: "Read the number as centimetres",
            kind: "suggestion",
            gives: { positiveM: 2.5, negativeM: 1.5 },
          },
        ],
      },
    ],
  },
  {
    name: "a length that no unit makes sense of",
    circuits: [{ ...metric, oneWayM: 1e9 }],
    finds: "nothing",
  },
  // Loads in amperes
  {
    name: "a load at three times what conductor and fuse are for",
    circuits: [{ load: 375, oneWayFt: 5 }],
    finds: "nothing",
  },
  {
    name: "a load just above three times what conductor and fuse are for",
    circuits: [{ load: 376, oneWayFt: 5 }],
    finds: [
      {
        on: "load",
        severity: "warning",
        message:
          "load: 376 A is 3.01 times the current that the circuit is made for; 376 W (loadW) would be 31.3 A. Is the unit right?",
        fixes: [
          { title: "Read the number as watts", kind: "suggestion", gives: { load: undefined, loadW: 376 } },
        ],
      },
    ],
  },
  {
    name: "an inverter's watts, more than any load may be",
    circuits: [{ load: 2400, gauge: "2/0", protect: 250 }],
    finds: [
      {
        on: "load",
        message: "load: 2,400 A is far beyond a small build; watts are written loadW. Is the unit right?",
        fixes: [{ title: "Read the number as watts", kind: "suggestion", gives: { loadW: 2400 } }],
      },
    ],
  },
  {
    name: "watts that the conductor would not carry either are just too large a load",
    circuits: [{ load: 900, gauge: 10, protect: 40, oneWayFt: 5, insulationC: 75, voltage: 1 }],
    finds: [
      {
        on: "load",
        message: "load: 900 A is 22.5 times the current that the circuit is made for; 900 mA would be 0.9 A.",
        fixes: [{ title: "Read the number as milliamperes", kind: "suggestion", gives: { load: 0.9 } }],
      },
    ],
  },
  {
    name: "milliamperes of a lamp",
    circuits: [{ load: 350, gauge: 16, protect: 3 }],
    finds: [
      {
        on: "load",
        message:
          "load: 350 A is 23.3 times the current that the circuit is made for; 350 mA would be 0.35 A.",
        fixes: [{ title: "Read the number as milliamperes", kind: "suggestion", gives: { load: 0.35 } }],
      },
    ],
  },
  {
    name: "a few watts behind the least rating of its family, which as many amperes would ask for too",
    circuits: [
      {
        load: undefined,
        loadW: 8,
        gauge: 8,
        protect: { ratingA: 30, family: "ISO 8820-5 Type SF 30" },
        oneWayFt: 100,
      },
    ],
    finds: "nothing",
  },
  {
    name: "an ordinary mistake: a load twice what the conductor is for",
    circuits: [{ load: 60, gauge: 12, protect: 30 }],
    finds: "nothing",
  },
  // Loads in watts
  {
    name: "watts behind a fuse that was chosen for as many amperes",
    circuits: [{ load: undefined, loadW: 40 }],
    finds: [
      {
        on: "loadW",
        severity: "warning",
        message:
          "loadW: 40 W is only 3.33 A, on a conductor for 125 A behind 50 A; 40 A (load) would fit both. Is the unit right?",
        fixes: [
          { title: "Read the number as amperes", kind: "suggestion", gives: { loadW: undefined, load: 40 } },
        ],
      },
    ],
  },
  {
    name: "watts behind a fuse just too small for as many amperes",
    circuits: [{ load: undefined, loadW: 40.1 }],
    finds: "nothing",
  },
  {
    name: "watts behind a fuse larger than as many amperes ask for",
    circuits: [{ load: undefined, loadW: 35 }],
    finds: "nothing",
  },
  {
    name: "watts on a conductor three sizes above what as many amperes need",
    circuits: [{ load: undefined, loadW: 40, gauge: 2 }],
    finds: "nothing",
  },
  {
    name: "a small lamp on an ordinary 14 AWG branch with its 15 A fuse",
    circuits: [{ load: undefined, loadW: 10, gauge: 14, protect: 15 }],
    finds: "nothing",
  },
  // Units of a plan
  {
    name: "one circuit in metres among three in feet",
    circuits: [
      { ...tenA, name: "One" },
      { ...tenA, name: "Two", oneWayFt: 12 },
      { ...tenA, name: "Three", oneWayFt: 9 },
      { ...tenA, name: "Four", oneWayFt: undefined, oneWayM: 5 },
    ],
    finds: [
      {
        subject: "Four",
        on: "oneWayM",
        severity: "info",
        message: "oneWayM is in metres, the lengths of the 3 other circuits are in feet. Is the unit right?",
        fixes: [{ title: "Read the number as feet", kind: "suggestion", gives: {} }],
      },
    ],
  },
  {
    name: "one circuit in feet among lengths that follow from their ways",
    plan: `build({ insulationC: 105 });
const board = surface({ size: { widthMm: 1_200, heightMm: 800 } });
channel({ on: board, path: [{ leftMm: 0, topMm: 400 }, { leftMm: 1_200, topMm: 400 }] });
const house = battery({ chemistry: "AGM", capacityAh: 100, internalMilliohm: 5, at: { on: board, leftMm: 40, topMm: 500 } });
const classT = { family: "UL 248-15 Class T", interruptingA: 20_000 };
const lamp = { from: house.positive, load: 5, gauge: 12, protect: { ...classT, ratingA: 10, distanceIn: 4 } };
circuit({ ...lamp, name: "One", at: { on: board, leftMm: 400, topMm: 300 } });
circuit({ ...lamp, name: "Two", at: { on: board, leftMm: 700, topMm: 300 } });
circuit({ ...lamp, name: "Three", at: { on: board, leftMm: 1_100, topMm: 300 } });
circuit({ ...lamp, name: "Four", oneWayFt: 9 });`,
    finds: "nothing",
  },
  {
    name: "one circuit in metres among two in feet is too few to tell",
    circuits: [
      { ...tenA, name: "One" },
      { ...tenA, name: "Two", oneWayFt: 12 },
      { ...tenA, name: "Three", oneWayFt: undefined, oneWayM: 5 },
    ],
    finds: "nothing",
  },
  {
    name: "two of each are a choice",
    circuits: [
      { ...tenA, name: "One" },
      { ...tenA, name: "Two", oneWayFt: 12 },
      { ...tenA, name: "Three", oneWayFt: undefined, oneWayM: 5 },
      { ...tenA, name: "Four", oneWayFt: undefined, oneWayM: 6 },
    ],
    finds: "nothing",
  },
  {
    name: "a metric conductor measured in metres, among AWG and feet",
    circuits: [
      { ...tenA, name: "One" },
      { ...tenA, name: "Two", oneWayFt: 12 },
      { ...tenA, name: "Three", oneWayFt: 9 },
      { ...metric, name: "Four", oneWayM: 5 },
    ],
    finds: "nothing",
  },
]);

describe("a sensible build is never doubted", () => {
  /** Sized by the engine, and then a few sizes thicker and with a higher-rated fuse, as builders do. */
  const sensible = fc.record({
    amount: fc.double({ min: 0.2, max: 250, noNaN: true }),
    inWatts: fc.boolean(),
    systemV: fc.constantFrom(12, 24, 48),
    oneWayFt: fc.double({ min: 1, max: 250, noNaN: true }),
    critical: fc.boolean(),
    sizesOver: fc.integer({ min: 0, max: 3 }),
    ratingsOver: fc.integer({ min: 0, max: 2 }),
  });

  it("whatever its loads and lengths are", () => {
    fc.assert(
      fc.property(sensible, ({ amount, inWatts, systemV, oneWayFt, critical, sizesOver, ratingsOver }) => {
        const draft = sampleCircuit({
          loadA: amount,
          loadAtV: systemV,
          systemV,
          ...(inWatts ? { loadW: amount * systemV } : {}),
          lengthsGiven: { oneWayFt },
          positiveM: oneWayFt * 0.3048,
          negativeM: oneWayFt * 0.3048,
          critical,
          dropLimitPercent: critical ? 3 : 10,
          conductor: { system: "awg", awg: 16, parallel: 1 },
          protection: null,
        });
        const sizing = thinnestSufficient(draft);
        const fromA = sizing?.ratingA;
        if (!sizing || fromA === undefined) return fc.pre(false);
        const conductor = sizesFrom(sizing.conductor)[sizesOver] ?? sizing.conductor;
        const { ampacity } = analyseCircuit({ ...draft, conductor });
        const ratings = madeRatings().filter(
          (ratingA) => ratingA >= fromA && ampacity.judged && ratingA <= ampacity.ampacityA,
        );
        const ratingA = ratings[ratingsOver] ?? fromA;
        const circuit = { ...draft, conductor, protection: { ratingA, writtenAs: "number" as const } };
        const plan = {
          model: {
            build: { voltageStated: true, bench: defaultBench },
            circuits: [circuit],
            network: undefined,
            networkUnread: false,
            layout: undefined,
            lengthUnit: circuit.lengthUnit,
            withoutCircuits: [],
            periods: [],
            unjudged: [],
            invalid: [],
          },
          network: undefined,
          circuits: [{ circuit, result: analyseCircuit(circuit) }],
          problems: [],
          energy: [],
          placement: undefined,
        };
        expect(unitSuspect.check(plan)).toEqual([]);
      }),
      { numRuns: sampledRuns(2000) },
    );
  });
});
