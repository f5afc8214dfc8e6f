import { testRule } from "../rule.tester.ts";
import { chargingVoltageOfBattery } from "./charging-voltage.ts";

const charged = (bank: string, charger: string, build = "") => `
  ${build}
  const house = battery({ capacityAh: 100, internalMilliohm: 5, ${bank} });
  const shore = shoreCharger({ outputA: 20, ${charger} });
  cable({ from: shore.positive, to: house.positive, lengthFt: 3, gauge: 4 });
  cable({ from: shore.negative, to: house.negative, lengthFt: 3, gauge: 4 });`;

const high = "build({ voltage: 48 });";

// Absorption voltages of each chemistry: common practice, from memory. 3.65 V a cell: the end of charge of LiFePO4.
testRule(chargingVoltageOfBattery, [
  {
    name: "the usual voltage for gel, at its upper end",
    plan: charged('chemistry: "gel"', ""),
    finds: "nothing",
  },
  {
    name: "just above what gel takes",
    plan: charged('chemistry: "gel"', "outputV: 14.5"),
    finds: [
      {
        subject: "shore",
        record: "shore",
        on: "outputV",
        severity: "warning",
        message:
          "Charges gel (the battery house) to 14.5 V, 2.42 V a cell; up to 14.4 V is usual (common practice, no source). Set it to 14.1 to 14.4 V.",
        fixes: "no fix",
      },
    ],
  },
  // 2.2 V a lead-acid cell hold it full: common practice, from memory.
  {
    name: "just enough to hold lead-acid full",
    plan: charged('chemistry: "AGM"', "outputV: 13.2"),
    finds: "nothing",
  },
  {
    name: "too little to hold lead-acid full",
    plan: charged('chemistry: "AGM"', "outputV: 13.1"),
    finds: [
      {
        subject: "shore",
        record: "shore",
        on: "outputV",
        severity: "warning",
        message:
          "Charges AGM (the battery house) to 13.1 V, below the 13.2 V that hold it full (common practice, no source): it never gets full. Set it to 14.2 to 14.7 V.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "sixteen cells at their end of charge, by either label",
    plan: charged('chemistry: "LiFePO4", nominalV: 51.2', "outputV: 58.4", high),
    finds: "nothing",
  },
  {
    name: "the same at 48 V",
    plan: charged('chemistry: "LiFePO4", nominalV: 48', "outputV: 58.4", high),
    finds: "nothing",
  },
  {
    name: "sixteen cells above it",
    plan: charged('chemistry: "LiFePO4", nominalV: 51.2', "outputV: 59.2", high),
    finds: [
      {
        on: "outputV",
        message: "Charges LiFePO4 (the battery house) to 59.2 V, 3.7 V a cell; up to 58.4 V is usual",
        fixes: "no fix",
      },
    ],
  },
  // 3.8 V a cell: above the voltage at which protection circuits cut off, from memory.
  {
    name: "four cells at the most that is left to their protection",
    plan: charged('chemistry: "LiFePO4"', "outputV: 15.2"),
    finds: [
      {
        on: "outputV",
        severity: "warning",
        message: "Charges LiFePO4 (the battery house) to 15.2 V, 3.8 V a cell; up to 14.6 V",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "four cells at the equalising voltage of lead-acid",
    plan: charged('chemistry: "LiFePO4"', "outputV: 15.8"),
    finds: [
      {
        on: "outputV",
        severity: "error",
        message:
          "Charges LiFePO4 (the battery house) to 15.8 V, 3.95 V a cell; up to 14.6 V is usual (common practice, no source), and its protection alone keeps the cells from overcharge: it has to cut off under full current. Set it to 14 to 14.6 V.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "modules without a controller on lithium",
    plan: `
      const house = battery({ chemistry: "LiFePO4", capacityAh: 100, internalMilliohm: 5 });
      const roof = solarArray({ openCircuitV: 22, shortCircuitA: 6, maxPowerV: 18, maxPowerA: 5.6 });
      cable({ from: roof.positive, to: house.positive, lengthFt: 12, gauge: 12, protectFarEnd: 15 });
      cable({ from: roof.negative, to: house.negative, lengthFt: 12, gauge: 12 });`,
    finds: [
      { on: "", severity: "error", message: "No controller limits the modules, up to 22 V", fixes: "no fix" },
    ],
  },
  {
    name: "modules without a controller",
    plan: `
      const house = battery({ chemistry: "AGM", capacityAh: 100, internalMilliohm: 5 });
      const roof = solarArray({ openCircuitV: 22, shortCircuitA: 6, maxPowerV: 18, maxPowerA: 5.6 });
      cable({ from: roof.positive, to: house.positive, lengthFt: 12, gauge: 12, protectFarEnd: 15 });
      cable({ from: roof.negative, to: house.negative, lengthFt: 12, gauge: 12 });`,
    finds: [
      {
        subject: "roof",
        record: "roof",
        on: "",
        severity: "warning",
        message:
          "No controller limits the modules, up to 22 V, on AGM (the battery house), which takes up to 14.7 V (common practice, no source): put a solar controller between them.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "modules behind a controller",
    plan: `
      const house = battery({ chemistry: "AGM", capacityAh: 100, internalMilliohm: 5 });
      const roof = solarArray({ openCircuitV: 22, shortCircuitA: 6, maxPowerV: 18, maxPowerA: 5.6 });
      const sun = solarController({ maxInputV: 50, outputA: 10 });
      circuit({ from: roof.positive, returnTo: roof.negative, to: sun, oneWayFt: 12, gauge: 12 });
      cable({ from: sun.positive, to: house.positive, lengthFt: 2, gauge: 12, protectFarEnd: 15 });
      cable({ from: sun.negative, to: house.negative, lengthFt: 2, gauge: 12 });`,
    finds: "nothing",
  },
  {
    name: "a voltage at which it never gets full",
    plan: charged('chemistry: "LiFePO4"', "outputV: 13.3"),
    finds: [
      {
        on: "outputV",
        severity: "warning",
        message:
          "Charges LiFePO4 (the battery house) to 13.3 V, below the 13.4 V at which it rests when full (common practice, no source): it never gets full. Set it to 14 to 14.6 V.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a charger for half the cells charges nothing",
    plan: charged('chemistry: "AGM", nominalV: 24', "outputV: 14.4", "build({ voltage: 24 });"),
    finds: [
      {
        on: "outputV",
        severity: "error",
        message: "Charges AGM (the battery house) to 14.4 V, below the ",
        values: { what: "for fewer cells" },
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a charger for twice the cells",
    plan: charged('chemistry: "AGM"', "outputV: 28.8"),
    finds: [
      {
        on: "outputV",
        severity: "error",
        message:
          "Charges AGM (the battery house) to 28.8 V, 4.8 V a cell; up to 14.7 V is usual (common practice, no source): this source is for more cells",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "an equalising charge is not for more cells",
    plan: charged('chemistry: "flooded lead-acid"', "outputV: 16"),
    finds: [
      {
        on: "outputV",
        severity: "warning",
        message: "Charges flooded lead-acid (the battery house) to 16 V",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "accepted with a reason",
    plan: charged(
      'chemistry: "flooded lead-acid"',
      'outputV: 15.5, accept: { "battery/charging-voltage": "equalising charge, by hand" }',
    ),
    finds: [
      {
        on: "outputV",
        message: "Charges flooded lead-acid",
        accepted: "equalising charge, by hand",
        fixes: "no fix",
      },
    ],
  },
]);
