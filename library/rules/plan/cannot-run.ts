import type { CannotRunReason } from "../../model/record.ts";
import { ownRequirement } from "../own-requirement.ts";
import { defineRule } from "../rule.ts";

export const cannotRun = defineRule<Values>({
  id: "plan/cannot-run",
  title: "Plan could not be run",
  severity: "error",
  why: "What comes after the place where a plan stops is not checked, and a circuit that is not checked looks as if nothing were wrong with it.",
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
  /** The error's message, or the text of the import or of the syntax. */
  readonly detail: string;
}

const words: Record<CannotRunReason, (detail: string) => string> = {
  "error-thrown": (message) =>
    `The plan stopped here: ${message.replace(/[.\s]+$/, "")}. Circuits after this place are not checked.`,
  "import-not-found": (text) =>
    `"${text}" is not there: no such file. Check the path and the file's name; a path starts with ./ or ../.`,
  "import-unread": (file) => `${file}. Nothing in it is checked, nor the rest of the plan.`,
  "import-outside": (text) =>
    `"${text}" lies outside the folder that is open. A plan may import only files inside it: move the file, or open the folder above.`,
  "import-not-allowed": (text) =>
    `"${text}" cannot be imported: a plan may use "loomwright" and its own files, by paths that start with ./ or ../.`,
  "import-name-missing": (text) =>
    `${text} is not exported there. Check its spelling, or export it; a type is imported with "import type".`,
  "syntax-not-run": (text) =>
    `${text} cannot be used in a plan: it is more than types on top of JavaScript. Write it as ordinary code.`,
  "evaluator-failed": (message) =>
    `The plan could not be run, through a fault of the checker and not of the plan (${message.replace(/[.\s]+$/, "")}). Nothing in it is checked.`,
};
