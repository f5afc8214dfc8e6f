import { testRule } from "../rule.tester.ts";
import { solarConductor } from "./conductor.ts";

const bank = `
    cable({ name: "controller to bank", from: tracker.positive, to: house.positive, lengthFt: 5, gauge: 4, protectFarEnd: 60 });
    cable({ name: "controller return", from: tracker.negative, to: house.negative, lengthFt: 5, gauge: 4 });`;
const controller = `
    build({ insulationC: 105, lowestC: -10 });
    const house = battery({ chemistry: "LiFePO4", capacityAh: 200, internalMilliohm: 2 });
    const tracker = solarController({ outputA: 40, maxInputV: 150 });`;

/** 12 A each. */
const panel = "openCircuitV: 22, maxPowerV: 18, maxPowerA: 8, shortCircuitA: 12";
const twoArrays = `${controller}
    const roof = solarArray({ ${panel} });
    const door = solarArray({ ${panel} });
    const plus = busBar({ side: "positive" });
    const minus = busBar({ side: "negative" });
    cable({ name: "roof to bus", from: roof.positive, to: plus.stud, lengthFt: 4, gauge: 14 });
    cable({ name: "door to bus", from: door.positive, to: plus.stud, lengthFt: 4, gauge: 14 });
    cable({ name: "bus to controller", from: plus.stud, to: tracker.solarPositive, lengthFt: 4, gauge: 14 });
    cable({ name: "roof return", from: roof.negative, to: minus.stud, lengthFt: 4, gauge: 14 });
    cable({ name: "door return", from: door.negative, to: minus.stud, lengthFt: 4, gauge: 14 });
    cable({ name: "return to controller", from: minus.stud, to: tracker.solarNegative, lengthFt: 4, gauge: 14 });
    ${bank}`;

// With 105 °C insulation 14 AWG may carry 35 A and 12 AWG 45 A. One string of 22.4 A needs 1.25 · 1.25 · 22.4 = 35 A, one of 28 A
// can drive 1.25 · 28 = 35 A.
testRule(solarConductor, [
  { name: "exactly what the panels ask for", plan: planWith({ shortCircuitA: 22.4 }), finds: "nothing" },
  {
    name: "a little less than the panels ask for, more than they can drive: only the margin is missing",
    plan: planWith({ shortCircuitA: 22.5 }),
    finds: [
      {
        subject: "roof cable",
        record: "roof cable",
        on: "gauge",
        severity: "warning",
        message:
          "14 AWG may carry 35 A (33 CFR 183.425(b), Table 5), modules of 22.5 A need 35.2 A (1.25 × 1.25, NFPA 70 690.8(A)(1) and (B)): use 12 AWG.",
        values: { shortCircuitA: 22.5, ampacityA: 35 },
        fixes: [{ title: "Use 12 AWG", gives: { gauge: 12 } }],
      },
    ],
  },
  {
    name: "exactly what they can drive: still the margin only",
    plan: planWith({ shortCircuitA: 28 }),
    finds: [
      {
        on: "gauge",
        severity: "warning",
        message: "14 AWG may carry 35 A (33 CFR 183.425(b), Table 5), modules of 28 A need 43.8 A",
        fixes: [{ title: "Use 12 AWG", gives: { gauge: 12 } }],
      },
    ],
  },
  {
    name: "less than they can drive",
    plan: planWith({ shortCircuitA: 28.1 }),
    finds: [
      {
        on: "gauge",
        severity: "error",
        message: "14 AWG may carry 35 A (33 CFR 183.425(b), Table 5), modules of 28.1 A need 43.9 A",
        fixes: [{ title: "Use 12 AWG", gives: { gauge: 12 } }],
      },
    ],
  },
  {
    name: "strings side by side add up",
    plan: planWith({ shortCircuitA: 9, more: "parallel: 3, maxSeriesFuseA: 30" }),
    finds: [
      {
        on: "gauge",
        severity: "warning",
        message: "14 AWG may carry 35 A (33 CFR 183.425(b), Table 5), modules of 27 A need 42.2 A",
        fixes: [{ title: "Use 12 AWG", gives: { gauge: 12 } }],
      },
    ],
  },
  {
    name: "panels in series do not",
    plan: planWith({ shortCircuitA: 9, more: "series: 3" }),
    finds: "nothing",
  },
  {
    name: "a fuse below what they ask for goes with the conductor",
    plan: planWith({ shortCircuitA: 24, run: "protectFarEnd: 30" }),
    finds: [
      {
        on: "gauge",
        severity: "warning",
        message: "14 AWG may carry 35 A",
        fixes: [
          { title: "Use 12 AWG with a 40 A fuse at the far end", gives: { gauge: 12, protectFarEnd: 40 } },
        ],
      },
    ],
  },
  {
    name: "two arrays at a bus: each conductor carries what is behind it",
    plan: twoArrays,
    finds: [
      {
        subject: "bus to controller",
        on: "gauge",
        severity: "warning",
        message: "14 AWG may carry 35 A (33 CFR 183.425(b), Table 5), modules of 24 A need 37.5 A",
        fixes: [{ title: "Use 12 AWG", gives: { gauge: 12 } }],
      },
      {
        subject: "return to controller",
        on: "gauge",
        severity: "warning",
        message: "14 AWG may carry 35 A (33 CFR 183.425(b), Table 5), modules of 24 A need 37.5 A",
        fixes: [{ title: "Use 12 AWG", gives: { gauge: 12 } }],
      },
    ],
  },
  {
    name: "accepted with a reason",
    plan: planWith({ shortCircuitA: 25, run: 'accept: { "solar/conductor": "they hang upright" }' }),
    finds: [
      {
        on: "gauge",
        severity: "warning",
        message: "14 AWG may carry 35 A",
        accepted: "they hang upright",
        fixes: [{ title: "Use 12 AWG", gives: { gauge: 12 } }],
      },
    ],
  },
]);

interface Changes {
  readonly shortCircuitA: number;
  /** More properties of the array. */
  readonly more?: string;
  /** More properties of its circuit. */
  readonly run?: string;
}

function planWith({ shortCircuitA, more = "", run = "" }: Changes): string {
  return `${controller}
    const roof = solarArray({ openCircuitV: 22, maxPowerV: 18, maxPowerA: 8, shortCircuitA: ${shortCircuitA}, ${more} });
    circuit({ name: "roof cable", from: roof.positive, to: tracker, oneWayFt: 10, gauge: 14, ${run} });
    ${bank}`;
}
