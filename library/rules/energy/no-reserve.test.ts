import { testRule } from "../rule.tester.ts";
import { energyNoReserve } from "./no-reserve.ts";
import { july, plan } from "./one-bank.tester.ts";

testRule(energyNoReserve, [
  {
    name: "a reserve that is stated",
    plan: plan(july(2), { house: ", reservePercent: 0" }),
    finds: "nothing",
  },
  { name: "no period", plan: plan(july(2)).replace(/const trip.*/, ""), finds: "nothing" },
  {
    name: "lead-acid, half of it",
    plan: `${plan(july(2))} period({ name: "again", ${july(3)} });`,
    finds: [
      {
        subject: "house",
        record: "house",
        on: "",
        message: "Its reserve is not stated: 50 % is taken, usual for AGM",
        fixes: [
          { title: "State a reserve of 50 %", kind: "suggestion", gives: { house: { reservePercent: 50 } } },
        ],
      },
    ],
  },
  {
    name: "lithium, a fifth of it",
    plan: plan(july(2)).replace("AGM", "LiFePO4"),
    finds: [
      {
        subject: "house",
        record: "house",
        on: "",
        message: "Its reserve is not stated: 20 % is taken, usual for LiFePO4",
        fixes: [
          { title: "State a reserve of 20 %", kind: "suggestion", gives: { house: { reservePercent: 20 } } },
        ],
      },
    ],
  },
]);
