import { testRule } from "../rule.tester.ts";
import { aboveConductor } from "./above-conductor.ts";

// Ampacities: 33 CFR 183.425 Table 5, 75 °C column unless a case says otherwise: 10 AWG 40 A, 8 AWG 65 A, 6 AWG 95 A,
// 4 AWG 125 A, 2 AWG 170 A. The limit of 100 % of them is stricter than 183.455(c)(1), which allows 150 % below 50 V.
testRule(aboveConductor, [
  { name: "just below what the conductor may carry", circuits: [{ protect: 124.9 }], finds: "nothing" },
  { name: "exactly what the conductor may carry", circuits: [{ protect: 125 }], finds: "nothing" },
  {
    name: "just above what the conductor may carry; not a made rating, so not one to build on",
    circuits: [{ protect: 125.04 }],
    finds: [
      {
        on: "protect",
        message:
          "The 125.04 A fuse does not protect 4 AWG, which may carry 125 A here (33 CFR 183.425(b), Table 5): use a 125 A fuse.",
        fixes: [{ title: "Use a 125 A fuse", gives: { protect: 125, gauge: 4 } }],
      },
    ],
  },
  {
    name: "the next made rating: a smaller fuse first, then the conductor that is thick enough for it",
    circuits: [{ protect: 150 }],
    finds: [
      {
        on: "protect",
        message:
          "The 150 A fuse does not protect 4 AWG, which may carry 125 A here (33 CFR 183.425(b), Table 5): use a 125 A fuse.",
        values: { ampacityA: 125 },
        fixes: [
          { title: "Use a 125 A fuse", gives: { protect: 125, gauge: 4 } },
          { title: "Use 2 AWG", kind: "suggestion", gives: { protect: 150, gauge: 2 } },
        ],
      },
    ],
  },
  {
    name: "written as an object, it stays one, and the family is kept to",
    circuits: [{ protect: { ratingA: 150, family: "ISO 8820-5 Type SF 51", distanceIn: 4 } }],
    finds: [
      {
        on: "protect.ratingA",
        message: "The 150 A fuse does not protect 4 AWG",
        fixes: [
          {
            title: "Use a 125 A fuse",
            gives: { protect: { ratingA: 125, family: "ISO 8820-5 Type SF 51", distanceIn: 4 } },
          },
          { title: "Use 2 AWG", kind: "suggestion", gives: { "protect.ratingA": 150, gauge: 2 } },
        ],
      },
    ],
  },
  {
    name: "hotter insulation carries the same fuse",
    circuits: [{ protect: 150, insulationC: 105 }],
    finds: "nothing",
  },
  {
    name: "a breaker is called one",
    circuits: [{ protect: { ratingA: 150, family: "circuit breaker" } }],
    finds: [
      {
        on: "protect.ratingA",
        message: "The 150 A breaker does not protect 4 AWG",
        fixes: [
          { title: "Use a 125 A breaker", gives: { "protect.ratingA": 125 } },
          { title: "Use 2 AWG", kind: "suggestion", gives: { gauge: 2 } },
        ],
      },
    ],
  },
  {
    name: "no made rating between load and conductor: a conductor for the fuse that is there",
    circuits: [{ gauge: 10, load: 38, oneWayFt: 5, protect: 60 }],
    finds: [
      {
        on: "protect",
        message:
          "The 60 A fuse does not protect 10 AWG, which may carry 40 A here (33 CFR 183.425(b), Table 5): use 8 AWG.",
        fixes: [{ title: "Use 8 AWG", gives: { gauge: 8, protect: 60 } }],
      },
    ],
  },
  {
    name: "no made rating between, and the fuse too big for the next size: one fix changes both",
    circuits: [{ gauge: 10, load: 38, oneWayFt: 5, protect: 80 }],
    finds: [
      {
        on: "protect",
        message: "The 80 A fuse does not protect 10 AWG",
        fixes: [
          { title: "Use 8 AWG with a 60 A fuse", gives: { gauge: 8, protect: 60 } },
          { title: "Use 6 AWG", kind: "suggestion", gives: { gauge: 6, protect: 80 } },
        ],
      },
    ],
  },
  {
    name: "the load itself is above what the conductor may carry: the same fix as for the conductor",
    circuits: [{ gauge: 10, load: 50, oneWayFt: 5, protect: 60 }],
    finds: [
      {
        on: "protect",
        message: "The 60 A fuse does not protect 10 AWG",
        fixes: [{ title: "Use 6 AWG with a 70 A fuse", gives: { gauge: 6, protect: 70 } }],
      },
    ],
  },
  {
    name: "below the load and above the conductor at once",
    circuits: [{ gauge: 10, load: 50, oneWayFt: 5, protect: 45 }],
    finds: [
      {
        on: "protect",
        message: "The 45 A fuse does not protect 10 AWG",
        fixes: [{ title: "Use 6 AWG with a 70 A fuse", gives: { gauge: 6, protect: 70 } }],
      },
    ],
  },
  {
    name: "the family has no rating between load and conductor",
    circuits: [{ gauge: 14, load: 18, oneWayFt: 5, protect: { ratingA: 25, family: "ISO 8820-3 Type F" } }],
    finds: [
      {
        on: "protect.ratingA",
        message: "The 25 A fuse does not protect 14 AWG, which may carry 20 A here",
        fixes: [{ title: "Use 12 AWG", gives: { gauge: 12, "protect.ratingA": 25 } }],
      },
    ],
  },
  {
    name: "in an engine space, just within 0.75 of 125 A",
    circuits: [{ protect: 93.75, engineSpace: true }],
    finds: "nothing",
  },
  {
    name: "in an engine space, above 0.75 of 125 A",
    circuits: [{ protect: 100, engineSpace: true }],
    finds: [
      {
        on: "protect",
        message: "The 100 A fuse does not protect 4 AWG, which may carry 93.8 A here",
        fixes: [
          { title: "Use a 90 A fuse", gives: { protect: 90 } },
          { title: "Use 2 AWG", kind: "suggestion", gives: { gauge: 2 } },
        ],
      },
    ],
  },
  {
    name: "0.58 of 300 A is 174 A, whatever the computer makes of it",
    circuits: [{ gauge: "4/0", insulationC: 60, engineSpace: true, protect: 174 }],
    finds: "nothing",
  },
  {
    name: "0.7 of 70 A is 49 A, whatever the computer makes of it",
    circuits: [{ gauge: 8, insulationC: 80, bundledWith: 2, protect: 49, load: 30, oneWayFt: 5 }],
    finds: "nothing",
  },
  {
    name: "a fuse of 49.000000000000007 A, as a product comes out, is one of 49 A",
    circuits: [
      { gauge: 8, insulationC: 80, bundledWith: 2, protect: 49.000000000000007, load: 30, oneWayFt: 5 },
    ],
    finds: "nothing",
  },
  {
    name: "a bundle of three",
    circuits: [{ gauge: 8, insulationC: 80, bundledWith: 2, protect: 50, load: 30, oneWayFt: 5 }],
    finds: [
      {
        on: "protect",
        message:
          "The 50 A fuse does not protect 8 AWG, which may carry 49 A here (33 CFR 183.425(b), Table 5): use a 45 A fuse.",
        fixes: [
          { title: "Use a 45 A fuse", gives: { protect: 45 } },
          { title: "Use 6 AWG", kind: "suggestion", gives: { gauge: 6 } },
        ],
      },
    ],
  },
  {
    name: "a stated ambient",
    circuits: [{ protect: 100, ambientC: 50 }],
    finds: [
      {
        on: "protect",
        message:
          "The 100 A fuse does not protect 4 AWG, which may carry 93.2 A here (33 CFR 183.425(b), Table 5): use a 90 A fuse.",
        fixes: [
          { title: "Use a 90 A fuse", gives: { protect: 90 } },
          { title: "Use 2 AWG", kind: "suggestion", gives: { gauge: 2 } },
        ],
      },
    ],
  },
  {
    name: "a metric conductor is judged by a table from memory, and the message says so",
    circuits: [{ gauge: undefined, mm2: 10, oneWayFt: undefined, oneWayM: 2, protect: 100 }],
    finds: [
      {
        on: "protect",
        message: "The 100 A fuse does not protect 10 mm², which may carry",
        values: { source: "ISO 10133:2012 Annex A, unconfirmed figure" },
        fixes: [
          { title: "Use a 60 A fuse", gives: { protect: 60, mm2: 10 } },
          { title: "Use 25 mm²", kind: "suggestion", gives: { protect: 100, mm2: 25 } },
        ],
      },
    ],
  },
  {
    name: "two wires of 10 AWG side by side, four in the bundle: 2 × 40 × 0.6 = 48 A",
    circuits: [{ gauge: 10, parallel: 2, load: 30, oneWayFt: 5, protect: 48 }],
    finds: "nothing",
  },
  {
    name: "two wires side by side stay two",
    circuits: [{ gauge: 10, parallel: 2, load: 30, oneWayFt: 5, protect: 50 }],
    finds: [
      {
        on: "protect",
        message: "The 50 A fuse does not protect 2 × 10 AWG, which may carry 48 A here",
        fixes: [
          { title: "Use a 45 A fuse", gives: { protect: 45, gauge: 10, parallel: 2 } },
          { title: "Use 2 × 8 AWG", kind: "suggestion", gives: { protect: 50, gauge: 8, parallel: 2 } },
        ],
      },
    ],
  },
  {
    name: "the far end alone",
    circuits: [{ fedFromBothEnds: true, protectFarEnd: { ratingA: 150 } }],
    finds: [
      {
        on: "protectFarEnd.ratingA",
        message: "The 150 A fuse at the far end does not protect 4 AWG, which may carry 125 A here",
        fixes: [
          {
            title: "Use a 125 A fuse at the far end",
            gives: { protect: 50, "protectFarEnd.ratingA": 125 },
          },
          { title: "Use 2 AWG", kind: "suggestion", gives: { gauge: 2, "protectFarEnd.ratingA": 150 } },
        ],
      },
    ],
  },
  {
    name: "both ends, each with its own fixes",
    circuits: [{ fedFromBothEnds: true, protect: 150, protectFarEnd: 175 }],
    finds: [
      {
        on: "protect",
        message: "The 150 A fuse does not protect 4 AWG",
        fixes: [
          {
            title: "Use a 125 A fuse with a 125 A fuse at the far end",
            gives: { protect: 125, protectFarEnd: 125 },
          },
          { title: "Use 2 AWG", kind: "suggestion", gives: { gauge: 2 } },
        ],
      },
      {
        on: "protectFarEnd",
        message: "The 175 A fuse at the far end does not protect 4 AWG",
        fixes: [
          {
            title: "Use a 125 A fuse with a 125 A fuse at the far end",
            gives: { protect: 125, protectFarEnd: 125 },
          },
          { title: "Use 1 AWG", kind: "suggestion", gives: { gauge: 1 } },
        ],
      },
    ],
  },
  {
    name: "both ends, no made rating between load and conductor",
    circuits: [{ gauge: 10, load: 38, oneWayFt: 5, fedFromBothEnds: true, protect: 80, protectFarEnd: 60 }],
    finds: [
      {
        on: "protect",
        message: "The 80 A fuse does not protect 10 AWG",
        fixes: [
          {
            title: "Use 8 AWG with a 60 A fuse",
            gives: { gauge: 8, protect: 60, protectFarEnd: 60 },
          },
          { title: "Use 6 AWG", kind: "suggestion", gives: { gauge: 6 } },
        ],
      },
      {
        on: "protectFarEnd",
        message: "The 60 A fuse at the far end does not protect 10 AWG",
        fixes: [
          {
            title: "Use 8 AWG with a 60 A fuse",
            gives: { gauge: 8, protect: 60, protectFarEnd: 60 },
          },
          { title: "Use 8 AWG", kind: "suggestion", gives: { gauge: 8, protect: 80, protectFarEnd: 60 } },
        ],
      },
    ],
  },
  {
    name: "a place too hot for the insulation is not judged here",
    circuits: [{ protect: 300, ambientC: 75 }],
    finds: "nothing",
  },
  {
    name: "above every made size",
    circuits: [{ load: 350, gauge: "4/0", oneWayFt: 1, protect: 400 }],
    finds: [
      {
        on: "protect",
        message:
          "The 400 A fuse does not protect 4/0 AWG, which may carry 360 A here (33 CFR 183.425(b), Table 5): no standard size is enough",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "accepted with a reason",
    circuits: [
      { protect: 150, accept: { "protection/above-conductor": "motor start; 150 % is allowed below 50 V" } },
    ],
    finds: [
      {
        on: "protect",
        message: "The 150 A fuse does not protect 4 AWG",
        fixes: [
          { title: "Use a 125 A fuse", gives: { protect: 125 } },
          { title: "Use 2 AWG", kind: "suggestion", gives: { gauge: 2 } },
        ],
        accepted: "motor start; 150 % is allowed below 50 V",
      },
    ],
  },
]);
