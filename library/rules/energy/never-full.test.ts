import { testRule } from "../rule.tester.ts";
import { energyNeverFull } from "./never-full.ts";

const plan = (
  period: string,
  { lamp = "use: { hoursPerDay: 1 }", pump = "use: { hoursPerDay: 0.5 }", house = "" } = {},
) => `
  const house = battery({ chemistry: "AGM", capacityAh: 100, internalMilliohm: 3 ${house} });
  const main = busBar({ side: "positive" });
  cable({ name: "feed", from: house.positive, to: main.stud, lengthFt: 2, gauge: 2 });
  const out = { from: main.stud, returnTo: house.negative, oneWayFt: 5, gauge: 10, protect: 10 };
  const lamp = circuit({ ...out, name: "lamp", load: 5, ${lamp} });
  const pump = circuit({ ...out, name: "pump", load: 6, ${pump} });
  const radio = circuit({ ...out, name: "radio", load: 4, use: { hoursPerDay: 1 } });
  const trip = period({ name: "trip", ${period} });`;

const july = (days: number) => `place: "Tarifa, ES", fromDay: "1 Jul", untilDay: "${days} Jul"`;

const little = { lamp: "use: { hoursPerDay: 0.1 }", pump: "use: { hoursPerDay: 0.1 }" };

testRule(energyNeverFull, [
  { name: "the bank begins full", plan: plan(july(20), little), finds: "nothing" },
  {
    name: "a week in a month is too short to miss a full charge",
    plan: plan(`${july(7)}, startPercent: 80`, little),
    finds: "nothing",
  },
  {
    name: "three weeks from 80 %, and nothing charges",
    plan: plan(`${july(20)}, startPercent: 80`, little),
    finds: [
      {
        subject: "house",
        record: "house",
        on: "",
        message: "In trip, house is never full in Jul: about 80 % is the most.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "lithium does not mind",
    plan: plan(`${july(20)}, startPercent: 80`, little).replace("AGM", "LiFePO4"),
    finds: "nothing",
  },
]);
