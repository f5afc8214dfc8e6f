import { testRule } from "../rule.tester.ts";
import { loadDump } from "./load-dump.ts";

// Common practice, no source.
testRule(loadDump, [
  { name: "a lead-acid battery alone", plan: planWith({ chemistry: "AGM" }), finds: "nothing" },
  {
    name: "a lithium battery alone",
    plan: planWith(),
    finds: [
      {
        subject: "engine",
        record: "engine",
        on: "",
        severity: "warning",
        message:
          "Charges only the battery house: if the protection there cuts off, the voltage surges (common practice, no source). Put a lead-acid battery beside the alternator, or a DC-DC charger between.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a lead-acid battery beside it",
    plan: planWith({
      more: `const start = battery({ chemistry: "AGM", capacityAh: 60, internalMilliohm: 6 });
        cable({ name: "start", from: house.positive, to: start.positive, lengthFt: 2, gauge: 2, protect: 150, protectFarEnd: 150 });
        cable({ name: "start return", from: house.negative, to: start.negative, lengthFt: 2, gauge: 2 });`,
    }),
    finds: "nothing",
  },
  {
    name: "a charger between: the lithium battery is on its other side",
    plan: `build({ insulationC: 105 });
      const engine = alternator({ ratedA: 70 });
      const house = battery({ chemistry: "LiFePO4", capacityAh: 200, internalMilliohm: 4 });
      const charger = dcDcCharger({ outputA: 20, isolated: true });
      circuit({ name: "input", from: engine.positive, to: charger, oneWayFt: 4, gauge: 4 });
      circuit({ name: "output", from: charger.outputPositive, returnTo: charger.outputNegative, to: house, oneWayFt: 4, gauge: 8, protectFarEnd: 30 });`,
    finds: "nothing",
  },
  {
    name: "accepted with a reason",
    plan: planWith({
      alternator: 'accept: { "alternator/load-dump": "the battery stops the regulator before it cuts off" }',
    }),
    finds: [
      {
        on: "",
        message: "Charges only the battery house",
        accepted: "the battery stops the regulator before it cuts off",
        fixes: "no fix",
      },
    ],
  },
]);

function planWith({ chemistry = "LiFePO4", more = "", alternator = "" } = {}): string {
  return `
    build({ insulationC: 105 });
    const house = battery({ chemistry: "${chemistry}", capacityAh: 200, internalMilliohm: 4, maxChargeA: 50 });
    const engine = alternator({ ratedA: 70, ${alternator} });
    cable({ name: "charging", from: engine.positive, to: house.positive, lengthFt: 4, gauge: 4, protectFarEnd: 100 });
    cable({ name: "charging return", from: engine.negative, to: house.negative, lengthFt: 4, gauge: 4 });
    ${more}`;
}
