import { testRule } from "../rule.tester.ts";
import { energyHoursMissing } from "./hours-missing.ts";

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

testRule(energyHoursMissing, [
  { name: "each load states its hours", plan: plan(july(2)), finds: "nothing" },
  {
    name: "no period, no question",
    plan: plan(july(2), { pump: "" }).replace(/const trip.*/, ""),
    finds: "nothing",
  },
  {
    name: "a load that is not used in the period",
    plan: plan(`${july(2)}, notUsed: [pump]`, { pump: "" }),
    finds: "nothing",
  },
  {
    name: "two loads without hours, in two periods",
    plan: `${plan(july(2), { pump: "", lamp: "" })} period({ name: "winter", place: "Tarifa, ES", months: ["Jan"] });`,
    finds: [
      {
        subject: "the plan",
        record: "lamp",
        on: "",
        message: "The plan does not say how long lamp and pump run:",
        fixes: "no fix",
      },
    ],
  },
]);
