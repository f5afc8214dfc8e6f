import { type RuleCase, testRule } from "../rule.tester.ts";
import { protectionInterrupting } from "./interrupting.ts";

// A device on the battery's own terminal has to interrupt exactly the battery's fault current there. ISO 8820-3: 1,000 A;
// ISO 8820-5: 2,000 A; ISO 20934: 2,500 A (scopes, read).
const plan = (bank: string, protect: string, more = "", voltage = 12) => `
  build({ insulationC: 75, voltage: ${voltage} });
  const bank = battery({ name: "bank", chemistry: "AGM", capacityAh: 100, ${bank} });
  circuit({ name: "Pump", from: bank.positive, load: 32, oneWayFt: 9, gauge: 6, protect: ${protect}${more} });
`;
const blade = `{ ratingA: 40, family: "ISO 8820-3 Type E", distanceIn: 6 }`;
const strip = `{ ratingA: 40, family: "ISO 8820-5 Type SF 30", distanceIn: 6 }`;
const ratedAt = (atV: number) =>
  `{ ratingA: 40, family: "circuit breaker", interruptingA: 5_000, interruptingAtV: ${atV}, ratedV: 60, distanceIn: 6 }`;
/** 3 ft of 1/0 AWG have 0.301 mΩ at 20 °C: 12.85 V / (12.85 V / 1,500 A + 0.301 mΩ) = 1,449 A remain at the bus bar. */
const behindMain = (protect: string) => `
  build({ insulationC: 75 });
  const bank = battery({ name: "bank", chemistry: "AGM", capacityAh: 100, shortCircuitA: 1500 });
  const bus = busBar({ name: "bus bar" });
  cable({ name: "feed", from: bank.positive, to: bus.stud, lengthFt: 3, gauge: "1/0",
    protect: { ratingA: 200, family: "UL 248-15 Class T", distanceIn: 6, interruptingA: 20000 } });
  circuit({ name: "Pump", from: bus.stud, returnTo: bank.negative, load: 32, oneWayFt: 9, gauge: 6, protect: ${protect} });
`;

/** Three branches of a panel on lithium behind a Class T fuse; 4 mΩ, 14.6 V when full. */
const panel = (
  more: { ofPanel?: string; ofMain?: string; ofLamp?: string; accept?: string; feedFt?: number } = {},
) => `
  build({ insulationC: 75 });
  const bank = battery({ name: "bank", chemistry: "LiFePO4", capacityAh: 200, internalMilliohm: 4 });
  const panel = fusePanel({ name: "panel", positions: 6 ${more.ofPanel ?? ""}});
  cable({ name: "feed", from: bank.positive, to: panel.feed, lengthFt: ${more.feedFt ?? 3}, gauge: 4,
    protect: { ratingA: 110, family: "UL 248-15 Class T", distanceIn: 6, interruptingA: 20000 ${more.ofMain ?? ""}} });
  cable({ name: "back", from: panel.negative, to: bank.negative, lengthFt: ${more.feedFt ?? 3}, gauge: 4 });
  circuit({ name: "Lamp", from: panel.branch, load: 5, oneWayFt: 4, gauge: 14,
    protect: { ratingA: 10, family: "ISO 8820-3 Type C" ${more.ofLamp ?? ""}} ${more.accept ?? ""}});
  circuit({ name: "Fan", from: panel.branch, load: 5, oneWayFt: 4, gauge: 14, protect: { ratingA: 10, family: "ISO 8820-3 Type C" } });
  circuit({ name: "Pump", from: panel.branch, load: 5, oneWayFt: 4, gauge: 14, protect: 10 });
`;
const tested = (family: string, ratingA: number, interruptingA: number) =>
  `, testedBehind: { family: "${family}", ratingA: ${ratingA}, interruptingA: ${interruptingA} }`;

