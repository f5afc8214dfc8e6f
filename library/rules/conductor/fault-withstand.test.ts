import { testRule } from "../rule.tester.ts";
import { faultWithstand } from "./fault-withstand.ts";

// By hand: from 105 °C to 160 °C k = 226 · √ln(394.5 / 339.5) = 87.57 A·√s/mm² (IEC 60949). 8 AWG is 8.366 mm² and withstands
// (87.57 · 8.366)² = 536,700 A²s: 5 s of 327.6 A. ISO 8820-5 takes up to 5 s from 350 % of its rating (280 A of 80 A), and 1 s
// from 600 % (480 A): (480 A)² · 1 s = 230,400 A²s (gates from memory: information). A short at the far end of 6 ft and back, hot,
// through another 10.3 mΩ, draws less than one at the battery: all currents between are judged, and each gate.
const pump = (shortA: number, more: { gauge?: number; protect?: string; rest?: string } = {}) => `
  build({ insulationC: 105 });
  const bank = battery({ name: "bank", chemistry: "AGM", capacityAh: 100, shortCircuitA: ${shortA} });
  circuit({ name: "Pump", from: bank.positive, load: 30, oneWayFt: 6, dropLimitPercent: 20, gauge: ${more.gauge ?? 8},
    protect: ${more.protect ?? '{ ratingA: 80, family: "ISO 8820-5 Type SF 30", distanceIn: 6 }'} ${more.rest ?? ""}});
`;

