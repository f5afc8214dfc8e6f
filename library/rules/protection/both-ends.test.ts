import { testRule } from "../rule.tester.ts";
import { bothEnds } from "./both-ends.ts";

// 6 AWG at 75 °C may carry 95 A (33 CFR 183.425, Table 5).
const charging = (more: string, { shortA = 900, voltage = 12, outputA = 30 } = {}) => `
  build({ insulationC: 75, voltage: ${voltage} });
  const bank = battery({ name: "bank", chemistry: "AGM", capacityAh: 100, shortCircuitA: ${shortA} });
  const charger = shoreCharger({ name: "charger", outputA: ${outputA} });
  cable({ name: "charging", from: charger.positive, to: bank.positive, lengthFt: 6, gauge: 6, ${more} });
  cable({ name: "charging return", from: charger.negative, to: bank.negative, lengthFt: 6, gauge: 4 });
`;

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
        fixes: [
          {
            title: "Use a 125 A fuse and add a 125 A fuse at the far end",
            gives: { protect: 125, protectFarEnd: 125 },
          },
        ],
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
        fixes: [
          {
            title: "Use a 50 A fuse and add a 50 A fuse at the far end",
            gives: { protect: 50, protectFarEnd: 50 },
          },
        ],
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
        fixes: [
          { title: "Use a 50 A fuse and add a 50 A fuse at the far end", gives: { protectFarEnd: 50 } },
        ],
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
        fixes: [
          {
            title: "Use a 30 A fuse and add a 30 A fuse at the far end",
            gives: { protect: 30, protectFarEnd: 30 },
          },
        ],
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
          "Current can come from both ends, but only the 50 A fuse where the circuit starts is given; each source needs its own (33 CFR 183.455(b)): first choose insulation for this temperature.",
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
  {
    name: "the same family for 48 V: the version for 58 V is added",
    circuits: [{ voltage: 48, fedFromBothEnds: true, protect: { ratingA: 50, family: "ISO 8820-3 Type E" } }],
    finds: [
      {
        on: "fedFromBothEnds",
        message: "Current can come from both ends",
        fixes: [
          {
            title: "Add a 50 A fuse at the far end",
            gives: { protectFarEnd: { ratingA: 50, family: "ISO 8820-3 Type E", ratedV: 58 } },
          },
        ],
      },
    ],
  },
  {
    name: "48 V, and a family that is made for less is not repeated",
    circuits: [
      { voltage: 48, fedFromBothEnds: true, protect: { ratingA: 50, family: "ISO 8820-5 Type SF 30" } },
    ],
    finds: [
      {
        on: "fedFromBothEnds",
        message: "Current can come from both ends",
        fixes: [
          {
            title: "Add a 50 A fuse (ISO 8820-3 Type E, 58 V) at the far end",
            gives: { protectFarEnd: { ratingA: 50, family: "ISO 8820-3 Type E", ratedV: 58 } },
          },
        ],
      },
    ],
  },
  {
    name: "48 V, and a breaker whose voltage nobody states: the new one must be marked",
    circuits: [{ voltage: 48, fedFromBothEnds: true, protect: { ratingA: 50, family: "circuit breaker" } }],
    finds: [
      {
        on: "fedFromBothEnds",
        message: "Current can come from both ends",
        fixes: [
          {
            title: "Add a 50 A breaker at the far end",
            kind: "suggestion",
            gives: { protectFarEnd: { ratingA: 50, family: "circuit breaker", ratedV: 48 } },
          },
        ],
      },
    ],
  },
  {
    name: "a charger's cable, protected at both ends",
    plan: charging("protect: 40, protectFarEnd: 40"),
    finds: "nothing",
  },
  {
    name: "protected at the battery's end: the charger cannot push more than the conductor may carry",
    plan: charging("protectFarEnd: 40"),
    finds: "nothing",
  },
  {
    name: "protected at the charger's end alone: a family that interrupts what the bank delivers",
    plan: charging("protect: 40"),
    finds: [
      {
        subject: "charging",
        record: "charging",
        on: "to",
        severity: "error",
        message:
          "The 40 A fuse where the cable starts is at the charger, which limits its own current, and not at the other source, which does not (33 CFR 183.455(b)): use a 40 A fuse (ISO 8820-3 Type C) within 7 in of the positive terminal of the bank instead.",
        fixes: [
          {
            title:
              "Use a 40 A fuse (ISO 8820-3 Type C) within 7 in of the positive terminal of the bank instead",
            gives: { protect: undefined },
          },
          {
            title: "Add a 40 A fuse (ISO 8820-3 Type C) within 7 in of the positive terminal of the bank",
            gives: {
              protect: 40,
              protectFarEnd: { ratingA: 40, family: "ISO 8820-3 Type C", distanceIn: 7 },
            },
          },
        ],
      },
    ],
  },
  {
    name: "the family that is there interrupts enough, and is repeated with its marking",
    plan: charging('protect: { ratingA: 40, family: "circuit breaker", interruptingA: 3000 }', {
      shortA: 2900,
    }),
    finds: [
      {
        on: "to",
        message: "The 40 A breaker where the cable starts is at the charger, which limits its own current",
        fixes: [
          {
            title:
              "Use a 40 A breaker (marked for at least 3,000 A) within 7 in of the positive terminal of the bank instead",
            gives: { protect: undefined },
          },
          {
            title:
              "Add a 40 A breaker (marked for at least 3,000 A) within 7 in of the positive terminal of the bank",
            gives: {
              protectFarEnd: {
                ratingA: 40,
                family: "circuit breaker",
                distanceIn: 7,
                interruptingA: 3000,
              },
            },
          },
        ],
      },
    ],
  },
  {
    name: "the family that is there does not interrupt what comes from the other end",
    plan: charging('protect: { ratingA: 40, family: "ISO 8820-3 Type E" }', { shortA: 1100 }),
    finds: [
      {
        on: "to",
        message: "The 40 A fuse where the cable starts is at the charger",
        fixes: [
          {
            title:
              "Use a 40 A fuse (ISO 8820-5 Type SF 30) within 7 in of the positive terminal of the bank instead",
            gives: { protect: undefined },
          },
          {
            title: "Add a 40 A fuse (ISO 8820-5 Type SF 30) within 7 in of the positive terminal of the bank",
            gives: { "protectFarEnd.family": "ISO 8820-5 Type SF 30" },
          },
        ],
      },
    ],
  },
  {
    name: "a rating above the cable is not repeated",
    plan: charging("protect: 100"),
    finds: [
      {
        on: "to",
        message: "The 100 A fuse where the cable starts is at the charger",
        fixes: [
          {
            title:
              "Use a 40 A fuse (ISO 8820-3 Type C) within 7 in of the positive terminal of the bank instead",
            gives: { protect: undefined },
          },
          {
            title:
              "Use a 90 A fuse and add a 40 A fuse (ISO 8820-3 Type C) within 7 in of the positive terminal of the bank",
            gives: { protect: 90, "protectFarEnd.ratingA": 40 },
          },
        ],
      },
    ],
  },
  {
    name: "protected at the far end alone, and the charger can push more than the conductor may carry",
    plan: charging("protectFarEnd: 90", { outputA: 96 }),
    finds: [
      {
        on: "from",
        message:
          "Current can come from both ends, but only the 90 A fuse at the far end is given; each source needs its own",
        fixes: [
          {
            title:
              "Use 4 AWG with a 125 A fuse at the far end and add a 125 A fuse (ISO 8820-5 Type SF 30) within 7 in of the positive terminal of the charger",
            gives: { gauge: 4, "protect.ratingA": 125, protectFarEnd: 125 },
          },
        ],
      },
    ],
  },
  {
    name: "48 V in a network: the version for 58 V",
    plan: charging('protect: { ratingA: 40, family: "ISO 8820-3 Type E", ratedV: 58 }', { voltage: 48 }),
    finds: [
      {
        on: "to",
        message: "The 40 A fuse where the cable starts is at the charger",
        fixes: [
          {
            title:
              "Use a 40 A fuse (ISO 8820-3 Type E, 58 V) within 7 in of the positive terminal of the bank instead",
            gives: { protect: undefined },
          },
          {
            title:
              "Add a 40 A fuse (ISO 8820-3 Type E, 58 V) within 7 in of the positive terminal of the bank",
            gives: { "protectFarEnd.ratedV": 58 },
          },
        ],
      },
    ],
  },
  {
    name: "the other source is connected without a fuse: one there comes first, and no repair adds another one here",
    plan: `build({ insulationC: 105 });
      const [house, old] = ["house", "old"].map((name) => battery({ name, chemistry: "AGM", capacityAh: 100, shortCircuitA: 1500 }));
      const plus = busBar({ name: "plus" }), minus = busBar({ name: "minus" });
      cable({ name: "main", from: house.positive, to: plus.stud, lengthFt: 3, gauge: 2, protect: { ratingA: 100, family: "UL 248-15 Class T", interruptingA: 20_000 } });
      cable({ name: "old plus", from: old.positive, to: plus.stud, lengthFt: 3, gauge: 4 });
      cable({ name: "house minus", from: house.negative, to: minus.stud, lengthFt: 3, gauge: 2 });
      cable({ name: "old minus", from: old.negative, to: minus.stud, lengthFt: 3, gauge: 2 });
      circuit({ name: "lamp", from: plus.stud, returnTo: minus.stud, load: 4, oneWayFt: 9, gauge: 14, protect: 10 });`,
    finds: [
      {
        subject: "main",
        on: "to",
        message:
          "Current can come from both ends, but only the 100 A fuse where the cable starts is given; each source needs its own (33 CFR 183.455(b)): first put a fuse into the cable old plus, at its source.",
        fixes: [
          {
            title:
              "Add a 100 A fuse (UL 248-15 Class T, marked for at least 20,000 A) within 7 in of the bus bar plus",
            kind: "suggestion",
            gives: { "protectFarEnd.ratingA": 100 },
          },
        ],
      },
    ],
  },
  {
    name: "a wired circuit: what it says of itself is not asked",
    plan: `
      build({ insulationC: 75 });
      const bank = battery({ name: "bank", chemistry: "AGM", capacityAh: 100, shortCircuitA: 900 });
      circuit({ name: "Lamp", from: bank.positive, load: 4, oneWayFt: 9, gauge: 14, fedFromBothEnds: true,
        protect: 5 });
    `,
    finds: "nothing",
  },
]);
