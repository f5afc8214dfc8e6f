import { testRule } from "../rule-tester.ts";
import { twoGrounds } from "./two-grounds.ts";

testRule(twoGrounds, [
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
