import { testRule } from "../rule.tester.ts";
import { july, plan } from "./one-bank.tester.ts";
import { energyRunsShort } from "./runs-short.ts";

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
