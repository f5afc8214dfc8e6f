import { testRule } from "../rule.tester.ts";
import { wrongPort } from "./wrong-port.ts";

const bank = `build({ insulationC: 105 });
  const house = battery({ chemistry: "AGM", capacityAh: 200, internalMilliohm: 4 });`;
const solar = `
  const roof = solarArray({ openCircuitV: 22, shortCircuitA: 10, maxPowerV: 18, maxPowerA: 9, series: 2 });
  const mppt = solarController({ maxInputV: 100, outputA: 30 });
  circuit({ name: "modules", from: roof.positive, returnTo: roof.negative, to: mppt, oneWayFt: 10, gauge: 10 });`;
const booster = `
  const start = battery({ chemistry: "AGM", capacityAh: 80, internalMilliohm: 4 });
  const booster = dcDcCharger({ outputA: 30 });
  circuit({ name: "in", from: start.positive, to: booster, oneWayFt: 10, gauge: 4, protect: 60 });`;

testRule(wrongPort, [
  {
    name: "modules at one side, battery at the other",
    plan: `${bank} ${solar}
      circuit({ name: "charge", from: mppt.positive, returnTo: mppt.negative, to: house, oneWayFt: 4, gauge: 8, protectFarEnd: 40 });`,
    finds: "nothing",
  },
  {
    name: "a circuit from the battery to the controller as a whole",
    plan: `${bank} ${solar}
      circuit({ name: "charge", from: house.positive, to: mppt, oneWayFt: 4, gauge: 8, protect: 40 });`,
    finds: [
      {
        subject: "charge",
        record: "charge",
        on: "to",
        severity: "error",
        message:
          "Connects the battery house with the modules' side of the solar controller mppt (solarPositive, solarNegative). The side for batteries is positive and negative: begin the circuit there (from: positive, returnTo: negative), or use a cable for each.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "the same from a bus bar, without modules yet",
    plan: `${bank} const plus = busBar({});
      cable({ name: "main", from: house.positive, to: plus.stud, lengthFt: 2, gauge: 4, protect: 100 });
      const mppt = solarController({ maxInputV: 100, outputA: 30 });
      circuit({ name: "charge", from: plus.stud, returnTo: house.negative, to: mppt, oneWayFt: 4, gauge: 8, protect: 40 });`,
    finds: [{ subject: "charge", on: "to", message: "Connects the battery house with", fixes: "no fix" }],
  },
  {
    name: "a cable that begins at the wrong terminal",
    plan: `${bank} const mppt = solarController({ maxInputV: 100, outputA: 30 });
      cable({ name: "slip", from: mppt.solarPositive, to: house.positive, lengthFt: 2, gauge: 8, protectFarEnd: 40 });`,
    finds: [{ subject: "slip", on: "from", message: "Connects the battery house with", fixes: "no fix" }],
  },
  {
    name: "a charger with its input and its output",
    plan: `${bank} ${booster}
      circuit({ name: "out", from: booster.outputPositive, returnTo: booster.outputNegative, to: house, oneWayFt: 4, gauge: 8, protectFarEnd: 40 });`,
    finds: "nothing",
  },
  {
    name: "a second circuit to the charger as a whole",
    plan: `${bank} ${booster}
      circuit({ name: "out", from: house.positive, to: booster, oneWayFt: 4, gauge: 8, protect: 40 });`,
    finds: [
      {
        subject: "out",
        record: "out",
        on: "to",
        severity: "error",
        message:
          "Ends at the input of the DC-DC charger booster (inputPositive, inputNegative) beside another feed, and the output is free: current passes the charger by. Begin the circuit at the output (from: outputPositive, returnTo: outputNegative), or use a cable for each.",
        fixes: "no fix",
      },
    ],
  },
  { name: "a charger whose output is not planned yet", plan: `${bank} ${booster}`, finds: "nothing" },
  {
    name: "accepted with a reason",
    plan: `${bank} const mppt = solarController({ maxInputV: 100, outputA: 30 });
      circuit({ name: "charge", from: house.positive, to: mppt, oneWayFt: 4, gauge: 8, protect: 40, accept: { "network/wrong-port": "it raises 12 V to 24 V" } });`,
    finds: [{ on: "to", message: "Connects", accepted: "it raises 12 V to 24 V", fixes: "no fix" }],
  },
]);
