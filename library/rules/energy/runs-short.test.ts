import { testRule } from "../rule.tester.ts";
import { july, plan } from "./one-bank.tester.ts";
import { energyRunsShort } from "./runs-short.ts";

const machine = `
  const machine = alternator({ ratedA: 50 });
  cable({ name: "charging", from: machine.positive, to: house.positive, lengthFt: 5, gauge: 4, protect: 60, protectFarEnd: 60 });
  cable({ name: "ground", from: machine.negative, to: house.negative, lengthFt: 5, gauge: 4 });`;

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
        fixes: [
          {
            title: "Use 200 Ah instead of 100 Ah, as much as 2 × 100 Ah",
            kind: "suggestion",
            gives: { house: { capacityAh: 200 } },
          },
        ],
      },
    ],
  },
  {
    name: "an alternator, and no hours of driving",
    plan: `${plan(`${july(6)}, driving: { hoursPerDay: 0, daysOfWeek: ["Mon", "Thu", "Sun"] }`)} ${machine}`,
    finds: [
      {
        subject: "trip",
        record: "trip",
        on: "",
        message: "In trip, house runs short in Jul, below its reserve for about ",
        fixes: [
          {
            title: "Use 200 Ah instead of 100 Ah, as much as 2 × 100 Ah",
            kind: "suggestion",
            gives: { house: { capacityAh: 200 } },
          },
          {
            title: "Drive 0.5 h on each of its days",
            kind: "suggestion",
            gives: { trip: { "driving.hoursPerDay": 0.5 } },
          },
        ],
      },
    ],
  },
  {
    name: "six days, and a cable of unknown length",
    plan: plan(july(6)).replace("lengthFt: 2, ", ""),
    finds: [
      {
        subject: "trip",
        record: "trip",
        on: "",
        message: "At best: in trip, house runs short in Jul, below its reserve for about ",
        values: {
          atBest: true,
          lengths: ["The length of feed is not known: the loss in it is not in these figures."],
        },
        fixes: [
          {
            title: "Use 200 Ah instead of 100 Ah, as much as 2 × 100 Ah",
            kind: "suggestion",
            gives: { house: { capacityAh: 200 } },
          },
        ],
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
        fixes: [
          {
            title: "Use 300 Ah instead of 100 Ah, as much as 3 × 100 Ah",
            kind: "suggestion",
            gives: { house: { capacityAh: 300 } },
          },
        ],
      },
    ],
  },
]);
