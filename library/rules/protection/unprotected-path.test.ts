import { testRule } from "../rule.tester.ts";
import { unprotectedPath } from "./unprotected-path.ts";

// 14 AWG at 75 °C may carry 20 A, 10 AWG 40 A, 6 AWG 95 A (33 CFR 183.425, Table 5).
const bank = (short = 800) => `
  build({ insulationC: 75 });
  const bank = battery({ name: "bank", chemistry: "AGM", capacityAh: 100, shortCircuitA: ${short} });
`;
const busBehind = (mainA: number, short = 800) => `${bank(short)}
  const bus = busBar({ name: "bus bar" });
  cable({ name: "feed", from: bank.positive, to: bus.stud, lengthFt: 3, gauge: 6,
    protect: { ratingA: ${mainA}, family: "UL 248-15 Class T", distanceIn: 6, interruptingA: 20000 } });
`;
const lamp = (more = "") =>
  `circuit({ name: "Lamp", from: bus.stud, returnTo: bank.negative, load: 4, oneWayFt: 9, gauge: 14 ${more}});`;
const charging = (more: string, charger = "shoreCharger({ name: 'charger', outputA: 30 })") => `${bank()}
  const charger = ${charger};
  cable({ name: "charging", from: charger.positive, to: bank.positive, lengthFt: 6, gauge: 10, ${more} });
  cable({ name: "charging return", from: charger.negative, to: bank.negative, lengthFt: 6, gauge: 10 });
`;
const farFuse = "protectFarEnd: { ratingA: 40, family: 'ISO 8820-3 Type E', distanceIn: 6 }";
const nearFuse = "protect: { ratingA: 40, family: 'ISO 8820-3 Type E', distanceIn: 6 }";
const machine = (rest = "") => `alternator({ name: "alternator", ratedA: 30, ${rest} })`;

