import { testRule } from "../rule.tester.ts";
import { voltageRating } from "./voltage-rating.ts";

// ISO 8820-3 Types C, E and F are made for 32 V and for 58 V, ISO 8820-12 Type N for 32 V alone (scopes of the standards, read).
const small = { load: 8, gauge: 10 };
const typeN = { ratingA: 10, family: "ISO 8820-12 Type N" };
const typeF = { ratingA: 10, family: "ISO 8820-3 Type F" };

/** A pump at 48 V, beside a charger. */
const charged = (protect: string) => `
  const house = battery({ chemistry: "AGM", nominalV: 48, capacityAh: 100, internalMilliohm: 20 });
  const plus = busBar({ side: "positive" });
  cable({ from: house.positive, to: plus.stud, lengthFt: 2, gauge: 6 });
  const shore = shoreCharger({ outputA: 20, outputV: 59.2 });
  cable({ from: shore.positive, to: plus.stud, lengthFt: 3, gauge: 8 });
  cable({ from: shore.negative, to: house.negative, lengthFt: 3, gauge: 8 });
  circuit({ name: "pump", from: plus.stud, returnTo: house.negative, load: 6, oneWayFt: 4, gauge: 12, protect: { ratingA: 10, ${protect} } });`;

/** One module of 31 V at maximum power on a bank of 12 V. */
function onRoof(protect: string): string {
  return `
  build({ insulationC: 105, lowestC: -15 });
  const house = battery({ chemistry: "AGM", capacityAh: 100, internalMilliohm: 5 });
  const roof = solarArray({ openCircuitV: 40, shortCircuitA: 10, maxPowerV: 31, maxPowerA: 9.4 });
  const tracker = solarController({ maxInputV: 100, outputA: 30, outputV: 14.4 });
  cable({ name: "roof plus", from: roof.positive, to: tracker.solarPositive, lengthFt: 12, gauge: 10, protect: { ratingA: 15, ${protect} } });
  cable({ name: "roof minus", from: tracker.solarNegative, to: roof.negative, lengthFt: 12, gauge: 10 });
  circuit({ name: "charging", from: tracker.positive, to: house, returnTo: tracker.negative, oneWayFt: 3, gauge: 8, protectFarEnd: 40 });`;
}

/** Beside a bank that draws 2,400 A into a short. */
function behindBank(rest: string): string {
  return `
  build({ voltage: 48, insulationC: 105 });
  const house = battery({ chemistry: "LiFePO4", capacityAh: 100, internalMilliohm: 20 });
  const plus = house.positive;${rest}`;
}

