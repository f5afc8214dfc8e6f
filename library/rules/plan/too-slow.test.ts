import { testRule } from "../rule.tester.ts";
import { tooSlow } from "./too-slow.ts";

testRule(tooSlow, [
  { name: "it came to its end", circuits: [{}], finds: "nothing" },
  {
    name: "too long",
    problems: [{ rule: "plan/too-slow", limit: "time", allowed: 1000 }],
    finds: [
      {
        subject: "the plan",
        on: "problem 0",
        severity: "error",
        message: "The plan was stopped after 1 s: look for a loop that never ends",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "too much memory",
    problems: [{ rule: "plan/too-slow", limit: "memory", allowed: 64 * 1024 * 1024 }],
    finds: [
      {
        on: "problem 0",
        message: "The plan was stopped at 64 MiB of memory: look for a list",
        fixes: "no fix",
      },
    ],
  },
  {
    name: "too many circuits",
    problems: [{ rule: "plan/too-slow", limit: "records", allowed: 20_000 }],
    finds: [
      {
        on: "problem 0",
        message: "The plan was stopped after 20,000 circuits: look for a loop",
        fixes: "no fix",
      },
    ],
  },
]);
