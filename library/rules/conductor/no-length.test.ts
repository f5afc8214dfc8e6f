import { testRule } from "../rule.tester.ts";
import { noLength } from "./no-length.ts";

testRule(noLength, [
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
