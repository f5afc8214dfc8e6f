import { testRule } from "../rule.tester.ts";
import { standardRating } from "./standard-rating.ts";

testRule(standardRating, [
  { name: "made in some family", circuits: [{}], finds: "nothing" },
  { name: "made in one family only", circuits: [{ protect: 110 }], finds: "nothing" },
  { name: "the smallest there is", circuits: [{ protect: 1, load: 0.8 }], finds: "nothing" },
  {
    name: "made in the stated family",
    circuits: [{ load: 6, protect: { ratingA: 7.5, family: "ISO 8820-3 Type F" } }],
    finds: "nothing",
  },
  {
    name: "a breaker of the metric series, which fuses of blade form are not made in",
    circuits: [
      { load: 12, protect: { ratingA: 16, family: "circuit breaker" } },
      { load: 12, protect: 16 },
      { load: 12, protect: { ratingA: 16, family: "ISO 8820-3 Type C" } },
    ],
    finds: [
      {
        on: "protect.ratingA",
        message: "No ISO 8820-3 Type C fuse is made in 16 A; the nearest are 15 A and 20 A.",
        fixes: [
          { title: "Use a 15 A fuse", gives: { protect: { ratingA: 15, family: "ISO 8820-3 Type C" } } },
          {
            title: "Use a 20 A fuse",
            kind: "suggestion",
            gives: { protect: { ratingA: 20, family: "ISO 8820-3 Type C" } },
          },
        ],
      },
    ],
  },
  {
    name: "7.500000000000001 A, as 0.3 · 25 comes out, is 7.5 A",
    circuits: [{ load: 6, protect: 0.1 * 3 * 25 }],
    finds: "nothing",
  },
  {
    name: "just above a made rating: the nearer neighbour first",
    circuits: [{ load: 36, protect: 50.01 }],
    finds: [
      {
        on: "protect",
        message: "No fuse or breaker is made in 50.01 A; the nearest are 50 A and 60 A (unconfirmed figure).",
        values: { belowA: 50, aboveA: 60 },
        fixes: [
          { title: "Use a 50 A fuse", gives: { protect: 50 } },
          { title: "Use a 60 A fuse", kind: "suggestion", gives: { protect: 60 } },
        ],
      },
    ],
  },
  {
    name: "just below a made rating",
    circuits: [{ load: 36, protect: 49.99 }],
    finds: [
      {
        on: "protect",
        message: "No fuse or breaker is made in 49.99 A; the nearest are 45 A and 50 A (unconfirmed figure).",
        fixes: [
          { title: "Use a 50 A fuse", gives: { protect: 50 } },
          { title: "Use a 45 A fuse", kind: "suggestion", gives: { protect: 45 } },
        ],
      },
    ],
  },
  {
    name: "the neighbour below would leave too little headroom",
    circuits: [{ load: 37, protect: 47 }],
    finds: [
      {
        on: "protect",
        message: "No fuse or breaker is made in 47 A; the nearest are 45 A and 50 A (unconfirmed figure).",
        fixes: [{ title: "Use a 50 A fuse", gives: { protect: 50 } }],
      },
    ],
  },
  {
    name: "the neighbour above would not protect the conductor",
    circuits: [{ gauge: 8, load: 40, oneWayFt: 5, protect: 64 }],
    finds: [
      {
        on: "protect",
        message: "No fuse or breaker is made in 64 A; the nearest are 60 A and 70 A (unconfirmed figure).",
        fixes: [{ title: "Use a 60 A fuse", gives: { protect: 60, gauge: 8 } }],
      },
    ],
  },
  {
    name: "neither neighbour will do: one fix changes conductor and rating",
    circuits: [{ gauge: 8, load: 50, oneWayFt: 5, protect: 64 }],
    finds: [
      {
        on: "protect",
        message: "No fuse or breaker is made in 64 A",
        fixes: [{ title: "Use 6 AWG with a 70 A fuse", gives: { gauge: 6, protect: 70 } }],
      },
    ],
  },
  {
    name: "too close to the load besides: the rating that is right for both",
    circuits: [{ protect: 41 }],
    finds: [
      {
        on: "protect",
        message: "No fuse or breaker is made in 41 A; the nearest are 40 A and 45 A (unconfirmed figure).",
        fixes: [{ title: "Use a 50 A fuse", gives: { protect: 50 } }],
      },
    ],
  },
  {
    name: "below the load besides: the rating that is right for both",
    circuits: [{ protect: 33 }],
    finds: [
      {
        on: "protect",
        message: "No fuse or breaker is made in 33 A; the nearest are 30 A and 35 A (unconfirmed figure).",
        fixes: [{ title: "Use a 50 A fuse", gives: { protect: 50 } }],
      },
    ],
  },
  {
    name: "above the conductor besides: the rating that is right for both",
    circuits: [{ protect: 130.5 }],
    finds: [
      {
        on: "protect",
        message:
          "No fuse or breaker is made in 130.5 A; the nearest are 125 A and 150 A (unconfirmed figure).",
        fixes: [{ title: "Use a 125 A fuse", gives: { protect: 125 } }],
      },
    ],
  },
  {
    name: "below everything that is made",
    circuits: [{ load: 0.2, protect: 0.5 }],
    finds: [
      {
        on: "protect",
        message: "No fuse or breaker is made in 0.5 A; the nearest is 1 A (unconfirmed figure).",
        fixes: [{ title: "Use a 1 A fuse", gives: { protect: 1 } }],
      },
    ],
  },
  {
    name: "a rating of another family",
    circuits: [{ load: 24, protect: { ratingA: 35, family: "ISO 8820-3 Type F", distanceIn: 2 } }],
    finds: [
      {
        on: "protect.ratingA",
        message: "No ISO 8820-3 Type F fuse is made in 35 A; the nearest is 30 A (unconfirmed figure).",
        fixes: [
          {
            title: "Use a 30 A fuse",
            gives: { protect: { ratingA: 30, family: "ISO 8820-3 Type F", distanceIn: 2 } },
          },
        ],
      },
    ],
  },
  {
    name: "a rating of another family, and none of this one will do",
    circuits: [{ protect: { ratingA: 50, family: "ISO 8820-3 Type F" } }],
    finds: [
      {
        on: "protect.ratingA",
        message: "No ISO 8820-3 Type F fuse is made in 50 A; the nearest is 30 A (unconfirmed figure).",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a breaker",
    circuits: [{ load: 20, protect: { ratingA: 37, family: "circuit breaker" } }],
    finds: [
      {
        on: "protect.ratingA",
        message: "No circuit breaker is made in 37 A; the nearest are 35 A and 40 A.",
        fixes: [
          { title: "Use a 35 A breaker", gives: { "protect.ratingA": 35 } },
          { title: "Use a 40 A breaker", kind: "suggestion", gives: { "protect.ratingA": 40 } },
        ],
      },
    ],
  },
  {
    name: "an engine space takes the neighbour above away: 8 AWG may carry 48.75 A there",
    circuits: [{ gauge: 8, load: 36, oneWayFt: 5, engineSpace: true, protect: 48 }],
    finds: [
      {
        on: "protect",
        message: "No fuse or breaker is made in 48 A",
        fixes: [{ title: "Use a 45 A fuse", gives: { protect: 45 } }],
      },
    ],
  },
  {
    name: "two wires side by side: 48 A together",
    circuits: [{ gauge: 10, parallel: 2, load: 30, oneWayFt: 5, protect: 48 }],
    finds: [
      {
        on: "protect",
        message: "No fuse or breaker is made in 48 A",
        fixes: [{ title: "Use a 45 A fuse", gives: { protect: 45 } }],
      },
    ],
  },
  {
    name: "a metric conductor",
    circuits: [{ gauge: undefined, mm2: 10, oneWayFt: undefined, oneWayM: 2, load: 30, protect: 42 }],
    finds: [
      {
        on: "protect",
        message: "No fuse or breaker is made in 42 A",
        fixes: [
          { title: "Use a 40 A fuse", gives: { protect: 40 } },
          { title: "Use a 45 A fuse", kind: "suggestion", gives: { protect: 45 } },
        ],
      },
    ],
  },
  {
    name: "the far end alone",
    circuits: [
      { load: 20, fedFromBothEnds: true, protectFarEnd: { ratingA: 45, family: "ISO 8820-3 Type E" } },
    ],
    finds: [
      {
        on: "protectFarEnd.ratingA",
        message:
          "At the far end: no ISO 8820-3 Type E fuse is made in 45 A; the nearest are 40 A and 50 A (unconfirmed figure).",
        fixes: [
          { title: "Use a 40 A fuse at the far end", gives: { "protectFarEnd.ratingA": 40 } },
          {
            title: "Use a 50 A fuse at the far end",
            kind: "suggestion",
            gives: { "protectFarEnd.ratingA": 50 },
          },
        ],
      },
    ],
  },
  {
    name: "a place too hot for the insulation: no rating can be told",
    circuits: [{ protect: 48, ambientC: 75 }],
    finds: [{ on: "protect", message: "No fuse or breaker is made in 48 A", fixes: "no fix" }],
  },
  {
    name: "accepted with a reason",
    circuits: [
      { load: 20, protect: 37, accept: { "protection/standard-rating": "an old panel's own fuse" } },
    ],
    finds: [
      {
        on: "protect",
        message: "No fuse or breaker is made in 37 A",
        fixes: [
          { title: "Use a 35 A fuse", gives: { protect: 35 } },
          { title: "Use a 40 A fuse", kind: "suggestion", gives: { protect: 40 } },
        ],
        accepted: "an old panel's own fuse",
      },
    ],
  },
]);
