import { testRule } from "../rule-tester.ts";
import { bothEnds } from "./both-ends.ts";

testRule(bothEnds, [
  { name: "fed from one end", circuits: [{}], finds: "nothing" },
  {
    name: "said to be fed from one end",
    circuits: [{ fedFromBothEnds: false }],
    finds: "nothing",
  },
  {
    name: "protected at both ends",
    circuits: [{ fedFromBothEnds: true, protectFarEnd: 50 }],
    finds: "nothing",
  },
  {
    name: "protected at both ends, differently",
    circuits: [{ fedFromBothEnds: true, protectFarEnd: { ratingA: 60, family: "circuit breaker" } }],
    finds: "nothing",
  },
  {
    name: "protected nowhere: said by another rule",
    circuits: [{ fedFromBothEnds: true, protect: undefined }],
    finds: "nothing",
  },
  {
    name: "protected at the far end only: said by another rule",
    circuits: [{ fedFromBothEnds: true, protect: undefined, protectFarEnd: 50 }],
    finds: "nothing",
  },
  {
    name: "a far end that cannot be read is not a missing one",
    circuits: [{ fedFromBothEnds: true, protectFarEnd: "50" }],
    finds: "nothing",
  },
  {
    name: "protected at one end: the same rating again",
    circuits: [{ fedFromBothEnds: true }],
    finds: [
      {
        on: "fedFromBothEnds",
        message:
          "Current can come from both ends, but only the 50 A fuse where the circuit starts is given; each source needs its own (33 CFR 183.455(b)): add a 50 A fuse at the far end.",
        fixes: [{ title: "Add a 50 A fuse at the far end", gives: { protect: 50, protectFarEnd: 50 } }],
      },
    ],
  },
  {
    name: "the same rating as there, not the best",
    circuits: [{ fedFromBothEnds: true, protect: 80 }],
    finds: [
      {
        on: "fedFromBothEnds",
        message: "Current can come from both ends, but only the 80 A fuse",
        fixes: [{ title: "Add an 80 A fuse at the far end", gives: { protectFarEnd: 80 } }],
      },
    ],
  },
  {
    name: "exactly what the conductor may carry is in order, and repeated",
    circuits: [{ fedFromBothEnds: true, protect: 125 }],
    finds: [
      {
        on: "fedFromBothEnds",
        message: "Current can come from both ends",
        fixes: [{ title: "Add a 125 A fuse at the far end", gives: { protectFarEnd: 125 } }],
      },
    ],
  },
  {
    name: "a rating above the conductor is not repeated",
    circuits: [{ fedFromBothEnds: true, protect: 150 }],
    finds: [
      {
        on: "fedFromBothEnds",
        message: "Current can come from both ends, but only the 150 A fuse",
        fixes: [{ title: "Add a 50 A fuse at the far end", gives: { protect: 150, protectFarEnd: 50 } }],
      },
    ],
  },
  {
    name: "a rating below 125 % of the load is not repeated",
    circuits: [{ fedFromBothEnds: true, protect: 49 }],
    finds: [
      {
        on: "fedFromBothEnds",
        message: "Current can come from both ends, but only the 49 A fuse",
        fixes: [{ title: "Add a 50 A fuse at the far end", gives: { protectFarEnd: 50 } }],
      },
    ],
  },
  {
    name: "a rating that is not made is not repeated",
    circuits: [{ fedFromBothEnds: true, protect: 52 }],
    finds: [
      {
        on: "fedFromBothEnds",
        message: "Current can come from both ends, but only the 52 A fuse",
        fixes: [{ title: "Add a 50 A fuse at the far end", gives: { protectFarEnd: 50 } }],
      },
    ],
  },
  {
    name: "the family is repeated, the distance is not",
    circuits: [
      { fedFromBothEnds: true, protect: { ratingA: 50, family: "ISO 8820-3 Type E", distanceIn: 4 } },
    ],
    finds: [
      {
        on: "fedFromBothEnds",
        message: "Current can come from both ends",
        fixes: [
          {
            title: "Add a 50 A fuse at the far end",
            gives: {
              protect: { ratingA: 50, family: "ISO 8820-3 Type E", distanceIn: 4 },
              protectFarEnd: { ratingA: 50, family: "ISO 8820-3 Type E" },
            },
          },
        ],
      },
    ],
  },
  {
    name: "a breaker is called one",
    circuits: [{ fedFromBothEnds: true, protect: { ratingA: 50, family: "circuit breaker" } }],
    finds: [
      {
        on: "fedFromBothEnds",
        message:
          "Current can come from both ends, but only the 50 A breaker where the circuit starts is given",
        fixes: [
          {
            title: "Add a 50 A breaker at the far end",
            gives: { protectFarEnd: { ratingA: 50, family: "circuit breaker" } },
          },
        ],
      },
    ],
  },
  {
    name: "no made rating fits: conductor and both ratings in one",
    circuits: [{ fedFromBothEnds: true, gauge: 10, load: 38, oneWayFt: 5, protect: 40 }],
    finds: [
      {
        on: "fedFromBothEnds",
        message: "Current can come from both ends, but only the 40 A fuse",
        fixes: [
          {
            title: "Use 8 AWG with a 50 A fuse and add a 50 A fuse at the far end",
            gives: { gauge: 8, protect: 50, protectFarEnd: 50 },
          },
        ],
      },
    ],
  },
  {
    name: "in an engine space the rating there is above the conductor: 10 AWG may carry 30 A",
    circuits: [{ fedFromBothEnds: true, gauge: 10, load: 24, oneWayFt: 5, engineSpace: true, protect: 35 }],
    finds: [
      {
        on: "fedFromBothEnds",
        message: "Current can come from both ends, but only the 35 A fuse",
        fixes: [{ title: "Add a 30 A fuse at the far end", gives: { protect: 35, protectFarEnd: 30 } }],
      },
    ],
  },
  {
    name: "a metric conductor, and wires side by side",
    circuits: [
      {
        fedFromBothEnds: true,
        gauge: undefined,
        mm2: 10,
        parallel: 2,
        oneWayFt: undefined,
        oneWayM: 2,
      },
    ],
    finds: [
      {
        on: "fedFromBothEnds",
        message: "Current can come from both ends",
        fixes: [{ title: "Add a 50 A fuse at the far end", gives: { protectFarEnd: 50, mm2: 10 } }],
      },
    ],
  },
  {
    name: "the family has nothing great enough",
    circuits: [{ fedFromBothEnds: true, load: 28, protect: { ratingA: 30, family: "ISO 8820-3 Type F" } }],
    finds: [
      {
        on: "fedFromBothEnds",
        message:
          "Current can come from both ends, but only the 30 A fuse where the circuit starts is given; each source needs its own (33 CFR 183.455(b)): choose another family, this one is not made above 30 A (unconfirmed figure).",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a place too hot for the insulation: no rating can be told",
    circuits: [{ fedFromBothEnds: true, ambientC: 75 }],
    finds: [
      {
        on: "fedFromBothEnds",
        message:
          "Current can come from both ends, but only the 50 A fuse where the circuit starts is given; each source needs its own (33 CFR 183.455(b)): first choose insulation that bears the place.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "accepted with a reason",
    circuits: [
      { fedFromBothEnds: true, accept: { "protection/both-ends": "the charger limits itself to 20 A" } },
    ],
    finds: [
      {
        on: "fedFromBothEnds",
        message: "Current can come from both ends",
        fixes: [{ title: "Add a 50 A fuse at the far end", gives: { protectFarEnd: 50 } }],
        accepted: "the charger limits itself to 20 A",
      },
    ],
  },
]);
