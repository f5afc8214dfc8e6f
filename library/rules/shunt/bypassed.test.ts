import { testRule } from "../rule.tester.ts";
import { shuntBypassed } from "./bypassed.ts";

/** A bank, its shunt, and a negative bus behind it. */
const metered = (rest: string) => `
  const house = battery({ chemistry: "gel", capacityAh: 110, internalMilliohm: 6 });
  const meter = shunt({ ratedA: 200 });
  const back = busBar({ side: "negative" });
  cable({ name: "bank to shunt", from: house.negative, to: meter.batterySide, lengthFt: 1, gauge: 4 });
  cable({ name: "shunt to bus", from: meter.systemSide, to: back.stud, lengthFt: 1, gauge: 4 });
  const out = (name, returnTo, more) =>
    circuit({ name, from: house.positive, returnTo, load: 12, oneWayFt: 8, gauge: 10, protect: 15, ...more });
  ${rest}`;

testRule(shuntBypassed, [
  { name: "everything on the system side", plan: metered(`out("heater", back.stud);`), finds: "nothing" },
  {
    name: "no shunt",
    plan: metered(`out("heater", house.negative);`).replaceAll(/.*meter.*\n/g, ""),
    finds: "nothing",
  },
  {
    name: "one return on the bank's own terminal",
    plan: metered(`out("heater", back.stud); out("pump", house.negative);`),
    finds: [
      {
        subject: "pump",
        record: "pump",
        on: "returnTo",
        message:
          'Connected on the bank\'s side of the shunt meter, so the current of pump (12 A in "everything on") is not counted: connect it on the system side.',
        fixes: "no fix",
      },
    ],
  },
  {
    name: "the starter motor of an engine",
    plan: metered(`
      out("heater", back.stud);
      const starter = starterMotor({ crankingA: 250 });
      cable({ from: house.positive, to: starter.positive, lengthFt: 3, gauge: "1/0" });
      cable({ from: starter.negative, to: house.negative, lengthFt: 3, gauge: "1/0" });`),
    finds: "nothing",
  },
  {
    name: "on the shunt's battery side",
    plan: metered(`out("heater", meter.batterySide);`),
    finds: [
      {
        subject: "heater",
        on: "returnTo",
        message: "Connected on the bank's side of the shunt meter",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a charger's negative on the bank",
    plan: metered(`
      const shore = shoreCharger({ outputA: 20 });
      cable({ name: "shore plus", from: shore.positive, to: house.positive, lengthFt: 3, gauge: 6 });
      cable({ name: "shore minus", from: shore.negative, to: house.negative, lengthFt: 3, gauge: 6 });
      out("heater", back.stud);`),
    finds: [
      {
        subject: "shore minus",
        record: "shore minus",
        on: "to",
        message:
          "Connected on the bank's side of the shunt meter, so the current of the shore charger shore (20 A in",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "several devices on a bus between bank and shunt are one conductor each",
    plan: `
      const house = battery({ chemistry: "gel", capacityAh: 110, internalMilliohm: 6 });
      const meter = shunt({ ratedA: 200 });
      const near = busBar({ name: "bank minus" });
      cable({ name: "bank to bus", from: house.negative, to: near.stud, lengthFt: 1, gauge: 4 });
      cable({ name: "bus to shunt", from: near.stud, to: meter.batterySide, lengthFt: 1, gauge: 4 });
      const lamp = load({ name: "lamp", currentA: 2 }), fan = load({ name: "fan", currentA: 3 });
      for (const one of [lamp, fan]) {
        cable({ name: "plus", from: house.positive, to: one.positive, lengthFt: 5, gauge: 12 });
        cable({ name: "minus", from: one.negative, to: near.stud, lengthFt: 5, gauge: 12 });
      }`,
    finds: [
      {
        subject: "minus",
        on: "to",
        message: "Connected on the bank's side of the shunt meter, so the current of lamp",
        fixes: "no fix",
      },
      {
        subject: "minus",
        on: "to",
        message: "Connected on the bank's side of the shunt meter, so the current of fan",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a cable round the shunt",
    plan: metered(`
      cable({ name: "short cut", from: house.negative, to: back.stud, lengthFt: 2, gauge: 4 });
      out("heater", back.stud);`),
    finds: [
      {
        subject: "short cut",
        on: "from",
        message: "Connected on the bank's side of the shunt meter, so the current",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "two batteries of one bank before the shunt",
    plan: metered(`
      const second = battery({ chemistry: "gel", capacityAh: 110, internalMilliohm: 6 });
      cable({ from: second.negative, to: house.negative, lengthFt: 1, gauge: 4 });
      cable({ from: second.positive, to: house.positive, lengthFt: 1, gauge: 4 });
      out("heater", back.stud);`),
    finds: "nothing",
  },
  {
    name: "in the positive, and a load before it",
    plan: `
      const house = battery({ chemistry: "gel", capacityAh: 110, internalMilliohm: 6 });
      const meter = shunt({ ratedA: 200 });
      cable({ from: house.positive, to: meter.batterySide, lengthFt: 1, gauge: 4 });
      circuit({ name: "heater", from: meter.systemSide, returnTo: house.negative, load: 12, oneWayFt: 8, gauge: 10, protect: 15 });
      circuit({ name: "pump", from: house.positive, load: 5, oneWayFt: 8, gauge: 10, protect: 15 });`,
    finds: [
      {
        subject: "pump",
        on: "from",
        message: "Connected on the bank's side of the shunt meter",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a shunt that measures one circuit only, with no bank on its battery side but through a load bus",
    plan: `
      const house = battery({ chemistry: "gel", capacityAh: 110, internalMilliohm: 6 });
      const meter = shunt({ ratedA: 200 });
      circuit({ name: "heater", from: house.positive, returnTo: house.negative, load: 12, oneWayFt: 8, gauge: 10, protect: 15 });`,
    finds: "nothing",
  },
  {
    name: "accepted with a reason",
    plan: metered(
      `out("heater", back.stud);
       out("pump", house.negative, { accept: { "shunt/bypassed": "a few minutes a year" } });`,
    ),
    finds: [{ on: "returnTo", message: "Connected", accepted: "a few minutes a year", fixes: "no fix" }],
  },
]);
