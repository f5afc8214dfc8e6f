import { testRule } from "../rule.tester.ts";
import { energyRunsShort } from "./runs-short.ts";

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

testRule(energyRunsShort, [
  { name: "two days from a full bank, above its reserve", plan: plan(july(2)), finds: "nothing" },
  {
    name: "no period",
    plan: plan(july(9)).replace(/const trip.*/, ""),
    finds: "nothing",
  },
  {
    name: "a smaller reserve lasts longer",
    plan: plan(july(6), { house: ", reservePercent: 10" }),
    finds: "nothing",
  },
  {
    name: "six days without a source",
    plan: plan(july(6)),
    finds: [
      {
        subject: "trip",
        record: "trip",
        on: "",
        message: "In trip, house runs short in Jul, below its reserve for about ",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "a fortnight, and a load without hours",
    plan: plan(july(14), { pump: "" }),
    finds: [
      {
        subject: "trip",
        record: "trip",
        on: "",
        message: "At best: in trip, house runs short in Jul, without supply for about ",
        fixes: "no fix",
      },
    ],
  },
]);