testRule(faultWithstand, [
  { name: "a lone circuit: nothing tells what feeds it", circuits: [{}], finds: "nothing" },
  { name: "just what the conductor stands", plan: pump(327), finds: "nothing" },
  {
    name: "just more than the conductor stands, by a recalled gate: information, and no fix by itself",
    plan: pump(328.4),
    finds: [
      {
        subject: "Pump",
        record: "Pump",
        on: "gauge",
        severity: "info",
        message:
          "A short of 328 A may last 5 s until the 80 A fuse in the positive conductor of Pump opens (unconfirmed figure); after 4.98 s 8 AWG is at 160 °C, the most its insulation withstands: use 6 AWG.",
        values: { finalC: 160 },
        fixes: [{ title: "Use 6 AWG", kind: "suggestion", gives: { gauge: 6, "protect.ratingA": 80 } }],
      },
    ],
  },
  {
    // At the far end about 330 A, at the battery 600 A: the worst of all is just below 600 % of 80 A.
    name: "the least short is below a gate and the greatest above: the worst is just below it",
    plan: pump(600),
    finds: [
      {
        on: "gauge",
        severity: "info",
        message:
          "A short of just under 480 A may last 5 s until the 80 A fuse in the positive conductor of Pump opens (unconfirmed figure); after 2.33 s 8 AWG",
        fixes: [{ title: "Use 6 AWG", kind: "suggestion", gives: { gauge: 6 } }],
      },
    ],
  },
  {
    // 12 V over 6.4 mΩ + 10.3 mΩ: at least 700 A, above 600 %. (480 A)² · 1 s is 230,400 A²s.
    name: "every short of it is above the last gate, and opens the fuse within 1 s",
    plan: pump(2000),
    finds: "nothing",
  },
  {
    // 60 A strip fuse: 5 s just below 360 A are 648,000 A²s; 10 AWG withstands (87.57 · 5.26)² = 212,000.
    name: "10 AWG of 105 °C behind the largest strip fuse that it allows",
    plan: pump(2000, {
      gauge: 10,
      protect: '{ ratingA: 60, family: "ISO 8820-5 Type SF 30", distanceIn: 6 }',
      rest: ", oneWayFt: 14",
    }),
    finds: [
      {
        on: "gauge",
        severity: "info",
        message: "A short of just under 360 A may last 5 s until the 60 A fuse",
        fixes: [{ title: "Use 6 AWG", kind: "suggestion", gives: { gauge: 6 } }],
      },
    ],
  },
  {
    name: "the builder's own opening times carry an error",
    plan: pump(400, {
      protect:
        '{ ratingA: 80, family: "circuit breaker", interruptingA: 5000, distanceIn: 6, openingTimes: [{ atPercent: 350, withinS: 5 }, { atPercent: 2000, withinS: 0.1 }] }',
    }),
    finds: [
      {
        on: "gauge",
        severity: "error",
        message:
          "A short of 400 A may last 5 s until the 80 A breaker in the positive conductor of Pump opens; after 3.35 s 8 AWG is at 160 °C, the most its insulation withstands: use 6 AWG.",
        fixes: [{ title: "Use 6 AWG", gives: { gauge: 6 } }],
      },
    ],
  },
  {
    // 16 AWG withstands (87.57 · 1.309)² = 13,100 A²s, and 400 A for 1 s are 160,000; (87.57 · 5.26)² = 212,000 of 10 AWG.
    name: "a conductor more than two sizes thicker is no repair of a slow breaker",
    plan: pump(400, {
      gauge: 16,
      protect:
        '{ ratingA: 20, family: "circuit breaker", interruptingA: 5000, distanceIn: 6, openingTimes: [{ atPercent: 500, withinS: 1 }, { atPercent: 5000, withinS: 0.1 }] }',
    }),
    finds: [
      {
        on: "gauge",
        severity: "error",
        message:
          "A short of 400 A may last 1 s until the 20 A breaker in the positive conductor of Pump opens; after 0.0821 s 16 AWG is at 160 °C, the most its insulation withstands: use a faster breaker, or 10 AWG.",
        fixes: [{ title: "Use 10 AWG", kind: "suggestion", gives: { gauge: 10 } }],
      },
    ],
  },
  {
    // Type E, 600 %, read: 210 A for 1 s, 44,100 A²s; 14 AWG withstands (87.57 · 2.081)² = 33,200.
    name: "a gate that was read carries an error at its own current",
    plan: pump(250, {
      gauge: 14,
      protect: '{ ratingA: 35, family: "ISO 8820-3 Type E", distanceIn: 6 }',
    }),
    finds: [
      {
        on: "gauge",
        severity: "error",
        message:
          "A short of 210 A may last 1 s until the 35 A fuse in the positive conductor of Pump opens; after 0.753 s 14 AWG",
        fixes: [
          { title: "Use 12 AWG", gives: { gauge: 12 } },
          { title: "Use a 35 A fuse (ISO 8820-3 Type C)", gives: { "protect.family": "ISO 8820-3 Type C" } },
        ],
      },
    ],
  },
  {
    // Type C, 200 %, read: 30 A · 2 for 5 s is 18,000 A²s; just below 350 % (105 A) it would be 55,100, more than 14 AWG withstands.
    name: "between two gates that were read, no time is stated: information",
    plan: pump(300, {
      gauge: 14,
      protect: '{ ratingA: 30, family: "ISO 8820-3 Type C", distanceIn: 6 }',
      rest: ", oneWayFt: 20",
    }),
    finds: [
      {
        on: "gauge",
        severity: "info",
        message:
          "A short of just under 105 A may last 5 s until the 30 A fuse in the positive conductor of Pump opens (its standard states no shorter time); after 3.01 s 14 AWG",
        fixes: [{ title: "Use 12 AWG", kind: "suggestion", gives: { gauge: 12 } }],
      },
    ],
  },
  {
    // 14 AWG withstands 33,200 A²s.
    name: "a let-through that the builder states, above the withstand",
    plan: pump(2000, {
      gauge: 14,
      protect:
        '{ ratingA: 30, family: "UL 248-15 Class T", interruptingA: 20000, letThroughA2s: 34000, distanceIn: 6 }',
    }),
    finds: [
      {
        on: "gauge",
        severity: "error",
        message: "A short of 2,000 A may last 8.5 ms until the 30 A fuse",
        fixes: [{ title: "Use 12 AWG", gives: { gauge: 12 } }],
      },
    ],
  },
  {
    name: "a let-through that the builder states, below it",
    plan: pump(2000, {
      gauge: 14,
      protect:
        '{ ratingA: 30, family: "UL 248-15 Class T", interruptingA: 20000, letThroughA2s: 33000, distanceIn: 6 }',
    }),
    finds: "nothing",
  },
  {
    name: "insulation for more than 105 °C bears 250 °C",
    plan: pump(400, { rest: ", insulationC: 125" }),
    finds: "nothing",
  },
  {
    name: "7 s are longer than the equation is good for: not judged",
    plan: pump(400, { protect: '{ ratingA: 80, family: "ISO 8820-3 Type E", distanceIn: 6 }' }),
    finds: "nothing",
  },
  {
    name: "no family, no time to open",
    plan: pump(400, { protect: "80" }),
    finds: "nothing",
  },
  {
    name: "a fuse above what the conductor may carry is another rule's matter",
    plan: pump(400, { gauge: 10 }),
    finds: "nothing",
  },
  {
    name: "wires side by side share the heat",
    plan: pump(400, { rest: ", parallel: 2, gauge: 10" }),
    finds: "nothing",
  },
  {
    name: "a metric conductor: 10 mm² stand (87.57 · 10)² A²s, 5 s of 391.6 A",
    plan: `
      build({ insulationC: 105 });
      const bank = battery({ name: "bank", chemistry: "AGM", capacityAh: 100, shortCircuitA: 395 });
      circuit({ name: "Pump", from: bank.positive, load: 30, oneWayM: 2, mm2: 10,
        protect: { ratingA: 80, family: "ISO 8820-5 Type SF 30", distanceMm: 100 } });
    `,
    finds: [
      {
        on: "mm2",
        severity: "info",
        message: "A short of 395 A may last 5 s until the 80 A fuse",
        fixes: [{ title: "Use 16 mm²", kind: "suggestion", gives: { mm2: 16 } }],
      },
    ],
  },
  {
    name: "the fuse sits in another conductor: there its own builder decides",
    plan: `
      build({ insulationC: 105 });
      const bank = battery({ name: "bank", chemistry: "AGM", capacityAh: 100, shortCircuitA: 230 });
      const bus = busBar({ name: "bus bar" });
      cable({ name: "feed", from: bank.positive, to: bus.stud, lengthFt: 1, gauge: 4,
        protect: { ratingA: 40, family: "ISO 8820-5 Type SF 30", distanceIn: 6 } });
      circuit({ name: "Pump", from: bus.stud, returnTo: bank.negative, load: 30, oneWayFt: 6, gauge: 10 });
    `,
    finds: [
      {
        record: "Pump",
        on: "gauge",
        severity: "info",
        message: "A short of 229 A may last 5 s until the 40 A fuse in the cable feed opens",
        fixes: [
          { title: "Use 8 AWG", kind: "suggestion", gives: { gauge: 8 } },
          {
            title: "Use a 40 A fuse (ISO 8820-3 Type C)",
            kind: "suggestion",
            gives: { feed: { "protect.family": "ISO 8820-3 Type C" } },
          },
        ],
      },
    ],
  },
  {
    // 60 A strip fuse, 12 AWG as the way back: just below 360 A for 5 s are 648,000 A²s; it withstands (87.57 · 3.31)² = 84,000.
    name: "a thinner return carries the same short",
    plan: `
      build({ insulationC: 105 });
      const bank = battery({ name: "bank", chemistry: "AGM", capacityAh: 100, shortCircuitA: 2000 });
      const heater = load({ name: "heater", currentA: 30 });
      cable({ name: "feed", from: bank.positive, to: heater.positive, lengthFt: 8, gauge: 2,
        protect: { ratingA: 40, family: "ISO 8820-5 Type SF 30", distanceIn: 6 } });
      cable({ name: "back", from: heater.negative, to: bank.negative, lengthFt: 24, gauge: 12 });
    `,
    finds: [
      {
        record: "back",
        on: "gauge",
        severity: "info",
        message: "A short of just under 240 A may last 5 s until the 40 A fuse in the cable feed opens",
        fixes: [{ title: "Use 8 AWG", kind: "suggestion", gives: { gauge: 8 } }],
      },
    ],
  },
  {
    name: "accepted with a reason",
    plan: pump(400, { rest: ', accept: { "conductor/fault-withstand": "in a steel tube" }' }),
    finds: [
      {
        on: "gauge",
        severity: "info",
        message: "A short of 400 A may last 5 s",
        fixes: [{ title: "Use 6 AWG", kind: "suggestion", gives: {} }],
        accepted: "in a steel tube",
      },
    ],
  },
]);
