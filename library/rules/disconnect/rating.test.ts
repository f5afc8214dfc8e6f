import { testRule } from "../rule-tester.ts";
import { disconnectRating } from "./rating.ts";

testRule(disconnectRating, [
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
