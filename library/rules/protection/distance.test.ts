import { testRule } from "../rule.tester.ts";
import { distance } from "./distance.ts";

// 33 CFR 183.455(b)(1): 7 in; (b)(2): 40 in, in a sheath; 183.460(a): 72 in from a battery, where practice is 7 in without a sheath.
const sheathe = {
  title: "Run it in a sheath",
  kind: "suggestion",
  gives: { sheathed: true },
} as const;

testRule(distance, [
  { name: "no distance stated: not judged", circuits: [{ protect: { ratingA: 50 } }], finds: "nothing" },
  { name: "at the source itself", circuits: [{ protect: { ratingA: 50, distanceIn: 0 } }], finds: "nothing" },
  { name: "just within 7 in", circuits: [{ protect: { ratingA: 50, distanceIn: 6.99 } }], finds: "nothing" },
  { name: "exactly 7 in", circuits: [{ protect: { ratingA: 50, distanceIn: 7 } }], finds: "nothing" },
  {
    name: "7.000000000000001 in, as 2.1 / 0.3 comes out, are 7 in",
    circuits: [{ protect: { ratingA: 50, distanceIn: 2.1 / 0.3 } }],
    finds: "nothing",
  },
  {
    name: "just above 7 in",
    circuits: [{ protect: { ratingA: 50, distanceIn: 7.001 } }],
    finds: [
      {
        on: "protect.distanceIn",
        message:
          "The 50 A fuse is 7.001 in from its source; the limit without a sheath is 7 in (33 CFR 183.455(b)(1)): move it nearer, or run the conductor in a sheath up to it.",
        values: { limit: 7, unit: "in", sheathHelps: true },
        fixes: [sheathe],
      },
    ],
  },
  {
    name: "exactly 7 in, in millimetres",
    circuits: [{ protect: { ratingA: 50, distanceMm: 177.8 } }],
    finds: "nothing",
  },
  {
    name: "just above 7 in, in millimetres",
    circuits: [{ protect: { ratingA: 50, distanceMm: 178 } }],
    finds: [
      {
        on: "protect.distanceMm",
        message:
          "The 50 A fuse is 178 mm from its source; the limit without a sheath is 177.8 mm (33 CFR 183.455(b)(1)): move it nearer, or run the conductor in a sheath up to it.",
        fixes: [sheathe],
      },
    ],
  },
  {
    name: "a sheath would just help",
    circuits: [{ protect: { ratingA: 50, distanceIn: 40 } }],
    finds: [
      { on: "protect.distanceIn", message: "The 50 A fuse is 40 in from its source", fixes: [sheathe] },
    ],
  },
  {
    name: "a sheath would just help, in millimetres",
    circuits: [{ protect: { ratingA: 50, distanceMm: 1016 } }],
    finds: [
      { on: "protect.distanceMm", message: "The 50 A fuse is 1,016 mm from its source", fixes: [sheathe] },
    ],
  },
  {
    name: "a sheath would not help either",
    circuits: [{ protect: { ratingA: 50, distanceIn: 40.01 } }],
    finds: [
      {
        on: "protect.distanceIn",
        message:
          "The 50 A fuse is 40.01 in from its source; the limit without a sheath is 7 in (33 CFR 183.455(b)(1)): move it nearer.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "exactly 40 in, in a sheath",
    circuits: [{ sheathed: true, protect: { ratingA: 50, distanceIn: 40 } }],
    finds: "nothing",
  },
  {
    name: "just above 40 in, in a sheath",
    circuits: [{ sheathed: true, protect: { ratingA: 50, distanceIn: 40.1 } }],
    finds: [
      {
        on: "protect.distanceIn",
        message:
          "The 50 A fuse is 40.1 in from its source; the limit in a sheath is 40 in (33 CFR 183.455(b)(2)): move it nearer.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "exactly 7 in from the battery, bare",
    circuits: [{ fromBattery: true, protect: { ratingA: 50, distanceIn: 7 } }],
    finds: "nothing",
  },
  {
    name: "just above 7 in from the battery, bare: advice",
    circuits: [{ fromBattery: true, protect: { ratingA: 50, distanceIn: 7.1 } }],
    finds: [
      {
        on: "protect.distanceIn",
        severity: "info",
        message:
          "The 50 A fuse is 7.1 in from its source; the limit from a battery without a sheath is 7 in (common practice, no source; 33 CFR 183.460(a) allows 72 in): move it nearer, or run the conductor in a sheath up to it.",
        fixes: [sheathe],
      },
    ],
  },
  {
    name: "exactly 72 in from the battery, bare: advice",
    circuits: [{ fromBattery: true, protect: { ratingA: 50, distanceIn: 72 } }],
    finds: [
      {
        on: "protect.distanceIn",
        severity: "info",
        message: "The 50 A fuse is 72 in from its source; the limit from a battery without a sheath is 7 in",
        fixes: [sheathe],
      },
    ],
  },
  {
    name: "exactly 72 in from the battery, in a sheath",
    circuits: [{ fromBattery: true, sheathed: true, protect: { ratingA: 50, distanceIn: 72 } }],
    finds: "nothing",
  },
  {
    name: "exactly 72 in from the battery, in a sheath, in millimetres",
    circuits: [{ fromBattery: true, sheathed: true, protect: { ratingA: 50, distanceMm: 1828.8 } }],
    finds: "nothing",
  },
  {
    name: "a fuse of its own, 7 in of cable from the battery",
    plan: fuseHolderBehind("lengthM: 0.177"),
    finds: "nothing",
  },
  {
    name: "a fuse of its own, 3 ft of cable from the battery: advice",
    plan: fuseHolderBehind("lengthFt: 3"),
    finds: [
      {
        subject: "lead",
        on: "lengthFt",
        severity: "info",
        message:
          "The 100 A main fuse is 36 in from its source; the limit from a battery without a sheath is 7 in (common practice, no source; 33 CFR 183.460(a) allows 72 in): move it nearer, or run the conductor in a sheath up to it.",
        fixes: [sheathe],
      },
    ],
  },
  {
    name: "a fuse of its own, 1 m of cable towards the battery",
    plan: fuseHolderBehind("lengthM: 1", "from: main.line, to: house.positive"),
    finds: [
      {
        subject: "lead",
        on: "lengthM",
        severity: "info",
        message: "The 100 A main fuse is 1,000 mm from its source",
        fixes: [sheathe],
      },
    ],
  },
  {
    name: "a fuse of its own, 3 ft of cable from the battery in a sheath",
    plan: fuseHolderBehind("lengthFt: 3, sheathed: true"),
    finds: "nothing",
  },
  {
    name: "a fuse of its own, too far: reported by protection/unprotected-path",
    plan: fuseHolderBehind("lengthFt: 6.1"),
    finds: "nothing",
  },
  {
    name: "just above 72 in from the battery; a sheath changes nothing",
    circuits: [{ fromBattery: true, sheathed: true, protect: { ratingA: 50, distanceIn: 72.1 } }],
    finds: [
      {
        on: "protect.distanceIn",
        message:
          "The 50 A fuse is 72.1 in from its source; the limit from a battery is 72 in (33 CFR 183.460(a)): move it nearer.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a breaker is called one",
    circuits: [{ protect: { ratingA: 50, family: "circuit breaker", distanceIn: 12 } }],
    finds: [
      { on: "protect.distanceIn", message: "The 50 A breaker is 12 in from its source", fixes: [sheathe] },
    ],
  },
  {
    name: "the far end is measured from its own source, and never has the battery's limit",
    circuits: [
      {
        fedFromBothEnds: true,
        fromBattery: true,
        protect: { ratingA: 50, distanceIn: 60 },
        protectFarEnd: { ratingA: 50, distanceMm: 200 },
      },
    ],
    finds: [
      {
        on: "protectFarEnd.distanceMm",
        message:
          "The 50 A fuse at the far end is 200 mm from its source; the limit without a sheath is 177.8 mm (33 CFR 183.455(b)(1)): move it nearer, or run the conductor in a sheath up to it.",
        fixes: [sheathe],
      },
      {
        on: "protect.distanceIn",
        severity: "info",
        message: "The 50 A fuse is 60 in from its source; the limit from a battery without a sheath is 7 in",
        fixes: [sheathe],
      },
    ],
  },
  {
    name: "both ends",
    circuits: [
      {
        fedFromBothEnds: true,
        protect: { ratingA: 50, distanceIn: 8 },
        protectFarEnd: { ratingA: 50, distanceIn: 9 },
      },
    ],
    finds: [
      { on: "protect.distanceIn", message: "The 50 A fuse is 8 in", fixes: [sheathe] },
      { on: "protectFarEnd.distanceIn", message: "The 50 A fuse at the far end is 9 in", fixes: [sheathe] },
    ],
  },
  {
    name: "where the place is too hot to judge the conductor, the distance is judged all the same",
    circuits: [{ ambientC: 75, protect: { ratingA: 50, distanceIn: 12 } }],
    finds: [{ on: "protect.distanceIn", message: "The 50 A fuse is 12 in", fixes: [sheathe] }],
  },
  {
    name: "accepted with a reason",
    circuits: [
      {
        protect: { ratingA: 50, distanceIn: 12 },
        accept: { "protection/distance": "inside the battery box, no metal in reach" },
      },
    ],
    finds: [
      {
        on: "protect.distanceIn",
        message: "The 50 A fuse is 12 in",
        fixes: [sheathe],
        accepted: "inside the battery box, no metal in reach",
      },
    ],
  },
]);

function fuseHolderBehind(length: string, ends = "from: house.positive, to: main.line"): string {
  return `
    build({ insulationC: 105 });
    const house = battery({ chemistry: "AGM", capacityAh: 100, internalMilliohm: 5 });
    const main = fuseHolder({ name: "main fuse", ratingA: 100 });
    cable({ name: "lead", ${ends}, gauge: 2, ${length} });
    circuit({ from: main.load, returnTo: house.negative, load: 40, oneWayFt: 5, gauge: 2 });`;
}
