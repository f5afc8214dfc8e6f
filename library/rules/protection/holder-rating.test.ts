import { testRule } from "../rule.tester.ts";
import { holderRating } from "./holder-rating.ts";

// The rating of the holder is the maker's, as the plan states it. 33 CFR 183.425 Table 5, 75 °C: 8 AWG carries 65 A, 4 AWG 125 A.
const heater = { load: 20, oneWayFt: 6, gauge: 8 };
const protect = (ratingA: number, holderRatedA: number) => ({ protect: { ratingA, holderRatedA } });
const onBattery = (ratingA: number, holderRatedA: number, load = 20) => `
  build({ insulationC: 75 });
  const bank = battery({ chemistry: "AGM", capacityAh: 100, shortCircuitA: 800 });
  const main = fuseHolder({ name: "main", on: bank.positive, ratingA: ${ratingA}, holderRatedA: ${holderRatedA}, family: "UL 248-15 Class T" });
  circuit({ name: "heater", from: main.load, returnTo: bank.negative, load: ${load}, oneWayFt: 6, gauge: 4 });`;

testRule(holderRating, [
  { name: "no rating of the holder", circuits: [{ ...heater, protect: 50 }], finds: "nothing" },
  { name: "exactly the rating", circuits: [{ ...heater, ...protect(50, 50) }], finds: "nothing" },
  {
    name: "above it: the nearest rating up to it",
    circuits: [{ ...heater, ...protect(50, 40) }],
    finds: [
      {
        subject: "Heater",
        on: "protect.ratingA",
        severity: "error",
        message:
          "The 50 A fuse is in a holder rated 40 A (holderRatedA): use a 40 A fuse, or a holder rated 50 A or more.",
        fixes: [{ title: "Use a 40 A fuse", gives: { "protect.ratingA": 40, "protect.holderRatedA": 40 } }],
      },
    ],
  },
  {
    name: "just above it",
    circuits: [{ ...heater, ...protect(50, 49.9) }],
    finds: [
      {
        on: "protect.ratingA",
        message: "The 50 A fuse is in a holder rated 49.9 A",
        fixes: [{ title: "Use a 45 A fuse", gives: { "protect.ratingA": 45 } }],
      },
    ],
  },
  {
    name: "no rating up to it carries the load: another holder",
    circuits: [{ ...heater, load: 40, oneWayFt: 4, ...protect(50, 30) }],
    finds: [
      {
        on: "protect.ratingA",
        message: "The 50 A fuse is in a holder rated 30 A (holderRatedA): use a holder rated 50 A or more.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "the holder at the far end",
    circuits: [
      {
        ...heater,
        fedFromBothEnds: true,
        protect: 40,
        protectFarEnd: { ratingA: 50, holderRatedA: 40 },
      },
    ],
    finds: [
      {
        on: "protectFarEnd.ratingA",
        message: "The 50 A fuse at the far end is in a holder rated 40 A",
        fixes: [{ title: "Use a 40 A fuse at the far end", gives: { "protectFarEnd.ratingA": 40 } }],
      },
    ],
  },
  { name: "a holder as a part, within its rating", plan: onBattery(100, 100), finds: "nothing" },
  {
    name: "a holder as a part, above its rating",
    plan: onBattery(100, 60),
    finds: [
      {
        subject: "main",
        record: "main",
        on: "ratingA",
        severity: "error",
        message:
          "The 100 A fuse is in a holder rated 60 A (holderRatedA): use a 60 A fuse, or a holder rated 100 A or more.",
        fixes: [{ title: "Use a 60 A fuse", gives: { ratingA: 60 } }],
      },
    ],
  },
  {
    name: "a holder as a part, whose load needs more",
    plan: onBattery(100, 60, 70),
    finds: [
      {
        subject: "main",
        record: "main",
        on: "ratingA",
        message: "The 100 A fuse is in a holder rated 60 A (holderRatedA): use a holder rated 100 A or more.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "accepted with a reason",
    circuits: [
      {
        ...heater,
        ...protect(50, 40),
        accept: { "protection/holder-rating": "the new holder is ordered" },
      },
    ],
    finds: [
      {
        on: "protect.ratingA",
        message: "The 50 A fuse is in a holder rated 40 A",
        accepted: "the new holder is ordered",
        fixes: [{ title: "Use a 40 A fuse", gives: { "protect.ratingA": 40 } }],
      },
    ],
  },
]);
