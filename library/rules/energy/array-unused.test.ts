import { testRule } from "../rule.tester.ts";
import { energyArrayUnused } from "./array-unused.ts";
import { july, plan, roof } from "./one-bank.tester.ts";

const cells = "openCircuitV: 22, shortCircuitA: 9.5, maxPowerV: 18, maxPowerA: 9";
const charged = plan(july(2)) + roof(cells, "outputA: 30");

testRule(energyArrayUnused, [
  { name: "an array that charges the bank", plan: charged, finds: "nothing" },
  {
    name: "an array whose controller is connected to no battery",
    plan: charged.replace(/.*"box plus".*/, ""),
    finds: [
      {
        subject: "roof",
        record: "roof",
        on: "",
        message: "roof adds no energy in trip: its controller charges no bank of this plan.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "an array without a controller",
    plan: `${plan(july(2))} const roof = solarArray({ ${cells} });`,
    finds: [
      {
        subject: "roof",
        record: "roof",
        on: "",
        message: "roof adds no energy in trip: no solar controller is connected to both of its ends.",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "no period counts on it",
    plan: `${plan(july(2)).replace(/const trip.*/, "")} const roof = solarArray({ ${cells} });`,
    finds: "nothing",
  },
]);
