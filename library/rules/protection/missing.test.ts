import { testRule } from "../rule.tester.ts";
import { missing } from "./missing.ts";

testRule(missing, [
  { name: "a fuse, as a number", circuits: [{}], finds: "nothing" },
  { name: "a fuse, as an object", circuits: [{ protect: { ratingA: 50 } }], finds: "nothing" },
  { name: "the smallest fuse there is is a fuse too", circuits: [{ protect: 1 }], finds: "nothing" },
  {
    name: "a rating that cannot be read is not a missing one",
    circuits: [{ protect: 0 }],
    finds: "nothing",
  },
  {
    name: "no fuse: the smallest made rating above 125 % of the load",
    circuits: [{ protect: undefined }],
    finds: [
      {
        on: "",
        message:
          "No fuse or breaker is given (protect); a short would burn 4 AWG (33 CFR 183.455(a)): add a 50 A fuse.",
        fixes: [{ title: "Add a 50 A fuse", gives: { protect: 50, gauge: 4, protectFarEnd: undefined } }],
      },
    ],
  },
  {
    name: "a load that runs for minutes needs no headroom",
    circuits: [{ protect: undefined, continuous: false }],
    finds: [
      {
        on: "",
        message: "No fuse or breaker",
        fixes: [{ title: "Add a 40 A fuse", gives: { protect: 40 } }],
      },
    ],
  },
  {
    name: "watts are turned into amperes first",
    circuits: [{ protect: undefined, load: undefined, loadW: 480 }],
    finds: [
      {
        on: "",
        message: "No fuse or breaker",
        fixes: [{ title: "Add a 50 A fuse", gives: { protect: 50 } }],
      },
    ],
  },
  {
    name: "the best rating is exactly what the conductor may carry",
    circuits: [{ protect: undefined, gauge: 10, load: 32, oneWayFt: 5 }],
    finds: [
      {
        on: "",
        message: "No fuse or breaker",
        fixes: [{ title: "Add a 40 A fuse", gives: { protect: 40, gauge: 10 } }],
      },
    ],
  },
  {
    name: "just above that, no rating fits between load and conductor: one fix changes both",
    circuits: [{ protect: undefined, gauge: 10, load: 32.1, oneWayFt: 5 }],
    finds: [
      {
        on: "",
        message: "No fuse or breaker",
        fixes: [{ title: "Use 8 AWG and add a 45 A fuse", gives: { protect: 45, gauge: 8 } }],
      },
    ],
  },
  {
    name: "an engine space leaves too little between: 8 AWG may carry 48.75 A there",
    circuits: [{ protect: undefined, gauge: 8, load: 39, oneWayFt: 5, engineSpace: true }],
    finds: [
      {
        on: "",
        message: "No fuse or breaker",
        fixes: [{ title: "Use 6 AWG and add a 50 A fuse", gives: { protect: 50, gauge: 6 } }],
      },
    ],
  },
  {
    name: "wires side by side are protected together",
    circuits: [{ protect: undefined, gauge: 10, parallel: 2, load: 36, oneWayFt: 5 }],
    finds: [
      {
        on: "",
        message: "No fuse or breaker is given (protect); a short would burn 2 × 10 AWG (33 CFR 183.455(a))",
        fixes: [{ title: "Add a 45 A fuse", gives: { protect: 45, gauge: 10 } }],
      },
    ],
  },
  {
    name: "a metric conductor",
    circuits: [{ protect: undefined, gauge: undefined, mm2: 10, oneWayFt: undefined, oneWayM: 2 }],
    finds: [
      {
        on: "",
        message: "No fuse or breaker is given (protect); a short would burn 10 mm² (33 CFR 183.455(a))",
        fixes: [{ title: "Add a 50 A fuse", gives: { protect: 50, mm2: 10 } }],
      },
    ],
  },
  {
    name: "fed from both ends: both fuses at once",
    circuits: [{ protect: undefined, fedFromBothEnds: true }],
    finds: [
      {
        on: "",
        message: "No fuse or breaker",
        fixes: [{ title: "Add a 50 A fuse at each end", gives: { protect: 50, protectFarEnd: 50 } }],
      },
    ],
  },
  {
    name: "fed from both ends, and the conductor too thin for a fuse",
    circuits: [{ protect: undefined, fedFromBothEnds: true, gauge: 10, load: 38, oneWayFt: 5 }],
    finds: [
      {
        on: "",
        message: "No fuse or breaker",
        fixes: [
          {
            title: "Use 8 AWG and add a 50 A fuse at each end",
            gives: { protect: 50, protectFarEnd: 50, gauge: 8 },
          },
        ],
      },
    ],
  },
  {
    name: "the far end's family is taken over: 45 A is not made in it",
    circuits: [
      {
        protect: undefined,
        load: 36,
        fedFromBothEnds: true,
        protectFarEnd: { ratingA: 60, family: "ISO 8820-3 Type E", distanceIn: 3 },
      },
    ],
    finds: [
      {
        on: "",
        message: "No fuse or breaker",
        fixes: [
          {
            title: "Add a 50 A fuse",
            gives: {
              protect: { ratingA: 50, family: "ISO 8820-3 Type E" },
              protectFarEnd: { ratingA: 60, family: "ISO 8820-3 Type E", distanceIn: 3 },
            },
          },
        ],
      },
    ],
  },
  {
    name: "the far end's family is not made as great as this load needs",
    circuits: [
      {
        protect: undefined,
        load: 25,
        fedFromBothEnds: true,
        protectFarEnd: { ratingA: 30, family: "ISO 8820-3 Type F" },
      },
    ],
    finds: [
      {
        on: "",
        message:
          "No fuse or breaker is given (protect); a short would burn 4 AWG (33 CFR 183.455(a)): choose another family, this one is not made above 30 A (unconfirmed figure).",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a place too hot for the insulation: no rating can be told",
    circuits: [{ protect: undefined, ambientC: 75 }],
    finds: [
      {
        on: "",
        message:
          "No fuse or breaker is given (protect); a short would burn 4 AWG (33 CFR 183.455(a)): first choose insulation for this temperature.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a load above every made size",
    circuits: [{ protect: undefined, load: 400, gauge: "4/0", oneWayFt: 1 }],
    finds: [
      {
        on: "",
        message:
          "No fuse or breaker is given (protect); a short would burn 4/0 AWG (33 CFR 183.455(a)): no standard size is enough",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "each circuit is told on its own, and one of them is accepted",
    circuits: [
      { name: "Lamp" },
      { name: "Pump", protect: undefined },
      {
        name: "Starter",
        protect: undefined,
        accept: { "protection/missing": "cranking motor, exempt by 33 CFR 183.455(e)" },
      },
    ],
    finds: [
      {
        subject: "Pump",
        on: "",
        message: "No fuse or breaker",
        fixes: [{ title: "Add a 50 A fuse", gives: { protect: 50 } }],
      },
      {
        subject: "Starter",
        on: "",
        message: "No fuse or breaker",
        fixes: [{ title: "Add a 50 A fuse", gives: { protect: 50 } }],
        accepted: "cranking motor, exempt by 33 CFR 183.455(e)",
      },
    ],
  },
]);