testRule(unprotectedPath, [
  {
    name: "a lone circuit: another rule asks for its fuse",
    circuits: [{ protect: undefined }],
    finds: "nothing",
  },
  {
    name: "its own fuse",
    plan: `${busBehind(80)} ${lamp(", protect: { ratingA: 5, family: 'ISO 8820-3 Type F', distanceIn: 4 }")}`,
    finds: "nothing",
  },
  {
    name: "a fuse further up of exactly what the conductor may carry",
    plan: `${busBehind(20)} ${lamp()}`,
    finds: "nothing",
  },
  {
    name: "a fuse further up just above what the conductor may carry",
    plan: `${busBehind(25)} ${lamp()}`,
    finds: [
      {
        subject: "Lamp",
        record: "Lamp",
        on: "from",
        severity: "error",
        message:
          "The bank reaches the positive conductor of Lamp through no device below 25 A; 14 AWG may carry 20 A here (33 CFR 183.455(a)): add a 5 A fuse (ISO 8820-3 Type F) within 7 in of the bus bar.",
        values: { past: 25 },
        fixes: [
          {
            title: "Add a 5 A fuse (ISO 8820-3 Type F) within 7 in of the bus bar",
            gives: { protect: { ratingA: 5, family: "ISO 8820-3 Type F", distanceIn: 7 } },
          },
        ],
      },
    ],
  },
  {
    name: "a holder further from the battery than a fuse may be: it moves there, with the rating that the cable asks for",
    plan: farHolder(9),
    finds: [
      {
        subject: "lead",
        on: "from",
        message:
          "The bank reaches the cable lead through no fuse or breaker; 10 AWG may carry 40 A here (33 CFR 183.455(a)): move the 60 A main fuse to the positive terminal of the bank (on), as one of 40 A, or add a 40 A fuse",
        fixes: [
          {
            title: "Add a 40 A fuse (ISO 8820-3 Type C) within 7 in of the positive terminal of the bank",
            kind: "suggestion",
            gives: { protect: { ratingA: 40, family: "ISO 8820-3 Type C", distanceIn: 7 } },
          },
        ],
      },
    ],
  },
  {
    name: "a holder near enough, of too great a rating: the rating alone is wrong",
    plan: farHolder(2),
    finds: [
      {
        subject: "lead",
        on: "from",
        message:
          "The bank reaches the cable lead through no fuse or breaker; 10 AWG may carry 40 A here (33 CFR 183.455(a)): use a 40 A fuse for main fuse.",
        fixes: [
          { title: "Use a 40 A fuse for main fuse", gives: {} },
          {
            title: "Add a 40 A fuse (ISO 8820-3 Type C) within 7 in of the positive terminal of the bank",
            gives: { protect: { ratingA: 40, family: "ISO 8820-3 Type C", distanceIn: 7 } },
          },
        ],
      },
    ],
  },
  {
    // ISO 10133 Annex A, 85 °C: 2.5 mm² 30 A, 4 mm² 40 A, 10 mm² 70 A. The main fuse becomes 40 A for the feed of 4 mm².
    name: "a charger's cable behind a main fuse that becomes lesser anyway: its own size, and that rating",
    plan: `${bank()}
      const main = fuseHolder({ name: "main fuse", ratingA: 60, on: bank.positive });
      const panel = fusePanel({ name: "panel", positions: 6 });
      cable({ name: "feed", from: main.load, to: panel.feed, lengthM: 1, mm2: 4, insulationC: 90 });
      cable({ name: "back", from: panel.negative, to: bank.negative, lengthM: 1, mm2: 4, insulationC: 90 });
      circuit({ name: "lamps", from: panel.branch, load: 5, oneWayFt: 5, gauge: 14, protect: 10 });
      const charger = shoreCharger({ name: "charger", outputA: 30 });
      cable({ name: "charging", from: charger.positive, to: panel.feed, lengthM: 1, mm2: 2.5, insulationC: 90 });
      cable({ name: "charging back", from: charger.negative, to: panel.negative, lengthM: 1, mm2: 2.5, insulationC: 90 });`,
    finds: [
      {
        subject: "feed",
        on: "from",
        message: "The bank reaches the cable feed through no device below 60 A",
        fixes: [
          { title: "Use a 40 A fuse for main fuse", gives: { "main fuse": { ratingA: 40 } } },
          { title: "Use 10 mm²", kind: "suggestion", gives: { mm2: 10 } },
        ],
      },
      {
        subject: "charging",
        on: "to",
        message: "The bank reaches the cable charging through no device below 60 A",
        fixes: [
          {
            title: "Use 4 mm² here and a 40 A fuse for main fuse",
            gives: { mm2: 4, "main fuse": { ratingA: 40 } },
          },
          { title: "Use 10 mm²", kind: "suggestion", gives: { mm2: 10 } },
        ],
      },
    ],
  },
  {
    // Strip fuses of 100 A are made for 32 V, single-bolt ones for 58 V (ISO 8820-5 and 8820-6, scopes).
    name: "the same on 48 V: the voltage of a fuse that is made for it",
    plan: `
      build({ voltage: 48, insulationC: 75 });
      const bank = battery({ chemistry: "AGM", nominalV: 48, capacityAh: 200, shortCircuitA: 9000 });
      const bus = busBar({ name: "bus" });
      cable({ name: "feed", from: bank.positive, to: bus.stud, lengthFt: 3, gauge: "2/0",
        protect: { ratingA: 200, family: "UL 248-15 Class T", distanceIn: 6, interruptingA: 20000, ratedV: 125 } });
      const sine = inverter({ continuousW: 3000, cutOffV: 42 });
      cable({ name: "plus", from: bus.stud, to: sine.positive, lengthFt: 3, gauge: 4 });
      cable({ name: "minus", from: sine.negative, to: bank.negative, lengthFt: 3, gauge: "2/0" });`,
    finds: [
      {
        subject: "plus",
        on: "from",
        message: "The bank reaches the cable plus through no device below 200 A",
        fixes: [
          { title: "Use a 125 A fuse for feed", gives: {} },
          { kind: "suggestion", title: "Use 1/0 AWG", gives: { gauge: "1/0" } },
          {
            title: "Add a 100 A fuse (58 V) within 7 in of the bus",
            gives: { protect: { ratingA: 100, distanceIn: 7, ratedV: 58 } },
          },
        ],
      },
    ],
  },
  {
    name: "a strong bank, at a bus behind another fuse: the rating alone, because the other one may help it in a short",
    plan: `${busBehind(25, 9000)} ${lamp()}`,
    finds: [
      {
        record: "Lamp",
        on: "from",
        message: "The bank reaches the positive conductor of Lamp through no device below 25 A",
        fixes: [
          {
            title: "Add a 5 A fuse within 7 in of the bus bar",
            gives: { protect: { ratingA: 5, distanceIn: 7 } },
          },
        ],
      },
    ],
  },
  {
    name: "a branch of a panel on a strong bank: a fuse in the panel",
    plan: `${bank(9000)}
      const panel = fusePanel({ name: "panel", positions: 6 });
      cable({ name: "feed", from: bank.positive, to: panel.feed, lengthFt: 3, gauge: 6,
        protect: { ratingA: 80, family: "UL 248-15 Class T", distanceIn: 6, interruptingA: 20000 } });
      cable({ name: "back", from: panel.negative, to: bank.negative, lengthFt: 3, gauge: 6 });
      circuit({ name: "Lamp", from: panel.branch, load: 4, oneWayFt: 9, gauge: 14 });`,
    finds: [
      {
        record: "Lamp",
        on: "from",
        message:
          "The bank reaches the positive conductor of Lamp through no device below 80 A; 14 AWG may carry 20 A here (33 CFR 183.455(a)): add a 5 A fuse at the branches of the panel.",
        fixes: [{ title: "Add a 5 A fuse at the branches of the panel", gives: { protect: { ratingA: 5 } } }],
      },
    ],
  },
  {
    name: "a strong bank, straight from the battery: only a marking tells of a fuse that interrupts so much",
    plan: `${bank(9000)} circuit({ name: "Lamp", from: bank.positive, load: 4, oneWayFt: 9, gauge: 14 });`,
    finds: [
      {
        record: "Lamp",
        on: "from",
        message: "The bank reaches the positive conductor of Lamp through no fuse or breaker",
        fixes: [
          {
            title:
              "Add a 6 A fuse (UL 248-15 Class T, marked for at least 9,000 A) within 7 in of the positive terminal of the bank",
            kind: "suggestion",
            gives: {
              protect: { ratingA: 6, family: "UL 248-15 Class T", distanceIn: 7, interruptingA: 9000 },
            },
          },
        ],
      },
    ],
  },
  {
    name: "a thick lead past the main fuse to a second bus with one small load: behind the main fuse, or a fuse for the lead",
    plan: `${busBehind(60)}
      const second = busBar({ name: "second bus", ratedA: 150 });
      cable({ name: "second lead", from: bank.positive, to: second.stud, lengthFt: 3, gauge: 2 });
      circuit({ name: "Radio", from: second.stud, returnTo: bank.negative, load: 4, oneWayFt: 9, gauge: 14, protect: 5 });`,
    finds: [
      {
        record: "second lead",
        on: "from",
        message:
          "The bank reaches the cable second lead through no fuse or breaker; 2 AWG may carry 170 A here (33 CFR 183.455(a)): connect it behind the 60 A fuse in the cable feed, or add a 150 A fuse (ISO 8820-5 Type SF 30) within 7 in of the positive terminal of the bank.",
        fixes: [
          {
            title:
              "Add a 150 A fuse (ISO 8820-5 Type SF 30) within 7 in of the positive terminal of the bank",
            gives: { "protect.ratingA": 150 },
          },
        ],
      },
    ],
  },
  {
    name: "a lead past the main fuse to one load: behind the main fuse only with a fuse of its own",
    plan: `${busBehind(60)}
      circuit({ name: "Radio", from: bank.positive, load: 4, oneWayFt: 9, gauge: 14 });`,
    finds: [
      {
        record: "Radio",
        on: "from",
        message:
          "The bank reaches the positive conductor of Radio through no fuse or breaker; 14 AWG may carry 20 A here (33 CFR 183.455(a)): connect it behind the 60 A fuse in the cable feed, with a device of its own, or add a 5 A fuse (ISO 8820-3 Type F) within 7 in of the positive terminal of the bank.",
        fixes: [
          {
            title: "Add a 5 A fuse (ISO 8820-3 Type F) within 7 in of the positive terminal of the bank",
            gives: { "protect.ratingA": 5 },
          },
        ],
      },
    ],
  },
  {
    name: "a piece of cable before a breaker: the breaker belongs at the bus, and a further fuse is for the builder to decide",
    plan: `${busBehind(80)}
      const trip = breaker({ name: "winch breaker", ratingA: 30 });
      cable({ name: "to breaker", from: bus.stud, to: trip.line, lengthFt: 1, gauge: 10 });
      circuit({ name: "Winch", from: trip.load, returnTo: bank.negative, load: 20, oneWayFt: 3, gauge: 10 });
      ${lamp(", protect: 5")}`,
    finds: [
      {
        record: "to breaker",
        on: "from",
        message:
          "The bank reaches the cable to breaker through no device below 80 A; 10 AWG may carry 40 A here (33 CFR 183.455(a)): move the 30 A winch breaker to the bus bar (on), or add a 25 A fuse (ISO 8820-3 Type F) within 7 in of the bus bar.",
        fixes: [
          {
            title: "Add a 25 A fuse (ISO 8820-3 Type F) within 7 in of the bus bar",
            kind: "suggestion",
            gives: { "protect.ratingA": 25 },
          },
          { title: "Use 6 AWG", kind: "suggestion", gives: { gauge: 6 } },
        ],
      },
    ],
  },
  {
    name: "straight from the battery",
    plan: `${bank()} circuit({ name: "Lamp", from: bank.positive, load: 4, oneWayFt: 9, gauge: 14 });`,
    finds: [
      {
        record: "Lamp",
        on: "from",
        message:
          "The bank reaches the positive conductor of Lamp through no fuse or breaker; 14 AWG may carry 20 A here (33 CFR 183.455(a)): add a 5 A fuse (ISO 8820-3 Type F) within 7 in of the positive terminal of the bank.",
        fixes: [
          {
            title: "Add a 5 A fuse (ISO 8820-3 Type F) within 7 in of the positive terminal of the bank",
            gives: { "protect.ratingA": 5 },
          },
        ],
      },
    ],
  },
  {
    name: "no rating fits between current and conductor: a thicker one with it",
    plan: `${bank()} circuit({ name: "Pump", from: bank.positive, load: 38, oneWayFt: 5, gauge: 10 });`,
    finds: [
      {
        record: "Pump",
        on: "from",
        message:
          "The bank reaches the positive conductor of Pump through no fuse or breaker; 10 AWG may carry 40 A",
        fixes: [
          {
            title:
              "Use 8 AWG and add a 50 A fuse (ISO 8820-3 Type E) within 7 in of the positive terminal of the bank",
            gives: { gauge: 8, "protect.ratingA": 50 },
          },
        ],
      },
    ],
  },
  {
    name: "a cable behind a fuse that is too great for it, with all of its current: a lesser fuse before it first",
    plan: `${busBehind(80)}
      const panel = fusePanel({ name: "panel", positions: 6 });
      cable({ name: "panel feed", from: bus.stud, to: panel.feed, lengthFt: 3, gauge: 10 });
      cable({ name: "panel return", from: panel.negative, to: bank.negative, lengthFt: 3, gauge: 10 });
      circuit({ name: "Lamp", from: panel.branch, load: 12, oneWayFt: 9, gauge: 14, protect: 15 });`,
    finds: [
      {
        record: "panel feed",
        on: "from",
        message:
          "The bank reaches the cable panel feed through no device below 80 A; 10 AWG may carry 40 A here (33 CFR 183.455(a)): use a 40 A fuse for feed.",
        fixes: [
          { title: "Use a 40 A fuse for feed", gives: { feed: { "protect.ratingA": 40 } } },
          { title: "Use 6 AWG", kind: "suggestion", gives: { gauge: 6 } },
          {
            title: "Add a 35 A fuse (ISO 8820-3 Type C) within 7 in of the bus bar",
            gives: { "protect.ratingA": 35 },
          },
        ],
      },
    ],
  },
  {
    name: "a cable behind a fuse that is too great for it, beside others: a fuse of its own first, lesser than the one before it",
    plan: `${busBehind(50)}
      const panel = fusePanel({ name: "panel", positions: 6 });
      cable({ name: "panel feed", from: bus.stud, to: panel.feed, lengthFt: 3, gauge: 10 });
      cable({ name: "panel return", from: panel.negative, to: bank.negative, lengthFt: 3, gauge: 8 });
      circuit({ name: "Lamp", from: panel.branch, load: 12, oneWayFt: 9, gauge: 14, protect: 15 });
      circuit({ name: "Oven", from: panel.branch, load: 12, oneWayFt: 9, gauge: 14, protect: 15 });
      circuit({ name: "Heater", from: bus.stud, returnTo: bank.negative, load: 10, oneWayFt: 9, gauge: 14,
        protect: { ratingA: 15, family: "ISO 8820-3 Type F", distanceIn: 4 } });`,
    finds: [
      {
        record: "panel feed",
        on: "from",
        message:
          "The bank reaches the cable panel feed through no device below 50 A; 10 AWG may carry 40 A here (33 CFR 183.455(a)): add a 40 A fuse (ISO 8820-3 Type C) within 7 in of the bus bar.",
        fixes: [
          {
            title: "Add a 40 A fuse (ISO 8820-3 Type C) within 7 in of the bus bar",
            gives: { "protect.ratingA": 40 },
          },
          { title: "Use 8 AWG", kind: "suggestion", gives: { gauge: 8 } },
        ],
      },
    ],
  },
  {
    name: "a new fuse for which the return would be too thin: the return becomes thicker too",
    plan: `build({ insulationC: 105 });
      const start = battery({ name: "start", chemistry: "AGM", capacityAh: 80, shortCircuitA: 2200 });
      const engine = alternator({ name: "alternator", ratedA: 100 });
      cable({ name: "plus", from: engine.positive, to: start.positive, lengthFt: 5, gauge: 6 });
      cable({ name: "minus", from: engine.negative, to: start.negative, lengthFt: 5, gauge: 6 });`,
    finds: [
      {
        record: "plus",
        on: "to",
        message:
          "The battery start reaches the cable plus through no fuse or breaker; 6 AWG may carry 120 A here (33 CFR 183.455(a)): use 4 AWG and add a 125 A fuse (ISO 20934) within 7 in of the positive terminal of the battery start, and use 4 AWG for minus.",
        fixes: [
          {
            title:
              "Use 4 AWG and add a 125 A fuse (ISO 20934) within 7 in of the positive terminal of the battery start, and use 4 AWG for minus",
            gives: { gauge: 4, "protectFarEnd.ratingA": 125, minus: { gauge: 4 } },
          },
        ],
      },
    ],
  },
  {
    name: "nothing flows in any scenario, to a bus: the greatest rating that protects the conductor and suits",
    plan: `${bank()}
      const bus = busBar({ name: "bus bar" });
      cable({ name: "feed", from: bank.positive, to: bus.stud, lengthFt: 3, gauge: 6 });
      circuit({ name: "Lamp", from: bank.positive, load: 4, oneWayFt: 9, gauge: 14,
        protect: { ratingA: 5, family: "ISO 8820-3 Type F", distanceIn: 4 } });`,
    finds: [
      {
        record: "feed",
        on: "from",
        message: "The bank reaches the cable feed through no fuse or breaker; 6 AWG may carry 95 A",
        fixes: [
          {
            title: "Add an 80 A fuse (ISO 8820-3 Type E) within 7 in of the positive terminal of the bank",
            gives: { "protect.ratingA": 80 },
          },
        ],
      },
    ],
  },
  {
    name: "a charger that gives just what the conductor may carry needs no fuse at its end",
    plan: charging(farFuse, "shoreCharger({ name: 'charger', outputA: 40 })"),
    finds: "nothing",
  },
  {
    name: "a charger's cable without any: the battery at its end needs one",
    plan: charging(""),
    finds: [
      {
        record: "charging",
        on: "to",
        message:
          "The bank reaches the cable charging through no fuse or breaker; 10 AWG may carry 40 A here (33 CFR 183.455(a)): add a 40 A fuse (ISO 8820-3 Type C) within 7 in of the positive terminal of the bank.",
        fixes: [
          {
            title: "Add a 40 A fuse (ISO 8820-3 Type C) within 7 in of the positive terminal of the bank",
            gives: {
              protect: undefined,
              protectFarEnd: { ratingA: 40, family: "ISO 8820-3 Type C", distanceIn: 7 },
            },
          },
        ],
      },
    ],
  },
  {
    name: "a machine without a limit, and a bank: one at each end",
    plan: charging("", machine("selfLimiting: false")),
    finds: [
      {
        record: "charging",
        on: "from",
        message:
          "The bank and the alternator reach the cable charging through no fuse or breaker; 10 AWG may carry 40 A",
        fixes: [
          {
            title: "Add a 35 A fuse (ISO 8820-3 Type C) within 7 in of each end",
            gives: { "protect.ratingA": 35, "protectFarEnd.ratingA": 35 },
          },
        ],
      },
    ],
  },
  {
    name: "a machine that limits itself below what the conductor may carry",
    plan: charging(farFuse, machine()),
    finds: "nothing",
  },
  {
    name: "exactly 120 % of a machine without a limit",
    plan: charging(
      "protect: { ratingA: 40, family: 'ISO 8820-3 Type E' }, protectFarEnd: { ratingA: 36, interruptingA: 1000 }",
      machine("selfLimiting: false"),
    ),
    finds: "nothing",
  },
  {
    name: "more than 120 % of a machine without a limit, at both ends",
    plan: charging(
      "protect: { ratingA: 40, family: 'ISO 8820-3 Type E' }, protectFarEnd: { ratingA: 37, interruptingA: 1000 }",
      machine("selfLimiting: false, continuousPercent: 50"),
    ),
    finds: [
      {
        record: "charging",
        on: "protectFarEnd.ratingA",
        severity: "error",
        message:
          "The 37 A fuse at the far end is above 36 A, 120 % of the 30 A of the alternator, which does not limit its current (33 CFR 183.460(b), law for boats with petrol engines other than outboards): use a 35 A fuse at the far end.",
        fixes: [{ title: "Use a 35 A fuse at the far end", gives: { "protectFarEnd.ratingA": 35 } }],
      },
    ],
  },
  {
    name: "the limit of a machine in a vehicle, for which it is no law",
    plan: charging(
      "protect: { ratingA: 40, family: 'ISO 8820-3 Type E' }, protectFarEnd: { ratingA: 37, interruptingA: 1000 }",
      machine("selfLimiting: false, continuousPercent: 50"),
    ).replace("build({", 'build({ installedIn: "vehicle",'),
    finds: [
      {
        on: "protectFarEnd.ratingA",
        severity: "warning",
        message:
          "The 37 A fuse at the far end is above 36 A, 120 % of the 30 A of the alternator, which does not limit its current (33 CFR 183.460(b), taken over: law only for boats with petrol engines other than outboards)",
        fixes: [{ title: "Use a 35 A fuse at the far end", gives: { "protectFarEnd.ratingA": 35 } }],
      },
    ],
  },
  {
    name: "the same in a boat with a petrol engine",
    plan: charging(
      "protect: { ratingA: 40, family: 'ISO 8820-3 Type E' }, protectFarEnd: { ratingA: 37, interruptingA: 1000 }",
      machine("selfLimiting: false, continuousPercent: 50"),
    ).replace("build({", 'build({ installedIn: "boat with petrol engine",'),
    finds: [
      {
        on: "protectFarEnd.ratingA",
        severity: "error",
        message:
          "The 37 A fuse at the far end is above 36 A, 120 % of the 30 A of the alternator, which does not limit its current (33 CFR 183.460(b), law for this boat)",
        fixes: [{ title: "Use a 35 A fuse at the far end", gives: { "protectFarEnd.ratingA": 35 } }],
      },
    ],
  },
  {
    name: "a fuse at the wrong end: no source there",
    plan: `${bank()} circuit({ name: "Lamp", from: bank.positive, load: 4, oneWayFt: 9, gauge: 14, protectFarEnd: 5 });`,
    finds: [
      {
        record: "Lamp",
        on: "from",
        message: "The bank reaches the positive conductor of Lamp through no fuse or breaker",
        fixes: [
          {
            title: "Add a 5 A fuse (ISO 8820-3 Type F) within 7 in of the positive terminal of the bank",
            gives: { "protect.ratingA": 5, protectFarEnd: 5 },
          },
        ],
      },
    ],
  },
  {
    name: "a fuse at the charger's end alone: that the battery's end needs one too is another rule's matter",
    plan: charging(nearFuse),
    finds: "nothing",
  },
  {
    name: "links between batteries of one bank",
    plan: `${busBehind(80)}
      const other = battery({ name: "other", chemistry: "AGM", capacityAh: 100, shortCircuitA: 800 });
      cable({ name: "link", from: bank.positive, to: other.positive, lengthFt: 1, gauge: 6 });
      cable({ name: "link return", from: bank.negative, to: other.negative, lengthFt: 1, gauge: 6 });`,
    finds: "nothing",
  },
  // 33 CFR 183.455(e): supply conductors of cranking-motor circuits are exempt; 183.460(a): the main feed to a cranking motor.
  {
    name: "the feed of an engine's starter motor, through a switch",
    plan: engine(),
    finds: "nothing",
  },
  {
    name: "the same for a motor that is no starter motor",
    plan: engine({ starter: "motor({ runningA: 100, startingA: 250 })" }),
    finds: [
      {
        record: "to the switch",
        on: "from",
        message: "The battery start reaches the cable to the switch through no fuse or breaker",
        fixes: [
          {
            title:
              "Add a 125 A fuse (UL 248-15 Class T, marked for at least 3,000 A) within 7 in of the positive terminal of the battery start",
            kind: "suggestion",
            gives: { "protect.ratingA": 125 },
          },
        ],
      },
      {
        record: "to the starter",
        on: "from",
        message: "The battery start reaches the cable to the starter through no fuse or breaker",
        fixes: [
          {
            title:
              "Add a 125 A fuse (UL 248-15 Class T, marked for at least 3,000 A) within 7 in of the positive terminal of the battery start",
            kind: "suggestion",
            gives: { "to the switch": { "protect.ratingA": 125 } },
          },
          {
            title: "Add a 125 A fuse (ISO 20934) within 7 in of the load side of the disconnect off",
            kind: "suggestion",
            gives: { "protect.ratingA": 125 },
          },
        ],
      },
    ],
  },
  {
    name: "a conductor that only joins the feed is not exempt",
    plan: engine({
      more: 'circuit({ name: "Lamp", from: starter.positive, returnTo: starter.negative, load: 4, oneWayFt: 9, gauge: 14 });',
    }),
    finds: [
      {
        record: "Lamp",
        on: "from",
        message:
          "The battery start reaches the positive conductor of Lamp through no fuse or breaker; 14 AWG may carry",
        fixes: [
          {
            title:
              "Add a 6 A fuse (UL 248-15 Class T, marked for at least 3,000 A) within 7 in of the positive terminal of starter",
            kind: "suggestion",
            gives: { "protect.ratingA": 6 },
          },
        ],
      },
    ],
  },
  {
    name: "a relay that joins two batteries, with a fuse on one side: the other one is no fuse for the present current",
    plan: `
      build({ insulationC: 105 });
      const [house, start] = ["house", "start"].map((name) => battery({ name, chemistry: "AGM", capacityAh: 100, internalMilliohm: 5 }));
      const link = relay({ name: "link", ratedA: 200 });
      cable({ name: "house to relay", from: house.positive, to: link.line, lengthFt: 3, gauge: 4,
        protect: { ratingA: 110, family: "UL 248-15 Class T", interruptingA: 20_000 }, protectFarEnd: { ratingA: 110, family: "UL 248-15 Class T", interruptingA: 20_000 } });
      cable({ name: "relay to start", from: link.load, to: start.positive, lengthFt: 2, gauge: 4 });
      cable({ name: "minus", from: house.negative, to: start.negative, lengthFt: 3, gauge: 4 });
      circuit({ name: "lamp", from: house.positive, returnTo: house.negative, load: 2, oneWayFt: 5, gauge: 14, protect: { ratingA: 3, family: "UL 248-15 Class T", interruptingA: 20_000 } });`,
    finds: [
      {
        subject: "relay to start",
        on: "to",
        message:
          "The battery start reaches the cable relay to start through no fuse or breaker; 4 AWG may carry 160 A here (33 CFR 183.455(a)): add a 150 A fuse (UL 248-15 Class T, marked for at least 3,000 A) within 7 in of the positive terminal of the battery start.",
        fixes: [
          {
            title:
              "Add a 150 A fuse (UL 248-15 Class T, marked for at least 3,000 A) within 7 in of the positive terminal of the battery start",
            kind: "suggestion",
            gives: { "protectFarEnd.ratingA": 150 },
          },
        ],
      },
    ],
  },
  {
    name: "accepted with a reason",
    plan: `${bank()} circuit({ name: "Starter", from: bank.positive, load: 4, oneWayFt: 9, gauge: 14,
      accept: { "protection/unprotected-path": "the law exempts a starter motor's supply" } });`,
    finds: [
      {
        on: "from",
        message: "The bank reaches the positive conductor of Starter through no fuse or breaker",
        accepted: "the law exempts a starter motor's supply",
        fixes: [
          {
            title: "Add a 5 A fuse (ISO 8820-3 Type F) within 7 in of the positive terminal of the bank",
            gives: {},
          },
        ],
      },
    ],
  },
]);

