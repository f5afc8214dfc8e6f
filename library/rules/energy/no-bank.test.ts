import { testRule } from "../rule.tester.ts";
import { energyNoBank } from "./no-bank.ts";
import { july, plan } from "./one-bank.tester.ts";

testRule(energyNoBank, [
  { name: "a bank that feeds loads", plan: plan(july(2)), finds: "nothing" },
  {
    name: "a lone circuit has no bank",
    plan: `circuit({ load: 5, oneWayFt: 5, gauge: 10, protect: 10 }); const trip = period({ name: "trip", place: "Tarifa, ES" });`,
    finds: [
      {
        subject: "trip",
        record: "trip",
        on: "",
        message: "trip is not judged: the plan has no battery that feeds a load.",
        fixes: "no fix",
      },
    ],
  },
]);
