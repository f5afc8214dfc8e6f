import { testRule } from "../rule.tester.ts";
import { partOtherVoltage } from "./other-voltage.ts";

// Common practice, no source: a device works down to 70 to 90 % of its nominal voltage.
const wired = (rest: string) => `
  build({ voltage: 24, insulationC: 105 });
  const bank = battery({ chemistry: "AGM", capacityAh: 100, internalMilliohm: 10 });
  const rails = { from: bank.positive, returnTo: bank.negative, oneWayFt: 6, gauge: 12, protect: 10 };
  ${rest}`;

testRule(partOtherVoltage, [
  {
    name: "no minimum is stated",
    plan: wired(`circuit({ ...rails, name: "lamp", load: 3 });`),
    finds: "nothing",
  },
  {
    name: "exactly half",
    plan: wired(`circuit({ ...rails, name: "lamp", load: 3, minimumV: 12 });`),
    finds: "nothing",
  },
  {
    name: "just below half",
    plan: wired(`circuit({ ...rails, name: "lamp", load: 3, minimumV: 11.9 });`),
    finds: [
      {
        subject: "lamp",
        record: "lamp",
        on: "minimumV",
        severity: "info",
        message:
          "Works from 11.9 V on (minimumV), less than half of the 24 V here; a device for 24 V rarely does (common practice, no source): see on its nameplate that it is made for 24 V.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a circuit on its own",
    circuits: [{ voltage: 24, load: 3, minimumV: 9 }],
    finds: [{ on: "minimumV", message: "Works from 9 V on (minimumV)", fixes: "no fix" }],
  },
  {
    name: "a motor",
    plan: wired(`const fan = motor({ name: "fan", runningA: 3, startingA: 6, minimumV: 9.5 });
      circuit({ ...rails, name: "fan wires", to: fan });`),
    finds: [
      { subject: "fan", record: "fan", on: "minimumV", message: "Works from 9.5 V on", fixes: "no fix" },
    ],
  },
  {
    name: "a converter whose input is stated, and one whose input is not",
    plan: wired(`for (const input of [{ inputMinV: 10.5 }, {}]) {
        const one = dcDcCharger({ name: "converter", outputA: 5, outputV: 13, isolated: true, ...input });
        circuit({ ...rails, name: "feed", to: one });
        circuit({ name: "lamp", voltage: 12, from: one.outputPositive, returnTo: one.outputNegative, load: 1, oneWayFt: 3, gauge: 14 });
      }`),
    finds: [
      { subject: "converter", on: "inputMinV", message: "Works from 10.5 V on (inputMinV)", fixes: "no fix" },
    ],
  },
  {
    name: "accepted with a reason",
    plan: wired(
      `circuit({ ...rails, name: "lamp", load: 3, minimumV: 10, accept: { "part/other-voltage": "10 to 30 V" } });`,
    ),
    finds: [{ on: "minimumV", message: "Works from 10 V on", accepted: "10 to 30 V", fixes: "no fix" }],
  },
]);
