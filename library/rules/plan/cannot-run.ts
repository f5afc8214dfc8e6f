import type { CannotRunReason } from "../../model/record.ts";
import { ownRequirement } from "../own-requirement.ts";
import { defineRule } from "../rule.ts";

export const cannotRun = defineRule<Values>({
  id: "plan/cannot-run",
  title: "Plan could not be run",
  severity: "error",
  why: "Circuits after the place where a plan stops are not checked, and an unchecked circuit looks the same as one without faults.",
  sources: [
    ownRequirement("A plan runs on its own: no files, no network, only relative imports and the library."),
  ],
  fixable: false,
  acceptable: false,
  check: ({ problems }) =>
    problems.flatMap((problem, index) =>
      problem.rule === "plan/cannot-run"
        ? [
            {
              subject: "the plan",
              at: { problem: index },
              values: { reason: problem.reason, detail: problem.detail },
            },
          ]
        : [],
    ),
  message: ({ reason, detail }) => words[reason](detail),
});

interface Values {
  readonly reason: CannotRunReason;
  /** The text that the message quotes. */
  readonly detail: string;
}

const words: Record<CannotRunReason, (detail: string) => string> = {
  "error-thrown": (message) =>
    `The plan stopped here: ${message.replace(/[.\s]+$/, "")}. Circuits after this place are not checked.`,
  "import-not-found": (text) =>
    `The file "${text}" does not exist. Check the path and the file's name; a path starts with ./ or ../.`,
  "import-unread": (file) => `${file}. Neither it nor the rest of the plan is checked.`,
  "import-outside": (text) =>
    `"${text}" is outside the open folder. A plan may import only files inside it: move the file, or open the folder above.`,
  "import-not-allowed": (text) =>
    `"${text}" cannot be imported: a plan may use "loomwright" and its own files, by paths that start with ./ or ../.`,
  "import-name-missing": (text) =>
    `${text} is not exported there. Check its spelling, or export it; a type is imported with "import type".`,
  "syntax-not-run": (text) =>
    `${text} cannot be used in a plan: it does more than add types to JavaScript. Write it as ordinary code.`,
  "text-not-run": (message) =>
    `This text cannot be run as JavaScript: ${message.replace(/^SyntaxError: |[.\s]+$/g, "")}. Correct it at or near this place; none of the plan is checked.`,
  "character-refused": (character) =>
    `${character} cannot be in the text of a plan, because some programs ignore it and others do not. Delete it; none of the plan is checked.`,
  "nested-too-deeply": () =>
    "This file is nested too deeply to be read: brackets within brackets, or one expression of very many parts. Give names to inner parts; none of the plan is checked.",
  "reading-too-slow": (limit) =>
    `This file could not be read within ${limit}: look for brackets within brackets, many times over. Give names to inner parts; none of the plan is checked.`,
  "call-not-reached": (word) =>
    `This ${word} was not made although the plan ran to its end, so the program that ran is not the one written here. Rewrite the lines before it, and do not rely on any result of this plan.`,
  "evaluator-failed": (message) =>
    `The plan could not be run, because of a fault in the checker, not in the plan (${message.replace(/[.\s]+$/, "")}). None of it is checked.`,
};
