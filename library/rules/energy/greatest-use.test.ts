import { testRule } from "../rule.tester.ts";
import { energyGreatestUse } from "./greatest-use.ts";
import { july, plan } from "./one-bank.tester.ts";

testRule(energyGreatestUse, [
  { name: "no load takes more than half", plan: plan(july(2)), finds: "nothing" },
  {
    name: "the lamp takes three quarters",
    plan: plan(july(2), { lamp: "use: { hoursPerDay: 4 }" }),
    finds: [
      {
        subject: "lamp",
        record: "lamp",
        on: "",
        message: "lamp takes about 240 Wh a day in trip, 74 % of all use:",
        fixes: "no fix",
      },
    ],
  },
]);
