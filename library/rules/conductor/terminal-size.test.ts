import { testRule } from "../rule.tester.ts";
import { terminalSize } from "./terminal-size.ts";

// The largest conductor is the maker's, as the plan states it. Cross-sections: 6 AWG 13.3 mm², 4 AWG 21.2 mm² (ASTM B258).
const heater = { load: 40, oneWayFt: 15, gauge: 4, protect: 50 };
const onPanel = (panel: string, wires: string) => `
  build({ insulationC: 75 });
  const bank = battery({ name: "bank", chemistry: "AGM", capacityAh: 100 });
  const panel = fusePanel({ name: "panel", positions: 6, ${panel} });
  cable({ name: "feed", from: bank.positive, to: panel.feed, lengthFt: 3, gauge: 6, protect: 80 });
  cable({ name: "back", from: panel.negative, to: bank.negative, lengthFt: 3, gauge: 6 });
  circuit({ name: "Lamp", from: panel.branch, load: 4, oneWayFt: 9, protect: 5, ${wires} });`;

testRule(terminalSize, [
  { name: "no terminal states it", circuits: [heater], finds: "nothing" },
  { name: "exactly the largest", circuits: [{ ...heater, largestGauge: 4 }], finds: "nothing" },
  {
    name: "one size more, and no size that the terminal takes is enough",
    circuits: [{ ...heater, load: 160, oneWayFt: 6, gauge: 1, protect: 200, largestGauge: 2 }],
    finds: [
      {
        subject: "Heater",
        on: "gauge",
        severity: "error",
        message:
          "1 AWG is too thick for the terminals of its load, which take up to 2 AWG: no size that it takes is enough; shorten the run, split the load, or end the conductor at a stud beside it.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "thicker than needed: the thickest that fits, for the builder to decide",
    circuits: [{ ...heater, gauge: 1, largestGauge: 2 }],
    finds: [
      {
        on: "gauge",
        message: "1 AWG is too thick for the terminals of its load, which take up to 2 AWG: use 2 AWG.",
        fixes: [{ title: "Use 2 AWG", kind: "suggestion", gives: { gauge: 2 } }],
      },
    ],
  },
  {
    name: "the holder of its fuse",
    circuits: [{ ...heater, protect: { ratingA: 50, largestGauge: 6 }, oneWayFt: 6 }],
    finds: [
      {
        on: "gauge",
        message: "4 AWG is too thick for the terminals of its fuse, which take up to 6 AWG: use 6 AWG.",
        fixes: [{ title: "Use 6 AWG", kind: "suggestion", gives: { gauge: 6 } }],
      },
    ],
  },
  {
    name: "a breaker at the far end, tighter than the load",
    circuits: [
      {
        ...heater,
        oneWayFt: 6,
        largestGauge: 4,
        fedFromBothEnds: true,
        protectFarEnd: { ratingA: 50, family: "circuit breaker", largestMm2: 16 },
      },
    ],
    finds: [
      {
        on: "gauge",
        message:
          "4 AWG is too thick for the terminals of its breaker at the far end, which take up to 16 mm²: use 6 AWG.",
        fixes: [{ title: "Use 6 AWG", kind: "suggestion", gives: { gauge: 6 } }],
      },
    ],
  },
  {
    name: "a repair grows no further than the holder takes",
    circuits: [{ ...heater, gauge: 10, protect: { ratingA: 50, largestGauge: 6 }, oneWayFt: 6 }],
    finds: "nothing",
  },
  {
    name: "a metric terminal and a conductor in AWG: 6 AWG goes into 16 mm²",
    circuits: [{ ...heater, oneWayFt: 6, gauge: 6, largestMm2: 16 }],
    finds: "nothing",
  },
  {
    name: "4 AWG does not",
    circuits: [{ ...heater, oneWayFt: 6, largestMm2: 16 }],
    finds: [
      {
        on: "gauge",
        message: "4 AWG is too thick for the terminals of its load, which take up to 16 mm²: use 6 AWG.",
        fixes: [{ title: "Use 6 AWG", kind: "suggestion", gives: { gauge: 6 } }],
      },
    ],
  },
  {
    name: "each of two wires in parallel by itself",
    circuits: [{ ...heater, parallel: 2, gauge: 6, largestGauge: 6 }],
    finds: "nothing",
  },
  {
    name: "a branch of a panel",
    plan: onPanel("branchLargestGauge: 10", "gauge: 8"),
    finds: [
      {
        subject: "Lamp",
        on: "gauge",
        message: "8 AWG is too thick for the terminals of panel, which take up to 10 AWG: use 10 AWG.",
        fixes: [{ title: "Use 10 AWG", kind: "suggestion", gives: { gauge: 10 } }],
      },
    ],
  },
  {
    name: "the feed of a panel and its return are no branches",
    plan: onPanel("branchLargestGauge: 10", "gauge: 10"),
    finds: "nothing",
  },
  {
    name: "a part with one size for all its terminals",
    plan: onPanel("largestMm2: 10", "gauge: 14"),
    finds: [
      {
        subject: "feed",
        message:
          "6 AWG is too thick for the terminals of panel, which take up to 10 mm²: no size that it takes is enough;",
        on: "gauge",
        fixes: "no fix",
      },
      {
        subject: "back",
        on: "gauge",
        message: "6 AWG is too thick for the terminals of panel, which take up to 10 mm²: use 8 AWG.",
        fixes: [{ title: "Use 8 AWG", kind: "suggestion", gives: { gauge: 8 } }],
      },
    ],
  },
  {
    name: "accepted with a reason",
    circuits: [{ ...heater, largestGauge: 6, accept: { "conductor/terminal-size": "pin lug" } }],
    finds: [
      {
        on: "gauge",
        accepted: "pin lug",
        message: "4 AWG is too thick",
        fixes: [{ title: "Use 6 AWG", kind: "suggestion", gives: { gauge: 6 } }],
      },
    ],
  },
]);
