import { testRule } from "../rule.tester.ts";
import { voltageCollapse } from "./collapse.ts";

// By hand: 18.288 m of 8 AWG at the 105 °C of its insulation, which it reaches far above its 80 A, have 18.288 · 2.061 · 1.02 ·
// (1 + 0.00393 · 85) = 51.29 mΩ, with the battery 61.29 mΩ. From 12 V that carries at most 12² / (4 · 0.06129) = 587.4 W, an
// inverter's 528.6 W at 90 %.
testRule(voltageCollapse, [
  { name: "just as much as the supply can carry", plan: planWith(528), finds: "nothing" },
  {
    name: "a little more than the supply can carry",
    plan: planWith(530),
    finds: [
      {
        subject: "kettle",
        record: "kettle",
        on: "",
        severity: "error",
        message:
          'No voltage exists in "everything on" at which all loads run: the supply carries 99.7 % of the power; the voltage falls first at the inverter kettle (estimated: 12 V at rest). Use thicker or shorter conductors, or run less at once.',
        values: { why: "collapse" },
        fixes: "no fix",
      },
    ],
  },
  {
    name: "in one scenario of the plan: told there",
    plan: `${planWith(600)} scenario({ name: "cooking" }); scenario({ name: "night", off: [kettle] });`,
    finds: [
      {
        subject: "cooking",
        on: "",
        severity: "error",
        message:
          'No voltage exists in "cooking" at which all loads run: the supply carries 88.1 % of the power',
        fixes: "no fix",
      },
    ],
  },
  {
    name: "off in the one scenario of the plan",
    plan: `${planWith(600)} scenario({ name: "night", off: [kettle] });`,
    finds: "nothing",
  },
]);

function planWith(continuousW: number): string {
  return `
    build({ insulationC: 105 });
    const house = battery({ chemistry: "AGM", capacityAh: 100, internalMilliohm: 10 });
    const kettle = inverter({ continuousW: ${continuousW}, cutOffV: 5 });
    circuit({ name: "inverter supply", from: house.positive, to: kettle, oneWayFt: 30, gauge: 8, protect: 80 });`;
}
