import { testRule } from "../rule-tester.ts";
import { coldVoltage } from "./cold-voltage.ts";

testRule(coldVoltage, [
  {
    name: "just within the limit",
    circuits: [{}],
    finds: "nothing",
  },
  {
    name: "just beyond the limit",
    circuits: [{ gauge: 6 }],
    finds: [{ on: "gauge", message: "What is wrong", fixes: "no fix" }],
  },
]);
