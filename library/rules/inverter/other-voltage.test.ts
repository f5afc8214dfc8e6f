import { testRule } from "../rule.tester.ts";
import { otherVoltage } from "./other-voltage.ts";

// Common practice, no source: no cut-off is below 60 % of the voltage that an inverter is made for.
testRule(otherVoltage, [
  { name: "an inverter for 24 V on 24 V", plan: planWith(), finds: "nothing" },
  {
    name: "an inverter for 12 V on 24 V",
    plan: planWith({ cutOffV: 10.5 }),
    finds: [
      {
        subject: "kettle",
        record: "kettle",
        on: "cutOffV",
        severity: "error",
        message:
          "Switches off at 10.5 V (cutOffV), and 23.8 V arrive: it is made for a lower voltage, or this is not its cut-off; about 21 V is usual here (common practice, no source). Use an inverter for this bank, or state its own cut-off.",
        fixes: "no fix",
      },
    ],
  },
  { name: "a low cut-off", plan: planWith({ cutOffV: 14.4 }), finds: "nothing" },
  { name: "on the half of a bank of 48 V", plan: planWith({ onHalf: true }), finds: "nothing" },
  {
    name: "accepted with a reason",
    plan: planWith({
      cutOffV: 10,
      more: 'accept: { "inverter/other-voltage": "made for 10 to 60 V" }',
    }),
    finds: [
      { on: "cutOffV", message: "Switches off at 10 V", accepted: "made for 10 to 60 V", fixes: "no fix" },
    ],
  },
]);

function planWith({ cutOffV = 21, more = "", onHalf = false } = {}): string {
  const upper = onHalf
    ? 'const upper = battery({ chemistry: "AGM", nominalV: 24, capacityAh: 100, internalMilliohm: 5 });\n cable({ from: lower.positive, to: upper.negative, lengthFt: 1, gauge: 2 });'
    : "";
  return `
    build({ insulationC: 105, voltage: ${onHalf ? 48 : 24} });
    const lower = battery({ chemistry: "AGM", nominalV: 24, capacityAh: 100, internalMilliohm: 5 });
    ${upper}
    const kettle = inverter({ continuousW: 500, cutOffV: ${cutOffV}, ${more} });
    circuit({ name: "kettle pair", from: lower.positive, returnTo: lower.negative, to: kettle, oneWayFt: 4, gauge: 4, protect: 60 });`;
}
