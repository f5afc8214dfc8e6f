import { testRule } from "../rule-tester.ts";
import { doesNotClear } from "./does-not-clear.ts";

testRule(doesNotClear, [
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
