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
    name: "behind the battery switch",
    plan: `const house = battery({ chemistry: "AGM", capacityAh: 100, internalMilliohm: 4 });
      const off = disconnect({ ratedA: 200 }); ${behindSwitch("off.load")}
      cable({ name: "main", from: house.positive, to: off.line, lengthFt: 1, gauge: 2 });`,
    finds: [
      {
        subject: "engine",
        record: "engine",
        on: "",
        severity: "warning",
        message:
          "The disconnect off can disconnect it from every battery while the engine runs: the voltage then surges (common practice, no source). Connect the alternator's plus on the battery's side, or put a battery beside it.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "on the battery's side of the switch",
    plan: `const house = battery({ chemistry: "AGM", capacityAh: 100, internalMilliohm: 4 });
      const off = disconnect({ ratedA: 200 }); ${behindSwitch("off.line")}
      cable({ name: "main", from: house.positive, to: off.line, lengthFt: 1, gauge: 2 });`,
    finds: "nothing",
  },
  {
    name: "a switch in the minus",
    plan: `const house = battery({ chemistry: "AGM", capacityAh: 100, internalMilliohm: 4 });
      const off = disconnect({ ratedA: 200 });
      const engine = alternator({ ratedA: 70 });
      cable({ name: "charging", from: engine.positive, to: house.positive, lengthFt: 4, gauge: 4, protectFarEnd: 100 });
      cable({ name: "charging return", from: engine.negative, to: off.load, lengthFt: 4, gauge: 4 });
      cable({ name: "main", from: house.negative, to: off.line, lengthFt: 1, gauge: 2 });`,
    finds: [{ on: "", message: "The disconnect off can disconnect it", fixes: "no fix" }],
  },
  {
    name: "another battery stays beside it",
    plan: `const house = battery({ chemistry: "AGM", capacityAh: 100, internalMilliohm: 4 });
      const off = disconnect({ ratedA: 200 }); ${behindSwitch("off.load")}
      cable({ name: "main", from: house.positive, to: off.line, lengthFt: 1, gauge: 2 });
      const start = battery({ chemistry: "AGM", capacityAh: 60, internalMilliohm: 6 });
      cable({ name: "start", from: off.load, to: start.positive, lengthFt: 2, gauge: 2, protect: 150, protectFarEnd: 150 });
      cable({ name: "start return", from: house.negative, to: start.negative, lengthFt: 2, gauge: 2 });`,
    finds: "nothing",
  },
  {
    name: "two in series stay beside it",
    plan: `build({ voltage: 24 });
      const low = battery({ chemistry: "AGM", capacityAh: 100, internalMilliohm: 4 });
      const house = battery({ chemistry: "AGM", capacityAh: 100, internalMilliohm: 4 });
      cable({ name: "link", from: low.positive, to: house.negative, lengthFt: 1, gauge: 2 });
      const engine = alternator({ ratedA: 70 });
      cable({ name: "charging", from: engine.positive, to: house.positive, lengthFt: 4, gauge: 4, protectFarEnd: 100 });
      cable({ name: "charging return", from: engine.negative, to: low.negative, lengthFt: 4, gauge: 4 });`,
    finds: "nothing",
  },
  {
    name: "a selector switch before two batteries",
    plan: `const house = battery({ chemistry: "AGM", capacityAh: 100, internalMilliohm: 4 });
      const start = battery({ chemistry: "AGM", capacityAh: 60, internalMilliohm: 6 });
      const choice = selectorSwitch({ ratedA: 200 }); ${behindSwitch("choice.common")}
      cable({ name: "one", from: house.positive, to: choice.input1, lengthFt: 1, gauge: 2 });
      cable({ name: "two", from: start.positive, to: choice.input2, lengthFt: 1, gauge: 2 });
      cable({ name: "start return", from: house.negative, to: start.negative, lengthFt: 2, gauge: 2 });`,
    finds: [{ on: "", message: "The selector switch choice can disconnect it", fixes: "no fix" }],
  },
  {
    name: "an outboard, which charges through the cable of its starter motor",
    plan: `const house = battery({ chemistry: "AGM", capacityAh: 100, internalMilliohm: 4 });
      const off = disconnect({ ratedA: 200 });
      const outboard = starterMotor({ crankingA: 120 });
      cable({ name: "main", from: house.positive, to: off.line, lengthFt: 1, gauge: 2 });
      cable({ name: "feed", from: off.load, to: outboard.positive, lengthFt: 8, gauge: 2 });
      cable({ name: "feed return", from: outboard.negative, to: house.negative, lengthFt: 8, gauge: 2 });
      ${behindSwitch("outboard.positive")}`,
    finds: [
      {
        subject: "engine",
        on: "",
        severity: "info",
        message:
          "Charges through the cable of its starter motor, in which the disconnect off can disconnect it from every battery: the voltage then surges (common practice, no source). Leave the switch on while the engine runs.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "an outboard by its name, whose charging wire is written as a cable of its own",
    plan: `const house = battery({ chemistry: "AGM", capacityAh: 100, internalMilliohm: 4 });
      const off = disconnect({ ratedA: 200 }); ${behindSwitch("off.load").replace("ratedA: 70", 'ratedA: 15, name: "outboard generator"')}
      cable({ name: "main", from: house.positive, to: off.line, lengthFt: 1, gauge: 2 });`,
    finds: [
      {
        on: "",
        severity: "info",
        message:
          "The disconnect off can disconnect it from every battery while the engine runs: the voltage then surges (common practice, no source). Leave the switch on while it runs, or lead its charging wire straight to the battery if its maker asks for that.",
        fixes: "no fix",
      },
    ],
  },
  { name: "no battery at all", plan: "alternator({ ratedA: 70 });", finds: "nothing" },
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

function behindSwitch(side: string): string {
  return `const engine = alternator({ ratedA: 70 });
    cable({ name: "charging", from: engine.positive, to: ${side}, lengthFt: 4, gauge: 4, protectFarEnd: 100 });
    cable({ name: "charging return", from: engine.negative, to: house.negative, lengthFt: 4, gauge: 4 });`;
}

function planWith({ chemistry = "LiFePO4", more = "", alternator = "" } = {}): string {
  return `
    build({ insulationC: 105 });
    const house = battery({ chemistry: "${chemistry}", capacityAh: 200, internalMilliohm: 4, maxChargeA: 50 });
    const engine = alternator({ ratedA: 70, ${alternator} });
    cable({ name: "charging", from: engine.positive, to: house.positive, lengthFt: 4, gauge: 4, protectFarEnd: 100 });
    cable({ name: "charging return", from: engine.negative, to: house.negative, lengthFt: 4, gauge: 4 });
    ${more}`;
}
