import { testRule } from "../rule.tester.ts";
import { noReturn } from "./no-return.ts";

const bank = `
  const house = battery({ chemistry: "AGM", capacityAh: 100, internalMilliohm: 4 });
  const plus = (to) => cable({ name: "plus", from: house.positive, to, lengthFt: 5, gauge: 10, protect: 30 });
  const minus = (from, to = house.negative) => cable({ name: "minus", from, to, lengthFt: 5, gauge: 10 });`;
const lamp = `const lamp = load({ name: "lamp", currentA: 5 });`;

testRule(noReturn, [
  {
    name: "out and back",
    plan: `${bank} ${lamp} plus(lamp.positive); minus(lamp.negative);`,
    finds: "nothing",
  },
  {
    name: "nothing at the negative terminal of a load",
    plan: `${bank} ${lamp} plus(lamp.positive);`,
    finds: [
      {
        subject: "lamp",
        record: "lamp",
        on: "",
        message:
          "Its negative terminal leads nowhere, so no current can flow in it: connect it to the negative side of the source that feeds it.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a negative bus that nobody joined to the bank is told once",
    plan: `${bank} ${lamp}
      const fan = load({ name: "fan", currentA: 2 });
      const back = busBar({ name: "negative bus" });
      for (const one of [lamp, fan]) { plus(one.positive); minus(one.negative, back.stud); }`,
    finds: [
      {
        subject: "negative bus",
        record: "negative bus",
        on: "",
        message:
          "Leads nowhere: the return of lamp and fan ends here and does not reach the negative side of a source. Connect it to one.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a return that leads to another bank",
    plan: `${bank} ${lamp}
      const starter = battery({ chemistry: "AGM", capacityAh: 70, internalMilliohm: 5 });
      circuit({ from: starter.positive, load: 3, oneWayFt: 5, gauge: 12, protect: 10 });
      plus(lamp.positive); minus(lamp.negative, starter.negative);`,
    finds: [
      {
        subject: "lamp",
        record: "minus",
        on: "to",
        message:
          "The negative of lamp leads to the battery starter, not back to the source that feeds it: connect it to the negative side of its own source.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "two banks whose negatives are joined: any of them brings it back",
    plan: `${bank} ${lamp}
      const starter = battery({ chemistry: "AGM", capacityAh: 70, internalMilliohm: 5 });
      circuit({ from: starter.positive, load: 3, oneWayFt: 5, gauge: 12, protect: 10 });
      minus(starter.negative);
      plus(lamp.positive); minus(lamp.negative, starter.negative);`,
    finds: "nothing",
  },
  {
    name: "a return on the positive side",
    plan: `${bank} ${lamp}
      const stud = busBar({ name: "bus" });
      plus(stud.stud); cable({ from: stud.stud, to: lamp.positive, lengthFt: 2, gauge: 10 });
      minus(lamp.negative, stud.stud);`,
    finds: [
      {
        subject: "lamp",
        record: "minus",
        on: "to",
        message: "The negative of lamp leads to the battery house, not back",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "back through the chassis",
    plan: `${bank} ${lamp} const frame = chassis({ milliohm: 1 });
      plus(lamp.positive); minus(lamp.negative, frame.metal); minus(frame.bond);`,
    finds: "nothing",
  },
  {
    name: "a chassis without its bond",
    plan: `${bank} ${lamp} const frame = chassis({ milliohm: 1 });
      plus(lamp.positive); minus(lamp.negative, frame.metal);`,
    finds: [
      {
        subject: "frame",
        record: "frame",
        on: "",
        message: "Leads nowhere: the return of lamp ends",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "between the two ends of a string, and from its middle",
    plan: `${bank} ${lamp} const upper = battery({ chemistry: "AGM", capacityAh: 100, internalMilliohm: 4 });
      const radio = load({ name: "radio", currentA: 2 });
      cable({ from: house.positive, to: upper.negative, lengthFt: 1, gauge: 4 });
      cable({ from: upper.positive, to: lamp.positive, lengthFt: 1, gauge: 4 }); minus(lamp.negative);
      plus(radio.positive); minus(radio.negative);`,
    finds: "nothing",
  },
  {
    name: "a source that feeds something but has nothing at its negative",
    plan: `${bank} ${lamp} plus(lamp.positive); minus(lamp.negative);
      const shore = shoreCharger({ outputA: 10 });
      cable({ from: shore.positive, to: house.positive, lengthFt: 3, gauge: 8 });`,
    finds: [
      {
        subject: "shore",
        record: "shore",
        on: "",
        message: "It feeds the network, but its negative terminal leads nowhere",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a charger that is not isolated has one negative inside",
    plan: `${bank}
      const starter = battery({ chemistry: "AGM", capacityAh: 70, internalMilliohm: 5 });
      const charger = dcDcCharger({ outputA: 10 });
      cable({ from: starter.positive, to: charger.inputPositive, lengthFt: 3, gauge: 8 });
      cable({ from: charger.outputPositive, to: house.positive, lengthFt: 3, gauge: 8 });
      minus(charger.outputNegative); minus(starter.negative);`,
    finds: "nothing",
  },
  {
    name: "one that is isolated has two",
    plan: `${bank}
      const starter = battery({ chemistry: "AGM", capacityAh: 70, internalMilliohm: 5 });
      const charger = dcDcCharger({ outputA: 10, isolated: true });
      cable({ from: starter.positive, to: charger.inputPositive, lengthFt: 3, gauge: 8 });
      cable({ from: charger.outputPositive, to: house.positive, lengthFt: 3, gauge: 8 });
      minus(charger.outputNegative); minus(starter.negative);`,
    finds: [
      {
        subject: "charger",
        record: "charger",
        on: "",
        message: "Its negative terminal leads nowhere",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a charger between two systems without a common negative",
    plan: `${bank} ${lamp} plus(lamp.positive); minus(lamp.negative);
      const starter = battery({ name: "starter", chemistry: "AGM", capacityAh: 70, internalMilliohm: 5 });
      const charger = dcDcCharger({ name: "charger", outputA: 10 });
      circuit({ from: starter.positive, to: charger, oneWayFt: 5, gauge: 10, protect: 20 });
      cable({ name: "output", from: charger.outputPositive, to: house.positive, lengthFt: 3, gauge: 10, protectFarEnd: 20 });`,
    finds: [
      {
        subject: "charger",
        record: "charger",
        on: "",
        message:
          "Its output feeds the battery house, and its negative leads to the battery starter only, so no current can return to it: connect the negative sides of the two.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "the same with a common negative",
    plan: `${bank} ${lamp} plus(lamp.positive); minus(lamp.negative);
      const starter = battery({ name: "starter", chemistry: "AGM", capacityAh: 70, internalMilliohm: 5 });
      const charger = dcDcCharger({ name: "charger", outputA: 10 });
      circuit({ from: starter.positive, to: charger, oneWayFt: 5, gauge: 10, protect: 20 });
      cable({ name: "output", from: charger.outputPositive, to: house.positive, lengthFt: 3, gauge: 10, protectFarEnd: 20 });
      cable({ name: "common negative", from: starter.negative, to: house.negative, lengthFt: 3, gauge: 10 });`,
    finds: "nothing",
  },
  {
    name: "accepted with a reason",
    plan: `${bank} const lamp = load({ name: "lamp", currentA: 5, accept: { "network/no-return": "through its own foot" } });
      plus(lamp.positive);`,
    finds: [{ on: "", message: "Its negative terminal", accepted: "through its own foot", fixes: "no fix" }],
  },
  {
    name: "a lamp on a bank that is joined across itself: network/shorted speaks",
    plan: `${bank} ${lamp} plus(lamp.positive); minus(lamp.negative);
      const bus = busBar({ name: "bus" });
      plus(bus.stud); minus(bus.stud);`,
    finds: "nothing",
  },
]);
