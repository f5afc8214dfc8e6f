import { testRule } from "../rule.tester.ts";
import { stringProtection } from "./string-protection.ts";

// By hand: of three strings of 6 A two drive 2 · 1.25 · 6 = 15 A into the third; its own fuse must carry 1.25 · 1.25 · 6 = 9.375
// A for hours.
testRule(stringProtection, [
  {
    name: "the others push exactly what the panels bear",
    plan: planWith("shortCircuitA: 6, parallel: 3, maxSeriesFuseA: 15"),
    finds: "nothing",
  },
  {
    name: "a little more than the panels bear, and no fuses",
    plan: planWith("shortCircuitA: 6.01, parallel: 3, maxSeriesFuseA: 15"),
    finds: [
      {
        subject: "roof",
        record: "roof",
        on: "parallel",
        severity: "error",
        message:
          "The other strings drive 15.02 A into one with a fault, its modules allow a fuse of 15 A at most (NFPA 70 690.9, unconfirmed figure): put a 10 A fuse in each string.",
        values: { strings: 3 },
        fixes: [{ title: "Put a 10 A fuse in each string", gives: { stringFuseA: 10 } }],
      },
    ],
  },
  {
    name: "two strings",
    plan: planWith("shortCircuitA: 9, parallel: 2, maxSeriesFuseA: 15"),
    finds: "nothing",
  },
  {
    name: "a fuse in each string, as great as the panels' maker allows",
    plan: planWith("shortCircuitA: 9, parallel: 3, maxSeriesFuseA: 15, stringFuseA: 15"),
    finds: "nothing",
  },
  {
    name: "a greater fuse than the panels' maker allows",
    plan: planWith("shortCircuitA: 9, parallel: 3, maxSeriesFuseA: 15, stringFuseA: 16"),
    finds: [
      {
        on: "stringFuseA",
        severity: "error",
        message:
          "The 16 A string fuse is above the 15 A that the modules' maker allows (NFPA 70 690.9, unconfirmed figure): use a 15 A fuse in each string.",
        fixes: [{ title: "Use a 15 A fuse in each string", gives: { stringFuseA: 15 } }],
      },
    ],
  },
  {
    name: "a fuse that just bears a string in bright sun",
    plan: planWith("shortCircuitA: 6.4, parallel: 3, maxSeriesFuseA: 15, stringFuseA: 10"),
    finds: "nothing",
  },
  {
    name: "a fuse that opens in bright sun",
    plan: planWith("shortCircuitA: 6.41, parallel: 3, maxSeriesFuseA: 20, stringFuseA: 10"),
    finds: [
      {
        on: "stringFuseA",
        severity: "warning",
        message:
          "The 10 A string fuse opens in bright sun: it needs 10.02 A, 1.25 × 1.25 times the short-circuit current (NFPA 70 690.8(A)(1) and (B)): use a 15 A fuse in each string.",
        fixes: [{ title: "Use a 15 A fuse in each string", gives: { stringFuseA: 15 } }],
      },
    ],
  },
  {
    name: "no made rating between what the string needs and what its panels bear",
    plan: planWith("shortCircuitA: 6.7, parallel: 3, maxSeriesFuseA: 12"),
    finds: [
      {
        on: "parallel",
        message: "The other strings drive 16.8 A",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "what the panels bear is not stated: said, as information",
    plan: planWith("shortCircuitA: 6, parallel: 3"),
    finds: [
      {
        on: "",
        severity: "info",
        message:
          "Cannot be judged: 3 strings drive up to 15 A into one with a fault (NFPA 70 690.9, unconfirmed figure): state maxSeriesFuseA from the data sheet.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "two strings of panels that do not say what they bear",
    plan: planWith("shortCircuitA: 6, parallel: 2"),
    finds: "nothing",
  },
  {
    name: "arrays side by side count together",
    plan: twoArrays({ roofFuse: 40, doorFuse: 30 }),
    finds: [
      {
        subject: "roof",
        on: "parallel",
        message: "The other strings drive 22.5 A",
        values: { strings: 3 },
        fixes: [{ title: "Put a 15 A fuse in each string", gives: { stringFuseA: 15 } }],
      },
      {
        subject: "door",
        on: "",
        message: "The other strings drive 22.5 A",
        fixes: [{ title: "Put a 15 A fuse in each string", gives: { stringFuseA: 15 } }],
      },
    ],
  },
  {
    name: "a fuse in the one conductor of a single string does for a string fuse",
    plan: twoArrays({ roofFuse: 40, doorFuse: 15 }),
    finds: [
      {
        subject: "roof",
        on: "parallel",
        message: "The other strings drive 22.5 A",
        fixes: [{ title: "Put a 15 A fuse in each string", gives: { stringFuseA: 15 } }],
      },
    ],
  },
  {
    name: "accepted with a reason",
    plan: planWith(
      'shortCircuitA: 8, parallel: 3, maxSeriesFuseA: 15, accept: { "solar/string-protection": "diodes in each string" }',
    ),
    finds: [
      {
        on: "parallel",
        message: "The other strings drive 20 A",
        accepted: "diodes in each string",
        fixes: [{ title: "Put a 15 A fuse in each string", gives: { stringFuseA: 15 } }],
      },
    ],
  },
]);

function planWith(panels: string): string {
  return `
    build({ insulationC: 90, lowestC: -10 });
    const house = battery({ chemistry: "LiFePO4", capacityAh: 200, internalMilliohm: 2 });
    const roof = solarArray({ openCircuitV: 22, maxPowerV: 18, maxPowerA: 5.5, ${panels} });
    const tracker = solarController({ outputA: 30, maxInputV: 100 });
    circuit({ name: "roof cable", from: roof.positive, to: tracker, oneWayM: 6, mm2: 10 });
    cable({ name: "controller to bank", from: tracker.positive, to: house.positive, lengthM: 2, mm2: 16, protectFarEnd: 50 });
    cable({ name: "controller return", from: tracker.negative, to: house.negative, lengthM: 2, mm2: 16 });`;
}

/** Two strings on the roof and one on the door, connected at a bus. */
function twoArrays({ roofFuse, doorFuse }: { readonly roofFuse: number; readonly doorFuse: number }): string {
  const panel =
    "openCircuitV: 22, maxPowerV: 18, maxPowerA: 5.5, shortCircuitA: 9, maxSeriesFuseA: 15, lowestC: -10";
  return `
    build({ insulationC: 90, lowestC: -10 });
    const house = battery({ chemistry: "LiFePO4", capacityAh: 200, internalMilliohm: 2 });
    const roof = solarArray({ ${panel}, parallel: 2 });
    const door = solarArray({ ${panel} });
    const tracker = solarController({ outputA: 30, maxInputV: 100 });
    const bus = busBar({ name: "combiner" });
    cable({ name: "roof to bus", from: roof.positive, to: bus.stud, lengthM: 4, mm2: 10, protectFarEnd: ${roofFuse} });
    cable({ name: "door to bus", from: door.positive, to: bus.stud, lengthM: 4, mm2: 10, protectFarEnd: ${doorFuse} });
    cable({ name: "bus to controller", from: bus.stud, to: tracker.solarPositive, lengthM: 2, mm2: 16 });
    cable({ name: "roof return", from: roof.negative, to: tracker.solarNegative, lengthM: 4, mm2: 10 });
    cable({ name: "door return", from: door.negative, to: tracker.solarNegative, lengthM: 4, mm2: 10 });
    cable({ name: "controller to bank", from: tracker.positive, to: house.positive, lengthM: 2, mm2: 16, protectFarEnd: 50 });
    cable({ name: "controller return", from: tracker.negative, to: house.negative, lengthM: 2, mm2: 16 });`;
}
