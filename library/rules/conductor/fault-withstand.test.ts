import { testRule } from "../rule.tester.ts";
import { faultWithstand } from "./fault-withstand.ts";

// By hand: from 105 °C to 160 °C k = 226 · √ln(394.5 / 339.5) = 87.57 A·√s/mm² (IEC 60949). 8 AWG is 8.366 mm² and withstands
// (87.57 · 8.366)² = 536,700 A²s: 5 s of 327.6 A. ISO 8820-5 takes up to 5 s from 350 % of its rating (280 A of 80 A), and 1 s
// from 600 % (480 A): (480 A)² · 1 s = 230,400 A²s (gates from memory).
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
    name: "just more than the conductor stands",
    plan: pump(328.4),
    finds: [
      {
        subject: "Pump",
        record: "Pump",
        on: "gauge",
        severity: "warning",
        message:
          "A short of 328 A may last 5 s until the 80 A fuse in the positive conductor of Pump opens (unconfirmed figure); after 4.98 s 8 AWG is at 160 °C, the most its insulation withstands: use 6 AWG.",
        values: { finalC: 160 },
        fixes: [{ title: "Use 6 AWG", gives: { gauge: 6, "protect.ratingA": 80 } }],
      },
    ],
  },
  { name: "a greater short opens the fuse sooner: from 600 % on", plan: pump(481), finds: "nothing" },
  {
    name: "a quicker fuse of the same rating would do too",
    plan: pump(230, {
      gauge: 10,
      protect: '{ ratingA: 40, family: "ISO 8820-5 Type SF 30", distanceIn: 6 }',
    }),
    finds: [
      {
        on: "gauge",
        message:
          "A short of 230 A may last 5 s until the 40 A fuse in the positive conductor of Pump opens (unconfirmed figure); after 4.01 s 10 AWG is at 160 °C",
        fixes: [
          { title: "Use 8 AWG", gives: { gauge: 8 } },
          {
            title: "Use a 40 A fuse (ISO 8820-3 Type C)",
            gives: { gauge: 10, protect: { ratingA: 40, family: "ISO 8820-3 Type C", distanceIn: 6 } },
          },
        ],
      },
    ],
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
        message: "A short of 395 A may last 5 s until the 80 A fuse",
        fixes: [{ title: "Use 16 mm²", gives: { mm2: 16 } }],
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
        message: "A short of 229 A may last 5 s until the 40 A fuse in the cable feed opens",
        fixes: [
          { title: "Use 8 AWG", gives: { gauge: 8 } },
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
    name: "accepted with a reason",
    plan: pump(400, { rest: ', accept: { "conductor/fault-withstand": "in a steel tube" }' }),
    finds: [
      {
        on: "gauge",
        message: "A short of 400 A may last 5 s",
        fixes: [{ title: "Use 6 AWG", gives: {} }],
        accepted: "in a steel tube",
      },
    ],
  },
]);
