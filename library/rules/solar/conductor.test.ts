import { testRule } from "../rule-tester.ts";
import { solarConductor } from "./conductor.ts";

testRule(solarConductor, [
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
