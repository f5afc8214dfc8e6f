import { testRule } from "../rule.tester.ts";
import { doesNotClear } from "./does-not-clear.ts";

// By hand: 6 AWG is 1.296 Ω/km solid × 1.02 for the strands (sources in library/standards), at 75 °C 1.2162 times as much: 1.608
// mΩ/m. Out and back over 60 ft that is 58.8 mΩ, with 10 mΩ in the battery 68.8 mΩ, and 12 V drive 174.4 A. The gates of the
// families, all from memory: ISO 8820-5 may take 15 s from 200 % of its rating and 5 s from 350 %, ISO 8820-3 Type E 7 s from 350
// % and 1 s from 600 %, Types C and F 600 s from 135 % and 5 s from 200 %.
const pump = (protect: string) => `
  build({ insulationC: 75 });
  const bank = battery({ name: "bank", chemistry: "AGM", capacityAh: 100, internalMilliohm: 10 });
  circuit({ name: "Pump", from: bank.positive, load: 20, continuous: false, oneWayFt: 60, gauge: 6,
    dropLimitPercent: 20, protect: ${protect} });
`;
// 14 AWG is 8.286 Ω/km × 1.02, at 105 °C 1.334 times as much, 11.27 mΩ/m: 12 V drive 28.4 A through 60 ft and back.
const lamp = (protect: string) => `
  build({ insulationC: 105 });
  const bank = battery({ name: "bank", chemistry: "AGM", capacityAh: 100, internalMilliohm: 10 });
  circuit({ name: "Lamp", from: bank.positive, load: 2, continuous: false, oneWayFt: 60, gauge: 14,
    protect: ${protect} });
`;

