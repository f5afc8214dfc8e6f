import { testRule } from "../rule.tester.ts";
import { energyNeverFull } from "./never-full.ts";
import { july, plan } from "./one-bank.tester.ts";

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