testRule(protectionInterrupting, [
  { name: "a lone circuit: nothing tells what feeds it", circuits: [{}], finds: "nothing" },
  { name: "just what the family interrupts", plan: plan("shortCircuitA: 1000", blade), finds: "nothing" },
  {
    name: "a rating that is stated for the voltage of its circuit",
    plan: plan("shortCircuitA: 1000", ratedAt(12)),
    finds: "nothing",
  },
  {
    name: "a rating that is stated for less voltage than its circuit has",
    plan: plan("nominalV: 24, shortCircuitA: 1000", ratedAt(12), "", 24),
    finds: [
      {
        subject: "Pump",
        on: "protect.interruptingAtV",
        severity: "warning",
        message:
          "The 40 A breaker can interrupt 5,000 A at 12 V, its circuit has 24 V, and a short right behind it draws 1,000 A: use a breaker that interrupts 1,000 A at 24 V, and state both (interruptingA, interruptingAtV).",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a rating that is stated for the nominal voltage, below that of a charger: information",
    plan: `${plan("shortCircuitA: 1000", ratedAt(12))}
      const charger = shoreCharger({ outputA: 5, outputV: 14.4 });
      circuit({ name: "Charger", from: bank.positive, to: charger, oneWayFt: 2, gauge: 12, protect: { ratingA: 10, family: "ISO 8820-3 Type C" } });`,
    finds: [
      {
        subject: "Pump",
        on: "protect.interruptingAtV",
        severity: "info",
        message: "The 40 A breaker can interrupt 5,000 A at 12 V, its circuit is charged with 14.4 V",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a device upstream whose rating is stated for less voltage protects none behind it",
    plan: panel({
      ofMain: ", interruptingAtV: 10",
      ofPanel: tested("UL 248-15 Class T", 110, 10_000),
    }),
    finds: [
      {
        subject: "panel",
        on: "",
        severity: "info",
        message: "A short in a branch of the panel draws up to 2,640 A",
        fixes: "no fix",
      },
      {
        subject: "feed",
        on: "protect.interruptingAtV",
        severity: "warning",
        message: "The 110 A fuse can interrupt 20,000 A at 10 V, its circuit has 12 V",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "just more than the family interrupts",
    plan: plan("shortCircuitA: 1001", blade),
    finds: [
      {
        subject: "Pump",
        record: "Pump",
        on: "protect.family",
        severity: "error",
        message:
          "The 40 A fuse can interrupt 1,000 A (ISO 8820-3 Type E), a short right behind it draws 1,001 A: use a 40 A fuse (ISO 8820-5 Type SF 30).",
        values: { estimated: false },
        fixes: [
          {
            title: "Use a 40 A fuse (ISO 8820-5 Type SF 30)",
            gives: { protect: { ratingA: 40, family: "ISO 8820-5 Type SF 30", distanceIn: 6 } },
          },
        ],
      },
    ],
  },
  {
    name: "nobody states the internal resistance: 2 to 6 mΩ is usual for 100 Ah of AGM, and 12.85 V over 2 mΩ are 6,425 A",
    plan: plan("", blade),
    finds: [
      {
        on: "protect.family",
        severity: "warning",
        message:
          "The 40 A fuse can interrupt 1,000 A (ISO 8820-3 Type E), a short right behind it draws 6,430 A (estimated: no internal resistance is stated): use a 40 A fuse (UL 248-15 Class T, marked for at least 7,000 A).",
        values: { estimated: true },
        fixes: [
          {
            title: "Use a 40 A fuse (UL 248-15 Class T, marked for at least 7,000 A)",
            kind: "suggestion",
            gives: { "protect.family": "UL 248-15 Class T", "protect.interruptingA": 7000 },
          },
        ],
      },
    ],
  },
  {
    name: "just what a strip interrupts",
    plan: plan("shortCircuitA: 2000", strip),
    finds: "nothing",
  },
  {
    name: "just more than a strip interrupts",
    plan: plan("shortCircuitA: 2010", strip),
    finds: [
      {
        on: "protect.family",
        severity: "error",
        message:
          "The 40 A fuse can interrupt 2,000 A (ISO 8820-5 Type SF 30), a short right behind it draws 2,010 A: use a 40 A fuse (ISO 20934).",
        fixes: [{ title: "Use a 40 A fuse (ISO 20934)", gives: { "protect.family": "ISO 20934" } }],
      },
    ],
  },
  {
    name: "a marking of just enough",
    plan: plan(
      "shortCircuitA: 3000",
      `{ ratingA: 40, family: "circuit breaker", distanceIn: 6, interruptingA: 3000 }`,
    ),
    finds: "nothing",
  },
  {
    name: "a marking of less counts, and a breaker is not replaced by a fuse",
    plan: plan(
      "shortCircuitA: 3000",
      `{ ratingA: 40, family: "circuit breaker", distanceIn: 6, interruptingA: 2999 }`,
    ),
    finds: [
      {
        on: "protect.interruptingA",
        severity: "error",
        message:
          "The 40 A breaker can interrupt 2,999 A, a short right behind it draws 3,000 A: use a breaker marked for at least 3,000 A, and state it (interruptingA).",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a fuse that is marked for less than its family: the new one has no such marking",
    plan: plan(
      "shortCircuitA: 900",
      `{ ratingA: 40, family: "ISO 8820-3 Type E", distanceIn: 6, interruptingA: 500 }`,
    ),
    finds: [
      {
        on: "protect.interruptingA",
        severity: "error",
        message: "The 40 A fuse can interrupt 500 A, a short right behind it draws 900 A",
        fixes: [
          {
            title: "Use a 40 A fuse (ISO 8820-3 Type C)",
            gives: { protect: { ratingA: 40, family: "ISO 8820-3 Type C", distanceIn: 6 } },
          },
        ],
      },
    ],
  },
  {
    name: "a breaker without a marking, however small the short",
    plan: plan("shortCircuitA: 643.2", `{ ratingA: 40, family: "circuit breaker", distanceIn: 6 }`),
    finds: [
      {
        on: "protect.family",
        severity: "info",
        message:
          "The interrupting rating of the 40 A breaker is not known; a short right behind it draws 643 A: use a breaker marked for at least 644 A, and state it (interruptingA).",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a Class T fuse without a marking",
    plan: plan("shortCircuitA: 3000", `{ ratingA: 40, family: "UL 248-15 Class T", distanceIn: 6 }`),
    finds: [
      {
        on: "protect.family",
        severity: "info",
        message:
          "The interrupting rating of the 40 A fuse is not known; a short right behind it draws 3,000 A: use a fuse marked for at least 3,000 A, and state it (interruptingA).",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "no family, and every family of that rating would do",
    plan: plan("shortCircuitA: 1000", "40"),
    finds: "nothing",
  },
  {
    name: "no family, and not every one would do",
    plan: plan("shortCircuitA: 1500", "40"),
    finds: [
      {
        on: "protect",
        severity: "info",
        message:
          "The interrupting rating of the 40 A fuse is not known; a short right behind it draws 1,500 A: use a 40 A fuse (ISO 8820-5 Type SF 30).",
        fixes: [
          {
            title: "Use a 40 A fuse (ISO 8820-5 Type SF 30)",
            kind: "suggestion",
            gives: { protect: { ratingA: 40, family: "ISO 8820-5 Type SF 30" } },
          },
        ],
      },
    ],
  },
  {
    name: "no family, and the strongest of that rating is just enough",
    plan: plan("shortCircuitA: 2500", "40"),
    finds: [
      {
        subject: "Pump",
        on: "protect",
        severity: "info",
        message:
          "The interrupting rating of the 40 A fuse is not known; a short right behind it draws 2,500 A",
        fixes: [
          {
            title: "Use a 40 A fuse (ISO 20934)",
            kind: "suggestion",
            gives: { protect: { ratingA: 40, family: "ISO 20934" } },
          },
        ],
      },
    ],
  },
  {
    name: "no family, and none of that rating is enough by its standard: as serious as one of them",
    plan: plan("shortCircuitA: 2501", "40"),
    finds: [
      {
        subject: "Pump",
        on: "protect",
        severity: "error",
        message:
          "The interrupting rating of the 40 A fuse is not known, blade and bolted ones interrupt up to 2,500 A (ISO 8820, ISO 20934), and a short right behind it draws 2,501 A: use a 40 A fuse (UL 248-15 Class T, marked for at least 3,000 A).",
        fixes: [
          {
            title: "Use a 40 A fuse (UL 248-15 Class T, marked for at least 3,000 A)",
            kind: "suggestion",
            gives: { protect: { ratingA: 40, family: "UL 248-15 Class T", interruptingA: 3000 } },
          },
        ],
      },
    ],
  },
  {
    name: "the same with an estimated resistance: a warning",
    plan: plan("", "40"),
    finds: [
      {
        subject: "Pump",
        on: "protect",
        severity: "warning",
        message:
          "The interrupting rating of the 40 A fuse is not known, blade and bolted ones interrupt up to 2,500 A (ISO 8820, ISO 20934), and a short right behind it draws 6,430 A (estimated: no internal resistance is stated): use",
        fixes: [
          {
            title: "Use a 40 A fuse (UL 248-15 Class T, marked for at least 7,000 A)",
            kind: "suggestion",
            gives: { protect: { ratingA: 40, family: "UL 248-15 Class T", interruptingA: 7000 } },
          },
        ],
      },
    ],
  },
  {
    name: "48 V: the new family is one for 58 V",
    plan: plan(
      "shortCircuitA: 1500",
      `{ ratingA: 40, family: "ISO 8820-3 Type E", distanceIn: 6, ratedV: 58 }`,
      "",
      48,
    ),
    finds: [
      {
        on: "protect.family",
        severity: "error",
        message: "The 40 A fuse can interrupt 1,000 A (ISO 8820-3 Type E)",
        fixes: [
          {
            title: "Use a 40 A fuse (ISO 8820-6)",
            gives: { "protect.family": "ISO 8820-6", "protect.ratedV": 58 },
          },
        ],
      },
    ],
  },
  {
    name: "the device at the far end, fed by the bank it leads to",
    plan: `
      build({ insulationC: 75 });
      const bank = battery({ name: "bank", chemistry: "AGM", capacityAh: 100, shortCircuitA: 1500 });
      const charger = shoreCharger({ name: "charger", outputA: 30 });
      cable({ name: "charging", from: charger.positive, to: bank.positive, lengthFt: 6, gauge: 6,
        protectFarEnd: { ratingA: 40, family: "ISO 8820-3 Type E", distanceIn: 6 } });
      cable({ name: "charging return", from: charger.negative, to: bank.negative, lengthFt: 6, gauge: 6 });
    `,
    finds: [
      {
        record: "charging",
        on: "protectFarEnd.family",
        severity: "error",
        message:
          "The 40 A fuse at the far end can interrupt 1,000 A (ISO 8820-3 Type E), a short right behind it draws 1,500 A",
        fixes: [
          {
            title: "Use a 40 A fuse (ISO 8820-5 Type SF 30)",
            gives: { "protectFarEnd.family": "ISO 8820-5 Type SF 30" },
          },
        ],
      },
    ],
  },
  // The makers alone know whether the main fuse helps (IEC 60364-4-43, 434.5.1): the family makes no difference to the verdict.
  ...[
    ["a family of 1,000 A", blade],
    ["no family", "40"],
    ["a breaker without a marking", '{ ratingA: 40, family: "circuit breaker" }'],
    ["a marking of less", '{ ratingA: 40, family: "circuit breaker", interruptingA: 1000 }'],
  ].map(
    ([kind, protect]): RuleCase => ({
      name: `behind another device at a bus bar: one information there, with ${kind}`,
      plan: behindMain(protect!),
      finds: [
        {
          subject: "bus bar",
          record: "bus bar",
          on: "",
          severity: "info",
          message:
            "A short in a branch of the bus bar draws up to 1,450 A, which may exceed the interrupting rating of its branch fuse: ask the makers",
          values: { branches: 1 },
          fixes: "no fix",
        },
      ],
    }),
  ),
  {
    name: "behind another device, and a family that is enough",
    plan: behindMain(strip),
    finds: "nothing",
  },
  {
    name: "behind another device at a charger, which has no branches",
    plan: `
      build({ insulationC: 105 });
      const bank = battery({ name: "bank", chemistry: "AGM", capacityAh: 100, shortCircuitA: 3000 });
      const own = dcDcCharger({ name: "booster", outputA: 20 });
      const other = battery({ name: "start", chemistry: "AGM", capacityAh: 60, shortCircuitA: 1200 });
      cable({ name: "in", from: other.positive, to: own.inputPositive, lengthM: 3, mm2: 16,
        protect: { ratingA: 50, family: "UL 248-15 Class T", distanceIn: 6, interruptingA: 20000 } });
      cable({ from: own.inputNegative, to: other.negative, lengthM: 3, mm2: 16 });
      cable({ name: "out", from: own.outputPositive, to: bank.positive, lengthM: 0.3, mm2: 16,
        protect: { ratingA: 40, interruptingA: 100 },
        protectFarEnd: { ratingA: 60, family: "UL 248-15 Class T", distanceIn: 6, interruptingA: 20000 } });
      cable({ from: bank.negative, to: own.outputNegative, lengthM: 0.3, mm2: 16 });`,
    finds: [
      {
        subject: "booster",
        severity: "info",
        on: "",
        message: "A short right behind the fuse at the DC-DC charger booster draws up to",
        fixes: "no fix",
      },
    ],
  },
  {
    // 14.6 V over 4 mΩ and 3 ft of 4 AWG each way: 2,650 A. IEC 60364-4-43, 434.5.1: only the makers know whether the Class T fuse protects these.
    name: "the branches of a panel, with a family or without: one information, and no family that does not fit",
    plan: panel(),
    finds: [
      {
        subject: "panel",
        record: "panel",
        on: "",
        severity: "info",
        message: "A short in a branch of the panel draws up to",
        values: { branches: 3 },
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a tested combination of the panel, with the device that is there",
    plan: panel({ ofPanel: tested("UL 248-15 Class T", 200, 10_000) }),
    finds: "nothing",
  },
  {
    name: "a tested combination with a further fuse between the two",
    plan: panel({ ofPanel: tested("UL 248-15 Class T", 200, 10_000) }).replace(
      "gauge: 4,",
      'gauge: 4, protectFarEnd: { ratingA: 70, family: "ISO 8820-5 Type SF 30", interruptingA: 5000 },',
    ),
    finds: "nothing",
  },
  {
    name: "a further fuse between, and a smaller device tested than the one that is there",
    plan: panel({ ofPanel: tested("UL 248-15 Class T", 100, 10_000) }).replace(
      "gauge: 4,",
      'gauge: 4, protectFarEnd: { ratingA: 70, family: "ISO 8820-5 Type SF 30", interruptingA: 5000 },',
    ),
    finds: [{ record: "panel", on: "", severity: "info", message: "A short in a branch", fixes: "no fix" }],
  },
  {
    name: "a tested combination behind a smaller device than the one that is there",
    plan: panel({ ofPanel: tested("UL 248-15 Class T", 100, 10_000) }),
    finds: [{ record: "panel", on: "", severity: "info", message: "A short in a branch", fixes: "no fix" }],
  },
  {
    name: "a tested combination for less than the short",
    plan: panel({ ofPanel: tested("UL 248-15 Class T", 200, 1_100) }),
    finds: [{ record: "panel", on: "", severity: "info", message: "A short in a branch", fixes: "no fix" }],
  },
  {
    name: "a stated combination of one branch leaves the others",
    plan: panel({ ofLamp: tested("UL 248-15 Class T", 200, 10_000) }),
    finds: [
      {
        record: "panel",
        on: "",
        severity: "info",
        message: "A short in a branch",
        values: { branches: 2 },
        fixes: "no fix",
      },
    ],
  },
  {
    // 14 AWG of 75 °C withstands (111.3 · 2.08)² = 53,700 A²s.
    name: "a let-through that the device and its conductor withstand",
    plan: panel({ ofMain: ", letThroughA2s: 9000", ofLamp: ", withstandA2s: 9000" }),
    finds: [
      {
        record: "panel",
        on: "",
        severity: "info",
        message: "A short in a branch",
        values: { branches: 2 },
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a let-through above the withstand",
    plan: panel({ ofMain: ", letThroughA2s: 9001", ofLamp: ", withstandA2s: 9000" }),
    finds: [
      {
        record: "panel",
        on: "",
        severity: "info",
        message: "A short in a branch",
        values: { branches: 3 },
        fixes: "no fix",
      },
    ],
  },
  {
    name: "an accepted branch is shown as accepted, and the others are counted",
    plan: panel({ accept: ', accept: { "protection/interrupting": "the panel maker vouches for it" }' }),
    finds: [
      {
        record: "panel",
        on: "",
        severity: "info",
        message: "A short in a branch",
        values: { branches: 2 },
        fixes: "no fix",
      },
      {
        record: "Lamp",
        on: "protect.family",
        severity: "info",
        // A position of the panel takes no fuse of another family.
        message: "The 10 A fuse can interrupt 1,000 A",
        fixes: "no fix",
        accepted: "the panel maker vouches for it",
      },
    ],
  },
  {
    // 25 ft of 4 AWG: 6.33 mΩ each way. 14.6 V / (4 + 2 · 6.33) mΩ: 876 A, and 1,413 A without the way back.
    name: "the resistance of the way back counts",
    plan: panel({ feedFt: 25 }),
    finds: "nothing",
  },
  {
    // Each battery delivers 1,500 A to the bar, less a little for its lead of 0.1 mΩ.
    name: "the main fuse of two batteries with a fuse each is the first one for both together",
    plan: pair(200),
    finds: [
      {
        subject: "main",
        on: "protect.family",
        severity: "error",
        message:
          "The 200 A fuse can interrupt 2,000 A (ISO 8820-5 Type SF 51), a short right behind it draws 2,",
        fixes: [
          {
            title: "Use a 200 A fuse (UL 248-15 Class T, marked for at least 3,000 A)",
            kind: "suggestion",
            gives: {},
          },
        ],
      },
    ],
  },
  {
    name: "a lesser one may be helped by them",
    plan: pair(100),
    finds: [
      { severity: "info", on: "", message: "A short in a branch of the bus bar plus", fixes: "no fix" },
    ],
  },
  {
    name: "accepted with a reason",
    plan: plan(
      "shortCircuitA: 1500",
      blade,
      `, accept: { "protection/interrupting": "the main fuse's maker vouches for it" }`,
    ),
    finds: [
      {
        on: "protect.family",
        severity: "error",
        message: "The 40 A fuse can interrupt 1,000 A",
        fixes: [{ title: "Use a 40 A fuse (ISO 8820-5 Type SF 30)", gives: {} }],
        accepted: "the main fuse's maker vouches for it",
      },
    ],
  },
]);

function pair(ratingA: number): string {
  return `
    build({ insulationC: 105 });
    const plus = busBar({ name: "plus" });
    const minus = busBar({ name: "minus" });
    for (const side of ["left", "right"]) {
      const one = battery({ name: side, chemistry: "AGM", capacityAh: 100, shortCircuitA: 1500 });
      cable({ name: side + " plus", from: one.positive, to: plus.stud, lengthFt: 1, gauge: "1/0",
        protect: { ratingA: 150, family: "UL 248-15 Class T", distanceIn: 4, interruptingA: 20_000 } });
      cable({ name: side + " minus", from: one.negative, to: minus.stud, lengthFt: 1, gauge: "1/0" });
    }
    circuit({ name: "main", from: plus.stud, returnTo: minus.stud, load: 60, oneWayFt: 5, gauge: "1/0",
      protect: { ratingA: ${ratingA}, family: "ISO 8820-5 Type SF 51", distanceIn: 4 } });`;
}