testRule(doesNotClear, [
  { name: "a lone circuit: nothing tells what feeds it", circuits: [{}], finds: "nothing" },
  {
    name: "436 % of a strip's rating: within 5 s",
    plan: pump(`{ ratingA: 40, family: "ISO 8820-5 Type SF 30" }`),
    finds: "nothing",
  },
  {
    name: "349 % of a strip's rating: up to 15 s, for nothing is interpolated",
    plan: pump(`{ ratingA: 50, family: "ISO 8820-5 Type SF 30" }`),
    finds: [
      {
        subject: "Pump",
        record: "Pump",
        on: "protect.ratingA",
        severity: "warning",
        message:
          "A short at its far end may draw only 174 A, at which the 50 A fuse may take up to 15 s (unconfirmed figure), and the limit is 5 s (IEC 60364-4-41:2005, 411.3.2.3, by analogy): use a 40 A fuse.",
        fixes: [
          {
            title: "Use a 40 A fuse",
            gives: { "protect.ratingA": 40, "protect.family": "ISO 8820-5 Type SF 30" },
          },
        ],
      },
    ],
  },
  {
    name: "7 s: a lesser rating, or a quicker family",
    plan: pump(`{ ratingA: 40, family: "ISO 8820-3 Type E" }`),
    finds: [
      {
        on: "protect.ratingA",
        message:
          "A short at its far end may draw only 174 A, at which the 40 A fuse may take up to 7 s, and the limit is 5 s",
        fixes: [
          { title: "Use a 25 A fuse", gives: { "protect.ratingA": 25 } },
          {
            title: "Use a 40 A fuse (ISO 8820-5 Type SF 30)",
            gives: { "protect.ratingA": 40, "protect.family": "ISO 8820-5 Type SF 30" },
          },
        ],
      },
    ],
  },
  {
    name: "284 % of a blade's rating: within 5 s",
    plan: lamp(`{ ratingA: 10, family: "ISO 8820-3 Type F" }`),
    finds: "nothing",
  },
  {
    name: "189 % of a blade's rating: up to 600 s, for Type F has no gate at 160 %",
    plan: lamp(`{ ratingA: 15, family: "ISO 8820-3 Type F" }`),
    finds: [
      {
        on: "protect.ratingA",
        message: "A short at its far end may draw only 28.4 A, at which the 15 A fuse may take up to 600 s",
        fixes: [{ title: "Use a 10 A fuse", gives: { "protect.ratingA": 10 } }],
      },
    ],
  },
  {
    name: "114 % of a blade's rating: it need not open",
    plan: lamp(`{ ratingA: 25, family: "ISO 8820-3 Type F" }`),
    finds: [
      {
        on: "protect.ratingA",
        message:
          "A short at its far end may draw only 28.4 A, at which the 25 A fuse need not open at all: use a 10 A fuse.",
        fixes: [{ title: "Use a 10 A fuse", gives: { "protect.ratingA": 10 } }],
      },
    ],
  },
  {
    name: "above the rating of a device whose family nobody states",
    plan: lamp("25"),
    finds: "nothing",
  },
  {
    name: "below the rating of a device whose family nobody states: nothing opens at that",
    plan: lamp("30"),
    finds: [
      {
        on: "protect",
        message:
          "A short at its far end may draw only 28.4 A, at which the 30 A fuse need not open at all: shorten the path there, or use thicker conductors.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "above the rating of a breaker: its curve stands in its own papers",
    plan: lamp(`{ ratingA: 25, family: "circuit breaker", interruptingA: 3000 }`),
    finds: "nothing",
  },
  {
    name: "below the rating of a breaker",
    plan: lamp(`{ ratingA: 30, family: "circuit breaker", interruptingA: 3000 }`),
    finds: [
      {
        on: "protect.ratingA",
        message:
          "A short at its far end may draw only 28.4 A, at which the 30 A breaker need not open at all: shorten",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "142 % of a Class T fuse: within an hour for certain, and how much sooner nobody tells",
    plan: lamp(`{ ratingA: 20, family: "UL 248-15 Class T", interruptingA: 20000 }`),
    finds: "nothing",
  },
  {
    name: "114 % of a Class T fuse: not even within an hour",
    plan: lamp(`{ ratingA: 25, family: "UL 248-15 Class T", interruptingA: 20000 }`),
    finds: [
      {
        on: "protect.ratingA",
        message:
          "A short at its far end may draw only 28.4 A, at which the 25 A fuse need not open at all (unconfirmed figure): shorten",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "another conductor behind the same fuse",
    plan: `
      build({ insulationC: 105 });
      const bank = battery({ name: "bank", chemistry: "AGM", capacityAh: 100, internalMilliohm: 10 });
      const bus = busBar({ name: "bus bar" });
      cable({ name: "feed", from: bank.positive, to: bus.stud, lengthFt: 3, gauge: 10,
        protect: { ratingA: 15, family: "ISO 8820-3 Type F", interruptingA: 3000 } });
      circuit({ name: "Lamp", from: bus.stud, returnTo: bank.negative, load: 2, oneWayFt: 60, gauge: 14 });
    `,
    finds: [
      {
        record: "feed",
        on: "protect.ratingA",
        message:
          "A short at the far end of the positive conductor of Lamp may draw only 28.1 A, at which the 15 A fuse may take up to 600 s",
        fixes: [{ title: "Use a 10 A fuse", gives: { "protect.ratingA": 10 } }],
      },
    ],
  },
  {
    name: "two ways side by side: the fuse at the other end carries nothing until the first one opens",
    plan: `
      build({ insulationC: 105 });
      const bank = battery({ name: "bank", chemistry: "AGM", capacityAh: 100, internalMilliohm: 10 });
      const [front, rear] = [busBar({ name: "front" }), busBar({ name: "rear" })];
      cable({ name: "feed", from: bank.positive, to: front.stud, lengthFt: 3, gauge: 4,
        protect: { ratingA: 80, family: "ISO 8820-5 Type SF 30" } });
      for (const side of ["left", "right"])
        cable({ name: side, from: front.stud, to: rear.stud, lengthFt: 9, gauge: 6,
          protect: { ratingA: 40, family: "ISO 8820-3 Type C" }, protectFarEnd: { ratingA: 40, family: "ISO 8820-3 Type C" } });
      circuit({ name: "Lamp", from: rear.stud, returnTo: bank.negative, load: 2, oneWayFt: 4, gauge: 10,
        protect: { ratingA: 10, family: "ISO 8820-3 Type F" } });
    `,
    finds: "nothing",
  },
  {
    name: "accepted with a reason",
    plan: lamp(
      `{ ratingA: 15, family: "ISO 8820-3 Type F" }, accept: { "protection/does-not-clear": "in a steel tube all the way" }`,
    ),
    finds: [
      {
        on: "protect.ratingA",
        message: "A short at its far end may draw only 28.4 A",
        fixes: [{ title: "Use a 10 A fuse", gives: {} }],
        accepted: "in a steel tube all the way",
      },
    ],
  },
]);
