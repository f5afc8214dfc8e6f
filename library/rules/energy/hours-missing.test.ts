import { testRule } from "../rule.tester.ts";
import { energyHoursMissing } from "./hours-missing.ts";
import { july, plan } from "./one-bank.tester.ts";

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
