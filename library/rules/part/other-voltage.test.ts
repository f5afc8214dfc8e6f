import { testRule } from "../rule.tester.ts";
import { partOtherVoltage } from "./other-voltage.ts";

// Common practice, no source: a device works down to 70 to 90 % of its nominal voltage.
const wired = (rest: string) => `
  build({ voltage: 24, insulationC: 105 });
  const bank = battery({ chemistry: "AGM", capacityAh: 100, internalMilliohm: 10 });
  const rails = { from: bank.positive, returnTo: bank.negative, oneWayFt: 6, gauge: 12, protect: 10 };
  ${rest}`;

const mains = (rest: string) => `
  const mains = shoreCharger({ name: "mains", outputA: 10, ${rest} });
  circuit({ name: "charge", from: bank.positive, returnTo: bank.negative, to: mains, oneWayFt: 2, gauge: 8, protect: 20 });`;

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
          "Works from 11.9 V on (minimumV), less than half of the 24 V here; a device for 24 V rarely does (common practice, no source): see on its nameplate that it is made for 24 V, and state its maximum (maximumV).",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a circuit on its own",
    circuits: [{ voltage: 24, load: 3, minimumV: 9 }],
    finds: [{ on: "minimumV", severity: "info", message: "Works from 9 V on (minimumV)", fixes: "no fix" }],
  },
  {
    name: "a motor",
    plan: wired(`const fan = motor({ name: "fan", runningA: 3, startingA: 6, minimumV: 9.5 });
      circuit({ ...rails, name: "fan wires", to: fan });`),
    finds: [
      {
        subject: "fan",
        record: "fan",
        on: "minimumV",
        severity: "info",
        message: "Works from 9.5 V on",
        fixes: "no fix",
      },
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
      {
        subject: "converter",
        on: "inputMinV",
        severity: "info",
        message: "Works from 10.5 V on (inputMinV)",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a low minimum with a maximum that is sufficient while the bank is charged",
    plan: wired(`circuit({ ...rails, name: "lamp", load: 3, minimumV: 10, maximumV: 28.8 });`),
    finds: "nothing",
  },
  {
    name: "the nominal voltage, just withstood",
    circuits: [{ voltage: 5, load: 1, maximumV: 5 }],
    finds: "nothing",
  },
  {
    name: "a maximum below the nominal voltage",
    plan: wired(`circuit({ ...rails, name: "lamp", load: 3, minimumV: 10, maximumV: 23.9 });`),
    finds: [
      {
        subject: "lamp",
        record: "lamp",
        on: "maximumV",
        severity: "error",
        message:
          "Withstands 23.9 V (maximumV), and its circuit has 24 V: use one made for 24 V, or feed it through a converter.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a circuit on its own for less than it has",
    circuits: [{ voltage: 24, load: 3, maximumV: 15 }],
    finds: [
      {
        on: "maximumV",
        severity: "error",
        message: "Withstands 15 V (maximumV), and its circuit has 24 V",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a circuit on its own for less than charging needs",
    circuits: [{ load: 3, maximumV: 14 }],
    finds: [
      {
        on: "maximumV",
        severity: "warning",
        message:
          "Withstands 14 V (maximumV), and up to 14.4 V reach it while its bank is charged (estimated: the charging voltage is not stated; common practice, no source): use one for 14.4 V or more, or feed it through a converter.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a network without a charger, just below the usual voltage",
    plan: wired(`circuit({ ...rails, name: "lamp", load: 3, maximumV: 28.7 });`),
    finds: [
      {
        on: "maximumV",
        severity: "warning",
        message:
          "Withstands 28.7 V (maximumV), and up to 28.8 V reach it while its bank is charged (estimated: the charging voltage is not stated; common practice, no source): use one for 28.8 V or more, or feed it through a converter, or charge with 28.7 V at most.",
        fixes: "no fix",
      },
    ],
  },
  ...[
    { name: "a charger with just the maximum", maximumV: 29.2, finds: "nothing" as const },
    {
      name: "a charger above the maximum, on a bank that can be charged with less",
      maximumV: 29.1,
      finds: [
        {
          on: "maximumV",
          severity: "error" as const,
          message:
            "Withstands 29.1 V (maximumV), and up to 29.2 V reach it from the shore charger mains: use one for 29.2 V or more, or feed it through a converter, or charge with 29.1 V at most.",
          fixes: "no fix" as const,
        },
      ],
    },
    {
      name: "a charger above the maximum, on a bank that needs as much",
      maximumV: 28,
      finds: [
        {
          on: "maximumV",
          severity: "error" as const,
          message:
            "Withstands 28 V (maximumV), and up to 29.2 V reach it from the shore charger mains: use one for 29.2 V or more, or feed it through a converter.",
          fixes: "no fix" as const,
        },
      ],
    },
  ].map(({ name, maximumV, finds }) => ({
    name,
    plan: wired(
      `${mains("outputV: 29.2")} circuit({ ...rails, name: "lamp", load: 3, maximumV: ${maximumV} });`,
    ),
    finds,
  })),
  {
    name: "a charger whose voltage is not stated",
    plan: wired(`${mains("")} circuit({ ...rails, name: "lamp", load: 3, maximumV: 28 });`),
    finds: [
      {
        on: "maximumV",
        severity: "warning",
        message:
          "Withstands 28 V (maximumV), and up to 28.8 V reach it from the shore charger mains (estimated",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a scenario in which the bank is equalised",
    plan: wired(`${mains("outputV: 28.8")} scenario({ name: "equalising", bankV: 31 });
      circuit({ ...rails, name: "lamp", load: 3, maximumV: 30 });`),
    finds: [
      {
        on: "maximumV",
        severity: "error",
        message: 'Withstands 30 V (maximumV), and up to 31 V reach it in "equalising": use one for 31 V',
        fixes: "no fix",
      },
    ],
  },
  {
    name: "half of a bank that is charged as a whole",
    plan: `
      build({ insulationC: 105 });
      const low = battery({ chemistry: "AGM", capacityAh: 100, nominalV: 12, internalMilliohm: 10 });
      const high = battery({ chemistry: "AGM", capacityAh: 100, nominalV: 12, internalMilliohm: 10 });
      cable({ name: "link", from: low.positive, to: high.negative, lengthFt: 1, gauge: 4 });
      const mains = shoreCharger({ name: "mains", outputA: 10, outputV: 29 });
      circuit({ name: "charge", from: high.positive, returnTo: low.negative, to: mains, oneWayFt: 2, gauge: 8, protect: 20 });
      circuit({ name: "lamp", from: low.positive, returnTo: low.negative, load: 1, oneWayFt: 6, gauge: 14, protect: 5, maximumV: 14.4 });
      circuit({ name: "clock", from: low.positive, returnTo: low.negative, load: 1, oneWayFt: 6, gauge: 14, protect: 5, maximumV: 14.5 });`,
    finds: [
      {
        subject: "lamp",
        on: "maximumV",
        message: "Withstands 14.4 V (maximumV), and up to 14.5 V reach it from the shore charger mains",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "behind a converter that holds a voltage of its own",
    plan: wired(`const one = dcDcCharger({ name: "converter", outputA: 5, outputV: 13, inputMinV: 20, isolated: true });
      circuit({ ...rails, name: "feed", to: one });
      for (const maximumV of [12.9, 13])
        circuit({ name: \`lamp for \${maximumV} V\`, from: one.outputPositive, returnTo: one.outputNegative, load: 1, oneWayFt: 3, gauge: 14, maximumV });`),
    finds: [
      {
        subject: "lamp for 12.9 V",
        on: "maximumV",
        message:
          "Withstands 12.9 V (maximumV), and up to 13 V reach it from the DC-DC charger converter: use one for",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "the input of a converter, and an inverter that switches off at the voltage of 12 V",
    plan: wired(`const one = dcDcCharger({ name: "converter", outputA: 5, outputV: 13, inputMinV: 10, inputMaxV: 18, isolated: true });
      circuit({ ...rails, name: "feed", to: one });
      circuit({ name: "lamp", voltage: 12, from: one.outputPositive, returnTo: one.outputNegative, load: 1, oneWayFt: 3, gauge: 14 });
      const sine = inverter({ name: "sine", continuousW: 100, cutOffV: 10.5, maximumV: 17 });
      circuit({ ...rails, name: "sine wires", to: sine });`),
    finds: [
      {
        subject: "converter",
        on: "inputMaxV",
        message: "Withstands 18 V (inputMaxV), and its circuit has 24 V",
        fixes: "no fix",
      },
      {
        subject: "sine",
        on: "maximumV",
        message: "Withstands 17 V (maximumV), and its circuit has 24 V: use one made for 24 V.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a fan straight on modules, on the coldest day",
    plan: `
      build({ insulationC: 105, lowestC: -10 });
      const roof = solarArray({ name: "roof", openCircuitV: 22, shortCircuitA: 6, maxPowerV: 18, maxPowerA: 5 });
      circuit({ name: "fan", from: roof.positive, returnTo: roof.negative, load: 2, oneWayFt: 6, gauge: 14, protect: 10, maximumV: 22 });`,
    finds: [
      {
        subject: "fan",
        on: "maximumV",
        message: "Withstands 22 V (maximumV), and up to 25.1 V reach it from the solar array roof",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "accepted with a reason",
    plan: wired(
      `circuit({ ...rails, name: "lamp", load: 3, minimumV: 10, accept: { "part/other-voltage": "10 to 30 V" } });`,
    ),
    finds: [
      {
        on: "minimumV",
        severity: "info",
        message: "Works from 10 V on",
        accepted: "10 to 30 V",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a reason for that information, and a maximum below its circuit's voltage: not accepted",
    plan: wired(
      `circuit({ ...rails, name: "lamp", load: 3, minimumV: 10, maximumV: 16, accept: { "part/other-voltage": "10 to 30 V" } });`,
    ),
    finds: [
      {
        on: "maximumV",
        severity: "error",
        message: "Withstands 16 V (maximumV), and its circuit has 24 V",
        fixes: "no fix",
      },
    ],
  },
]);
