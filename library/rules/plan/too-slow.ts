import type { PlanProblem } from "../../model/record.ts";
import { ownRequirement } from "../own-requirement.ts";
import { defineRule } from "../rule.ts";
import { formatRounded } from "../wording/format-number.ts";

export const tooSlow = defineRule<Values>({
  id: "plan/too-slow",
  title: "Plan exceeds its time or memory limit",
  formerTitles: ["Plan needs too much time or memory"],
  severity: "error",
  why: "A plan that does not finish is not checked completely: circuits may be missing from the result.",
  sources: [
    ownRequirement("1 s, 64 MiB and 20,000 circuits unless set otherwise; no real build comes near them."),
  ],
  fixable: false,
  acceptable: false,
  check: ({ problems }) =>
    problems.flatMap((problem, index) =>
      problem.rule === "plan/too-slow"
        ? [
            {
              subject: "the plan",
              at: { problem: index },
              values: { limit: problem.limit, allowed: problem.allowed },
            },
          ]
        : [],
    ),
  message: ({ limit, allowed }) =>
    `${stopped[limit](allowed)} Only the circuits made before that are checked.`,
});

type Values = Pick<Extract<PlanProblem, { rule: "plan/too-slow" }>, "limit" | "allowed">;

/** `allowed` is in ms, bytes and records. */
const stopped: Record<Values["limit"], (allowed: number) => string> = {
  time: (ms) =>
    `The plan was stopped after ${formatRounded(ms / 1000)} s: look for a loop that never ends, or that runs far too often.`,
  memory: (bytes) =>
    `The plan was stopped at ${formatRounded(bytes / 1024 / 1024)} MiB of memory: look for a list or a text that grows without end.`,
  records: (records) =>
    `The plan was stopped after ${formatRounded(records)} circuits: look for a loop that makes more of them than you have.`,
};
