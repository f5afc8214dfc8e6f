import { testRule } from "../rule.tester.ts";
import { inverterSurge } from "./surge.ts";

// By hand, with cables of almost no length: 12 V at rest behind 10 mΩ and an efficiency of 100 %. U = (12 + √(144 − 0.04 · P)) / 2:
// 1,575 W leave 10.5 V, and above 3,600 W there is no voltage.
testRule(inverterSurge, [
  { name: "just enough voltage", plan: planWith({ surgeW: 1_570 }), finds: "nothing" },
  {
    name: "just too little",
    plan: planWith({ surgeW: 1_580 }),
    finds: [
      {
        subject: "kettle",
        record: "kettle",
        on: "surgeW",
        severity: "warning",
        message: "At its surge of 1,580 W only 10.49 V arrive with the battery as in",
        values: { cutOffV: 10.5, estimated: false },
        fixes: "no fix",
      },
    ],
  },
  {
    name: "no voltage at which it could run",
    plan: planWith({ surgeW: 3_700 }),
    finds: [{ on: "surgeW", message: "At its surge of 3,700 W the voltage collapses", fixes: "no fix" }],
  },
  { name: "no surge stated", plan: planWith({}), finds: "nothing" },
  {
    name: "a scenario with an empty battery",
    plan: planWith({ surgeW: 1_200, more: 'scenario({ name: "evening", bankV: 11.5 });' }),
    finds: [
      {
        on: "surgeW",
        message: 'At its surge of 1,200 W only 10.3 V arrive with the battery as in "evening"',
        fixes: "no fix",
      },
    ],
  },
  {
    name: "an internal resistance that is not stated: information, from the least that is usual",
    plan: planWith({ surgeW: 9_000, resistance: "" }),
    finds: [
      {
        on: "surgeW",
        severity: "info",
        message: "At its surge of 9,000 W ",
        values: { estimated: true },
        fixes: "no fix",
      },
    ],
  },
  {
    name: "accepted with a reason",
    plan: planWith({ surgeW: 2_000, inverter: 'accept: { "inverter/surge": "only lamps are on it" }' }),
    finds: [{ on: "surgeW", message: "At its surge", accepted: "only lamps are on it", fixes: "no fix" }],
  },
]);

function planWith({
  surgeW,
  resistance = "internalMilliohm: 10",
  inverter = "",
  more = "",
}: {
  readonly surgeW?: number;
  readonly resistance?: string;
  readonly inverter?: string;
  readonly more?: string;
}): string {
  return `
    build({ insulationC: 105 });
    const house = battery({ chemistry: "AGM", capacityAh: 100, ${resistance} });
    const kettle = inverter({ continuousW: 500, ${surgeW === undefined ? "" : `surgeW: ${surgeW},`} efficiencyPercent: 100, cutOffV: 10.5, ${inverter} });
    circuit({ name: "supply", from: house.positive, returnTo: house.negative, to: kettle, oneWayFt: 0.03, gauge: "4/0", protect: 300 });
    ${more}`;
}
