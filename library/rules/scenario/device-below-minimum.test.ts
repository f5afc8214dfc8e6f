import { testRule } from "../rule.tester.ts";
import { deviceBelowMinimum } from "./device-below-minimum.ts";

const winch = `
    const winch = motor({ runningA: 20, startingA: 60, continuous: false });
    circuit({ name: "winch supply", from: bus.stud, returnTo: back.stud, to: winch, oneWayFt: 5, gauge: 6, protect: 80 });
    scenario({ name: "cruising", off: [winch] });
    scenario({ name: "winch starting", starting: [winch] });`;

const cranked = (minimumV: number) => `
    const start = battery({ chemistry: "AGM", capacityAh: 90, internalMilliohm: 4 });
    const off = disconnect({ ratedA: 300 });
    const starter = starterMotor({ name: "starter", crankingA: 260, minimumV: ${minimumV} });
    cable({ name: "plus", from: start.positive, to: off.line, lengthFt: 2, gauge: 4 });
    cable({ name: "crank", from: off.load, to: starter.positive, lengthFt: 12, gauge: 4 });
    cable({ name: "back", from: starter.negative, to: start.negative, lengthFt: 12, gauge: 4 });`;

// By hand for the radio alone, at 10 A: 0.02 V are lost in the battery; 2 · 0.02637 V in the feed, 3.048 m of 4 AWG at 30.3 °C; 2
// · 0.10672 V in its supply, 3.048 m of 10 AWG at 32.1 °C. 11.7138 V of 12 V arrive.
testRule(deviceBelowMinimum, [
  { name: "just what it needs", plan: planWith({ radio: "minimumV: 11.713" }), finds: "nothing" },
  {
    name: "a little less than it needs: its own supply is made thicker",
    plan: planWith({ radio: "minimumV: 11.714" }),
    finds: [
      {
        subject: "radio",
        record: "radio",
        on: "minimumV",
        severity: "error",
        message:
          'Only 11.7138 V in "everything on" at radio (estimated: 12 V at rest), which needs 11.714 V (minimumV): use 8 AWG for radio supply.',
        values: { neededV: 11.714, needs: "minimumV" },
        fixes: [{ title: "Use 8 AWG for radio supply", gives: { "radio supply": { gauge: 8 } } }],
      },
    ],
  },
  {
    name: "more than the battery itself has: nothing to make thicker",
    plan: planWith({ radio: "minimumV: 11.99" }),
    finds: [
      {
        on: "minimumV",
        message:
          'Only 11.7 V in "everything on" at radio (estimated: 12 V at rest), which needs 11.99 V (minimumV): shorten the run, give it its own feed, use a higher system voltage, or run less at once.',
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a circuit with its own load, and an answer in it alone",
    plan: planWith({ circuit: "load: 10, minimumV: 11.72" }),
    finds: [
      {
        subject: "lamps",
        record: "lamps",
        on: "minimumV",
        message:
          'Only 11.71 V in "everything on" at lamps (estimated: 12 V at rest), which needs 11.72 V (minimumV): use 8 AWG.',
        fixes: [{ title: "Use 8 AWG", gives: { gauge: 8 } }],
      },
    ],
  },
  {
    // By hand: 260 A lose 1.04 V in the battery and 1.78 V in 26 ft of 4 AWG at 30 °C, 0.263 Ω per 1,000 ft; in 5 s they heat it by 4 K, 0.03 V. In no scenario that lasts does the starter draw.
    name: "an engine is cranked over thin cables",
    plan: cranked(9.5),
    finds: [
      {
        subject: "starter",
        record: "starter",
        on: "minimumV",
        severity: "warning",
        message:
          'Only 9.15 V in "cranking the engine" at starter (estimated: 12 V at rest), which needs 9.5 V (minimumV): use 2 AWG for crank and back.',
        fixes: [
          { title: "Use 2 AWG for crank and back", gives: { crank: { gauge: 2 }, back: { gauge: 2 } } },
        ],
      },
    ],
  },
  {
    name: "the battery itself is too weak to crank",
    plan: cranked(10.97),
    finds: [
      {
        on: "minimumV",
        severity: "warning",
        message:
          'Only 9.15 V in "cranking the engine" at starter (estimated: 12 V at rest), which needs 10.97 V (minimumV): shorten its cables, or crank with a battery of more cranking current.',
        fixes: "no fix",
      },
    ],
  },
  {
    name: "enough while the winch starts",
    plan: planWith({ radio: "minimumV: 11.1", more: winch }),
    finds: "nothing",
  },
  {
    name: "too little only while the winch starts: a warning",
    plan: planWith({ radio: "minimumV: 11.4", more: winch }),
    finds: [
      {
        on: "minimumV",
        severity: "warning",
        message:
          'Only 11.3 V in "winch starting" at radio (estimated: 12 V at rest), which needs 11.4 V (minimumV): use 2 AWG for feed and feed return (which 1 other device shares).',
        fixes: [
          {
            title: "Use 2 AWG for feed and feed return (which 1 other device shares)",
            kind: "suggestion",
            gives: { feed: { gauge: 2 }, "radio supply": { gauge: 10 }, "feed return": { gauge: 2 } },
          },
        ],
      },
    ],
  },
  {
    name: "too little while it lasts, and less while the winch starts: one answer for both",
    plan: planWith({ radio: "minimumV: 11.75", more: winch }),
    finds: [
      {
        on: "minimumV",
        severity: "error",
        message:
          'Only 11.7 V in "cruising" at radio (estimated: 12 V at rest), which needs 11.75 V (minimumV): use 4/0 AWG for feed and feed return and 2 AWG for radio supply (which 1 other device shares).',
        fixes: [
          {
            title:
              "Use 4/0 AWG for feed and feed return and 2 AWG for radio supply (which 1 other device shares)",
            kind: "suggestion",
            gives: { feed: { gauge: "4/0" }, "radio supply": { gauge: 2 }, "feed return": { gauge: "4/0" } },
          },
        ],
      },
    ],
  },
  {
    name: "too little while it lasts, and no conductor helps while the winch starts",
    plan: planWith({ radio: "minimumV: 11.85", more: winch }),
    finds: [
      {
        on: "minimumV",
        severity: "error",
        message:
          'Only 11.7 V in "cruising" at radio (estimated: 12 V at rest), which needs 11.85 V (minimumV): use 4 AWG for radio supply.',
        fixes: [
          {
            title: "Use 4 AWG for radio supply",
            kind: "suggestion",
            gives: { "radio supply": { gauge: 4 } },
          },
        ],
      },
    ],
  },
  {
    name: "a bank that is low is a scenario like any other",
    plan: planWith({ radio: "minimumV: 11.4", more: 'scenario({ name: "nearly empty", bankV: 11.6 });' }),
    finds: [
      {
        on: "minimumV",
        severity: "error",
        message:
          'Only 11.3 V in "nearly empty" at radio, which needs 11.4 V (minimumV): use 6 AWG for radio supply.',
        fixes: [{ title: "Use 6 AWG for radio supply", gives: { "radio supply": { gauge: 6 } } }],
      },
    ],
  },
  {
    name: "an inverter that runs",
    plan: planWith({ more: inverter("cutOffV: 11.6") }),
    finds: "nothing",
  },
  {
    name: "an inverter at its cut-off",
    plan: planWith({ more: inverter("cutOffV: 11.7") }),
    finds: [
      {
        subject: "kettle",
        on: "cutOffV",
        severity: "error",
        message:
          'Only 11.69 V in "everything on" at the inverter kettle (estimated: 12 V at rest), which needs 11.7 V (cutOffV): use 4 AWG for inverter supply.',
        fixes: [
          {
            title: "Use 4 AWG for inverter supply",
            gives: { "inverter supply": { gauge: 4 }, feed: { gauge: 4 } },
          },
        ],
      },
    ],
  },
  {
    name: "a charger that still gives its full output",
    plan: planWith({ more: charger("inputMinV: 11.5") }),
    finds: "nothing",
  },
  {
    name: "a charger that gives less than its full output: a warning",
    plan: planWith({ more: charger("inputMinV: 11.8") }),
    finds: [
      {
        subject: "charger",
        on: "inputMinV",
        severity: "warning",
        message:
          'Only 11.76 V in "everything on" at the charger (estimated: 12 V at rest), which needs 11.8 V (inputMinV): use ',
        fixes: [
          {
            title: "Use 2 AWG for feed and feed return",
            gives: { "charger input": { gauge: 6 }, feed: { gauge: 2 } },
          },
        ],
      },
    ],
  },
  {
    name: "the start of a motor that no scenario starts: 12 V less 100 A over 10 mΩ are 11 V",
    plan: motorBehind("internalMilliohm: 10", "minimumV: 10.99"),
    finds: "nothing",
  },
  {
    name: "a little less than it needs to start: a warning",
    plan: motorBehind("internalMilliohm: 10", "minimumV: 11.01"),
    finds: [
      {
        subject: "pump",
        on: "minimumV",
        severity: "warning",
        message:
          'Only 11 V in "everything on, pump starting" at pump (estimated: 12 V at rest), which needs 11.01 V (minimumV): shorten the run',
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a motor that is on in none of the plan's scenarios starts alone",
    plan: `${motorBehind("internalMilliohm: 10", "minimumV: 11.01")} scenario({ name: "night", off: [pump] });`,
    finds: [
      { on: "minimumV", severity: "warning", message: 'Only 11 V in "pump starting alone"', fixes: "no fix" },
    ],
  },
  {
    name: "a start with the usual resistance of the battery: information",
    plan: motorBehind("", "minimumV: 11.8"),
    finds: [
      {
        on: "minimumV",
        severity: "info",
        message: "Only 11",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a start that no scenario states: the radio beside it is not judged there",
    plan: `${motorBehind("internalMilliohm: 10", "")}
      const radio = load({ currentA: 0.1, minimumV: 11.5 });
      circuit({ from: house.positive, returnTo: house.negative, to: radio, oneWayFt: 0.1, gauge: 16, protect: 5 });`,
    finds: "nothing",
  },
  {
    name: "accepted with a reason",
    plan: planWith({
      radio: 'minimumV: 11.99, accept: { "scenario/device-below-minimum": "it has its own battery" }',
    }),
    finds: [{ on: "minimumV", message: "Only 11.7 V", accepted: "it has its own battery", fixes: "no fix" }],
  },
]);

interface Changes {
  /** The options of the radio, a load of 10 A. */
  readonly radio?: string;
  /** A circuit with its own load instead. */
  readonly circuit?: string;
  readonly more?: string;
}

function planWith({ radio, circuit, more = "" }: Changes): string {
  const supply = "from: bus.stud, returnTo: back.stud, oneWayFt: 10, gauge: 10, protect: 20";
  return `
    build({ insulationC: 105 });
    const house = battery({ chemistry: "AGM", capacityAh: 200, internalMilliohm: 2 });
    const bus = busBar({ side: "positive" });
    const back = busBar({ side: "negative" });
    cable({ name: "feed", from: house.positive, to: bus.stud, lengthFt: 10, gauge: 4, protect: 100 });
    cable({ name: "feed return", from: house.negative, to: back.stud, lengthFt: 10, gauge: 4 });
    ${radio === undefined ? "" : `const radio = load({ currentA: 10, ${radio} }); circuit({ name: "radio supply", to: radio, ${supply} });`}
    ${circuit === undefined ? "" : `circuit({ name: "lamps", ${supply}, ${circuit} });`}
    ${more}`;
}

function motorBehind(resistance: string, minimum: string): string {
  return `
    build({ insulationC: 105 });
    const house = battery({ chemistry: "AGM", capacityAh: 100, ${resistance} });
    const pump = motor({ runningA: 20, startingA: 100, ${minimum} });
    circuit({ name: "pump supply", from: house.positive, returnTo: house.negative, to: pump, oneWayFt: 0.03, gauge: "4/0", protect: 60 });`;
}

function inverter(of: string): string {
  return `
    const kettle = inverter({ continuousW: 300, ${of} });
    circuit({ name: "inverter supply", from: bus.stud, returnTo: back.stud, to: kettle, oneWayFt: 4, gauge: 6, protect: 80 });`;
}
function charger(of: string): string {
  return `
    const second = battery({ chemistry: "AGM", capacityAh: 100, internalMilliohm: 4 });
    const charger = dcDcCharger({ name: "charger", outputA: 20, isolated: true, runs: "always", ${of} });
    circuit({ name: "charger input", from: bus.stud, returnTo: back.stud, to: charger, oneWayFt: 4, gauge: 6, protect: 80 });
    cable({ name: "charger output", from: charger.outputPositive, to: second.positive, lengthFt: 3, gauge: 6, protectFarEnd: 50 });
    cable({ name: "charger return", from: charger.outputNegative, to: second.negative, lengthFt: 3, gauge: 6 });`;
}
