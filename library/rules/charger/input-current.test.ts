import { testRule } from "../rule.tester.ts";
import { inputCurrent } from "./input-current.ts";

// By hand: 30 A at 14.4 V and 90 % from 12 V are 40 A, and 48 A from 10 V. With 105 °C insulation 14 AWG may carry 35 A, 12 AWG
// 45 A, 10 AWG 60 A.
const twelve = "outputA: 30, outputV: 14.4, inputMinV: 12";
const ten = "outputA: 30, outputV: 14.4, inputMinV: 10";

testRule(inputCurrent, [
  {
    name: "a fuse of exactly what it takes",
    plan: planWith({ charger: twelve, fuse: 40 }),
    finds: "nothing",
  },
  {
    name: "a fuse for its output, not for its input",
    plan: planWith({ charger: twelve, fuse: 39 }),
    finds: [
      {
        subject: "charger input",
        record: "charger input",
        on: "protect",
        severity: "warning",
        message: "At 12 V the charger takes 40 A; the 39 A fuse opens: use a 50 A fuse.",
        fixes: [{ title: "Use a 50 A fuse", gives: { protect: 50, gauge: 6 } }],
      },
    ],
  },
  {
    name: "the conductor may carry exactly what it takes: 33.75 A from 12 V are 45 A",
    plan: planWith({ charger: "outputA: 33.75, outputV: 14.4, inputMinV: 12", fuse: 45, gauge: 12 }),
    finds: "nothing",
  },
  {
    name: "the conductor may carry less than what it takes at the least voltage",
    plan: planWith({ charger: ten, fuse: 50, gauge: 12 }),
    finds: [
      {
        on: "gauge",
        message:
          "At 10 V the charger takes 48 A; 12 AWG may carry 45 A (33 CFR 183.425(b), Table 5): use 10 AWG.",
        fixes: [{ title: "Use 10 AWG", gives: { gauge: 10, protect: 50 } }],
      },
    ],
  },
  {
    name: "what its maker states as the greatest input counts",
    plan: planWith({ charger: `${ten}, inputMaxA: 44`, fuse: 45, gauge: 12 }),
    finds: "nothing",
  },
  {
    name: "more than its maker's greatest input is needed for the fuse to hold",
    plan: planWith({ charger: `${ten}, inputMaxA: 44`, fuse: 43, gauge: 6 }),
    finds: [
      {
        on: "protect",
        message: "At 10 V the charger takes 44 A; the 43 A fuse opens: use a 50 A fuse.",
        fixes: [{ title: "Use a 50 A fuse", gives: { protect: 50 } }],
      },
    ],
  },
  {
    name: "a least input voltage that is not stated is 10.5 V for each 12 V",
    plan: planWith({ charger: "outputA: 30, outputV: 14.4", fuse: 45 }),
    finds: [
      {
        on: "protect",
        message:
          "At 10.5 V (estimated: common practice, no source) the charger takes 45.7 A; the 45 A fuse opens: use a 50 A fuse.",
        fixes: [{ title: "Use a 50 A fuse", gives: { protect: 50 } }],
      },
    ],
  },
  {
    name: "accepted with a reason",
    plan: planWith({
      charger: twelve,
      fuse: 35,
      run: 'accept: { "charger/input-current": "set to half its current" },',
    }),
    finds: [
      {
        on: "protect",
        message: "At 12 V the charger takes 40 A; the 35 A fuse opens",
        accepted: "set to half its current",
        fixes: [{ title: "Use a 50 A fuse", gives: { protect: 50 } }],
      },
    ],
  },
]);

interface Changes {
  readonly charger: string;
  readonly fuse: number;
  readonly gauge?: number;
  /** More properties of the charger's circuit. */
  readonly run?: string;
}

/** A starter battery that charges a house battery through a DC-DC charger. */
function planWith({ charger, fuse, gauge = 6, run = "" }: Changes): string {
  return `
    build({ insulationC: 105 });
    const starter = battery({ chemistry: "flooded lead-acid", capacityAh: 90, internalMilliohm: 4 });
    const house = battery({ chemistry: "LiFePO4", capacityAh: 200, internalMilliohm: 2 });
    const charger = dcDcCharger({ name: "charger", ${charger}, isolated: true });
    circuit({ name: "charger input", from: starter.positive, to: charger, oneWayFt: 6, gauge: ${gauge}, protect: ${fuse}, ${run} });
    cable({ name: "charger output", from: charger.outputPositive, to: house.positive, lengthFt: 3, gauge: 6, protectFarEnd: 50 });
    cable({ name: "charger return", from: charger.outputNegative, to: house.negative, lengthFt: 3, gauge: 6 });`;
}