/** A battery, a switch and the starter motor of an engine, with no fuse. */
function engine({ starter = "starterMotor({ crankingA: 250 })", more = "" } = {}): string {
  return `
    build({ insulationC: 105 });
    const start = battery({ name: "start", chemistry: "flooded lead-acid", capacityAh: 80, internalMilliohm: 5 });
    const off = disconnect({ ratedA: 300 });
    const starter = ${starter};
    cable({ name: "to the switch", from: start.positive, to: off.line, lengthFt: 6, gauge: "1/0" });
    cable({ name: "to the starter", from: off.load, to: starter.positive, lengthFt: 3, gauge: "1/0" });
    cable({ name: "engine return", from: starter.negative, to: start.negative, lengthFt: 6, gauge: "1/0" });
    ${more}`;
}

/** A lead from the battery to a holder with too great a fuse, and lamps behind it. */
function farHolder(lengthFt: number): string {
  return `${bank()}
    const holder = fuseHolder({ name: "main fuse", ratingA: 60 });
    const plus = busBar({ name: "plus" });
    cable({ name: "lead", from: bank.positive, to: holder.line, lengthFt: ${lengthFt}, gauge: 10 });
    cable({ name: "to the bus", from: holder.load, to: plus.stud, lengthFt: 1, gauge: 4 });
    circuit({ name: "lamps", from: plus.stud, returnTo: bank.negative, load: 10, oneWayFt: 5, gauge: 10, protect: 15 });
    circuit({ name: "fan", from: plus.stud, returnTo: bank.negative, load: 10, oneWayFt: 5, gauge: 10, protect: 15 });`;
}