testRule(voltageRating, [
  { name: "12 V, and no family stated", circuits: [{}], finds: "nothing" },
  {
    name: "32 V, and no family stated",
    circuits: [{ ...small, voltage: 32, protect: 10 }],
    finds: "nothing",
  },
  {
    name: "48 V, and no family stated",
    circuits: [{ voltage: 48 }],
    finds: [
      {
        on: "protect",
        severity: "warning",
        message:
          "The 50 A fuse may be rated below the 48 V of its circuit (33 CFR 183.455(d)): use one marked for 48 V DC or more, and state it (ratedV), such as a 50 A fuse (ISO 8820-3 Type E, 58 V).",
        fixes: [
          {
            title: "Use a 50 A fuse (ISO 8820-3 Type E, 58 V)",
            kind: "suggestion",
            gives: { protect: { ratingA: 50, family: "ISO 8820-3 Type E", ratedV: 58 } },
          },
        ],
      },
    ],
  },
  {
    name: "48 V, and no family, but its voltage stated",
    circuits: [{ voltage: 48, protect: { ratingA: 50, ratedV: 58 } }],
    finds: "nothing",
  },
  {
    name: "exactly the voltage of the family",
    circuits: [{ ...small, voltage: 32, protect: typeN }],
    finds: "nothing",
  },
  {
    name: "just above the voltage of the family",
    circuits: [{ ...small, voltage: 32.01, protect: typeN }],
    finds: [
      {
        on: "protect.family",
        severity: "error",
        message:
          "The 10 A fuse is rated 32 V (ISO 8820-12 Type N), its circuit has 32.01 V (33 CFR 183.455(d)): use a 10 A fuse (ISO 8820-3 Type F, 58 V).",
        values: { what: "made for less" },
        fixes: [
          {
            title: "Use a 10 A fuse (ISO 8820-3 Type F, 58 V)",
            gives: { protect: { ratingA: 10, family: "ISO 8820-3 Type F", ratedV: 58 } },
          },
        ],
      },
    ],
  },
  {
    name: "48 V, distance and marking stay",
    circuits: [{ ...small, voltage: 48, protect: { ...typeN, distanceIn: 4, interruptingA: 900 } }],
    finds: [
      {
        on: "protect.family",
        severity: "error",
        message: "The 10 A fuse is rated 32 V (ISO 8820-12 Type N), its circuit has 48 V",
        fixes: [
          {
            title: "Use a 10 A fuse (ISO 8820-3 Type F, 58 V)",
            gives: {
              "protect.distanceIn": 4,
              "protect.family": "ISO 8820-3 Type F",
              "protect.interruptingA": 900,
            },
          },
        ],
      },
    ],
  },
  {
    name: "a family for 32 V whose rating no smaller form has",
    circuits: [{ voltage: 48, protect: { ratingA: 50, family: "ISO 8820-5 Type SF 30" } }],
    finds: [
      {
        on: "protect.family",
        severity: "error",
        message:
          "The 50 A fuse is rated 32 V (ISO 8820-5 Type SF 30), its circuit has 48 V (33 CFR 183.455(d)): use a 50 A fuse (ISO 8820-6).",
        fixes: [
          {
            title: "Use a 50 A fuse (ISO 8820-6)",
            gives: { "protect.family": "ISO 8820-6" },
          },
        ],
      },
    ],
  },
  {
    name: "the strip for networks of 48 V",
    circuits: [{ voltage: 48, protect: { ratingA: 50, family: "ISO 20934" } }],
    finds: "nothing",
  },
  {
    name: "a strip in the shape of ISO 8820-5 that is marked for 58 V",
    circuits: [{ voltage: 48, protect: { ratingA: 50, family: "ISO 8820-5 Type SF 30", ratedV: 58 } }],
    finds: "nothing",
  },
  {
    name: "made in two versions, both good for the circuit",
    circuits: [{ ...small, voltage: 24, protect: typeF }],
    finds: "nothing",
  },
  {
    name: "made in two versions, and only one is good for 48 V",
    circuits: [{ ...small, voltage: 48, protect: typeF }],
    finds: [
      {
        on: "protect.family",
        severity: "warning",
        message:
          "The 10 A fuse may be rated 32 V or 58 V (ISO 8820-3 Type F), its circuit has 48 V (33 CFR 183.455(d)): use the one for 58 V.",
        fixes: [{ title: "Use the one for 58 V", kind: "suggestion", gives: { "protect.ratedV": 58 } }],
      },
    ],
  },
  {
    name: "the good version is stated",
    circuits: [{ ...small, voltage: 48, protect: { ...typeF, ratedV: 58 } }],
    finds: "nothing",
  },
  {
    name: "a stated voltage of exactly the circuit's",
    circuits: [{ voltage: 48, protect: { ratingA: 50, ratedV: 48 } }],
    finds: "nothing",
  },
  {
    name: "a stated voltage just below the circuit's",
    circuits: [{ voltage: 48, protect: { ratingA: 50, ratedV: 47.9 } }],
    finds: [
      {
        on: "protect.ratedV",
        severity: "error",
        message:
          "The 50 A fuse is rated 47.9 V, its circuit has 48 V (33 CFR 183.455(d)): use one marked for 48 V DC or more, and state it (ratedV).",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "the wrong version is stated: the same family has the right one",
    circuits: [{ voltage: 48, protect: { ratingA: 50, family: "ISO 8820-3 Type E", ratedV: 32 } }],
    finds: [
      {
        on: "protect.ratedV",
        severity: "error",
        message: "The 50 A fuse is rated 32 V, its circuit has 48 V",
        fixes: [
          {
            title: "Use a 50 A fuse (ISO 8820-3 Type E, 58 V)",
            gives: { "protect.family": "ISO 8820-3 Type E", "protect.ratedV": 58 },
          },
        ],
      },
    ],
  },
  {
    name: "a breaker at 32 V",
    circuits: [{ voltage: 32, protect: { ratingA: 50, family: "circuit breaker" } }],
    finds: "nothing",
  },
  {
    name: "a breaker above what every fuse is made for: its marking tells",
    circuits: [{ voltage: 36, protect: { ratingA: 50, family: "circuit breaker" } }],
    finds: [
      {
        on: "protect.family",
        severity: "info",
        message:
          "The 50 A breaker may be rated below the 36 V of its circuit (33 CFR 183.455(d)): use one marked for 36 V DC or more, and state it (ratedV).",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a breaker whose marking is stated, and is too little",
    circuits: [{ voltage: 48, protect: { ratingA: 50, family: "circuit breaker", ratedV: 24 } }],
    finds: [
      {
        on: "protect.ratedV",
        severity: "error",
        message: "The 50 A breaker is rated 24 V, its circuit has 48 V",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a Class T fuse whose marking is stated",
    circuits: [{ voltage: 48, protect: { ratingA: 50, family: "UL 248-15 Class T", ratedV: 125 } }],
    finds: "nothing",
  },
  {
    name: "both ends, one of them made for less",
    circuits: [
      {
        voltage: 48,
        fedFromBothEnds: true,
        protect: { ratingA: 50, ratedV: 58 },
        protectFarEnd: { ratingA: 50, family: "ISO 8820-5 Type SF 30" },
      },
    ],
    finds: [
      {
        on: "protectFarEnd.family",
        severity: "error",
        message: "The 50 A fuse at the far end is rated 32 V",
        fixes: [
          {
            title: "Use a 50 A fuse (ISO 8820-6)",
            gives: { "protect.ratedV": 58, "protectFarEnd.family": "ISO 8820-6" },
          },
        ],
      },
    ],
  },
  {
    name: "accepted with a reason",
    circuits: [
      {
        ...small,
        voltage: 48,
        protect: typeF,
        accept: { "protection/voltage-rating": "58 V ones are bought" },
      },
    ],
    finds: [
      {
        on: "protect.family",
        severity: "warning",
        message: "The 10 A fuse may be rated 32 V or 58 V",
        fixes: [{ title: "Use the one for 58 V", kind: "suggestion", gives: {} }],
        accepted: "58 V ones are bought",
      },
    ],
  },
  // Between modules and controller the open circuit counts: 40 V × 1.16 at -15 °C, NFPA 70 Table 690.7(A) (read).
  {
    name: "a device for the modules in the cold",
    plan: onRoof("ratedV: 48"),
    finds: "nothing",
  },
  {
    name: "a device for the nominal voltage of the modules, and not for their open circuit",
    plan: onRoof("ratedV: 40"),
    finds: [
      {
        subject: "roof plus",
        record: "roof plus",
        on: "protect.ratedV",
        severity: "error",
        message:
          "The 15 A fuse is rated 40 V, its circuit has, with its modules in open circuit, 46.4 V (33 CFR 183.455(d)): use one marked for 46.4 V DC or more, and state it (ratedV).",
        values: { from: "modules" },
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a blade fuse for 32 V behind modules of 31 V",
    plan: onRoof('family: "ISO 8820-12 Type N"'),
    finds: [
      {
        on: "protect.family",
        severity: "error",
        message: "The 15 A fuse is rated 32 V (ISO 8820-12 Type N), its circuit has, with its modules",
        fixes: [
          {
            title: "Use a 15 A fuse (ISO 8820-3 Type F, 58 V)",
            gives: { "protect.family": "ISO 8820-3 Type F", "protect.ratedV": 58 },
          },
        ],
      },
    ],
  },
  // The place decides the family: a position of a panel takes blade fuses, a post of the bank one that interrupts its short.
  {
    name: "no family stated in a position of a panel, behind a bank with a strong short",
    plan: behindBank(`
      const panel = fusePanel({ positions: 4 });
      cable({ from: plus, to: panel.feed, lengthFt: 1, gauge: 2, protect: { ratingA: 125, family: "UL 248-15 Class T", ratedV: 125, interruptingA: 20000 } });
      cable({ from: panel.negative, to: house.negative, lengthFt: 1, gauge: 2 });
      circuit({ name: "pump", from: panel.branch, load: 6, oneWayFt: 4, gauge: 12, protect: 10 });`),
    finds: [
      {
        subject: "pump",
        record: "pump",
        on: "protect",
        severity: "warning",
        message: "The 10 A fuse may be rated below the 48 V of its circuit",
        fixes: [
          {
            title: "Use a 10 A fuse (ISO 8820-3 Type F, 58 V)",
            kind: "suggestion",
            gives: { protect: { ratingA: 10, family: "ISO 8820-3 Type F", ratedV: 58 } },
          },
        ],
      },
    ],
  },
  {
    name: "no family stated at the post of a bank with a strong short",
    plan: behindBank(
      `circuit({ name: "pump", from: plus, returnTo: house.negative, load: 6, oneWayFt: 4, gauge: 12, protect: 10 });`,
    ),
    finds: [
      {
        subject: "pump",
        record: "pump",
        on: "protect",
        severity: "warning",
        message: "The 10 A fuse may be rated below the 48 V of its circuit",
        fixes: [
          {
            title: "Use a 10 A fuse (UL 248-15 Class T, marked for at least 3,000 A, 48 V)",
            kind: "suggestion",
            gives: {
              protect: { ratingA: 10, family: "UL 248-15 Class T", interruptingA: 3000, ratedV: 48 },
            },
          },
        ],
      },
    ],
  },
  // A bank of 48 V that is charged with 59.2 V: 33 CFR 183.455(d) asks for the nominal voltage alone, the arc knows the real one.
  {
    name: "a fuse for the charging voltage",
    plan: charged(`ratedV: 60`),
    finds: "nothing",
  },
  {
    name: "a fuse for more than the nominal voltage and less than the charging voltage",
    plan: charged(`ratedV: 58`),
    finds: [
      {
        subject: "pump",
        on: "protect.ratedV",
        severity: "error",
        message:
          "The 10 A fuse is rated 58 V, its circuit is charged with 59.2 V (33 CFR 183.455(d)): use one marked for 59.2 V DC or more, and state it (ratedV).",
        values: { from: "charger", voltageV: 59.2 },
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a breaker that is marked with the nominal voltage, which may name the system",
    plan: charged(`family: "circuit breaker", ratedV: 48`),
    finds: [
      {
        subject: "pump",
        on: "protect.ratedV",
        severity: "info",
        message: "The 10 A breaker is rated 48 V, its circuit is charged with 59.2 V",
        fixes: "no fix",
      },
    ],
  },
]);
