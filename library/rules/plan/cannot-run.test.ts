import type { CannotRunReason, PlanProblem } from "../../model/record.ts";
import { testRule } from "../rule.tester.ts";
import { cannotRun } from "./cannot-run.ts";

const stopped = (reason: CannotRunReason, detail: string): PlanProblem[] => [
  { rule: "plan/cannot-run", reason, detail },
];
const found = (message: string) => [
  { subject: "the plan", on: "problem 0", severity: "error" as const, message, fixes: "no fix" as const },
];

testRule(cannotRun, [
  { name: "it ran", circuits: [{}], finds: "nothing" },
  {
    name: "stopped by a limit: another rule says so",
    problems: [{ rule: "plan/too-slow", limit: "time", allowed: 1000 }],
    finds: "nothing",
  },
  {
    name: "an exception",
    problems: stopped("error-thrown", "TypeError: sizes.fridge is undefined"),
    finds: found(
      "The plan stopped here: TypeError: sizes.fridge is undefined. Circuits after this place are not checked.",
    ),
  },
  {
    name: "an import of a file that is not there",
    problems: stopped("import-not-found", "./panel.ts"),
    finds: found('The file "./panel.ts" does not exist.'),
  },
  {
    name: "an import of a file that cannot be read",
    problems: stopped("import-unread", '"./panel.ts" cannot be read: permission denied'),
    finds: found(
      '"./panel.ts" cannot be read: permission denied. Neither it nor the rest of the plan is checked.',
    ),
  },
  {
    name: "an import from outside the folder",
    problems: stopped("import-outside", "../../secrets.ts"),
    finds: found(
      '"../../secrets.ts" is outside the open folder. A plan may import only files inside it: move the file, or open the folder above.',
    ),
  },
  {
    name: "an import that no plan may have",
    problems: stopped("import-not-allowed", "node:fs"),
    finds: found('"node:fs" cannot be imported: a plan may use "loomwright" and its own files'),
  },
  {
    name: "a name that is not exported",
    problems: stopped("import-name-missing", "lamps"),
    finds: found("lamps is not exported there."),
  },
  {
    name: "syntax that is not run",
    problems: stopped("syntax-not-run", "enum"),
    finds: found("enum cannot be used in a plan"),
  },
  {
    name: "a text that is not JavaScript, though it can be read",
    problems: stopped("text-not-run", "SyntaxError: invalid redefinition of global identifier"),
    finds: found(
      "This text cannot be run as JavaScript: invalid redefinition of global identifier. Correct it",
    ),
  },
  {
    name: "a character at which texts end for some",
    problems: stopped("character-refused", "A NUL character (U+0000)"),
    finds: found("A NUL character (U+0000) cannot be in the text of a plan"),
  },
  {
    name: "brackets within brackets",
    problems: stopped("nested-too-deeply", ""),
    finds: found("This file is nested too deeply to be read"),
  },
  {
    name: "a text that would take for ever",
    problems: stopped("reading-too-slow", "2 s"),
    finds: found("This file could not be read within 2 s: look for brackets within brackets"),
  },
  {
    name: "a call that was passed by",
    problems: stopped("call-not-reached", "circuit"),
    finds: found("This circuit was not made although the plan ran to its end"),
  },
  {
    name: "a fault of ours",
    problems: stopped("evaluator-failed", "out of stack"),
    finds: found(
      "The plan could not be run, because of a fault in the checker, not in the plan (out of stack).",
    ),
  },
  {
    name: "two problems are two findings",
    problems: [...stopped("import-not-found", "./a.ts"), ...stopped("import-not-found", "./b.ts")],
    finds: [
      { on: "problem 0", message: 'The file "./a.ts" does not exist', fixes: "no fix" },
      { on: "problem 1", message: 'The file "./b.ts" does not exist', fixes: "no fix" },
    ],
  },
]);
