import { createContext, Script } from "node:vm";
import { type PlanProblem, type PlanRecord, type Word, words } from "../model/record.ts";
import * as plan from "../plan/index.ts";
import { continueNumberingAt } from "../plan/numbering.ts";

/** The records and problems of a plan printed on a rule's page. For tests: the page is ours, so it needs no sandbox. */
export interface ExampleRun {
  readonly records: readonly PlanRecord[];
  readonly problems: readonly PlanProblem[];
}

/**
 * Runs the plain JavaScript of a page's plan, without its import of the library; the library's functions are given.
 *
 * @param limitMs time on the clock after which the plan is stopped; shorter than the default only if the plan has to stop
 */
export function runExample(code: string, limitMs = generousLimitMs): ExampleRun {
  const records: PlanRecord[] = [];
  // Keeps the number of lines, so line numbers of a stack match those of the page.
  const body = code.replace(/^import [\s\S]*? from "loomwright";/m, (text) => text.replaceAll(/[^\n]/g, ""));
  const recording = (word: Word) => (input: unknown) => {
    // Cloned at once: the data is then of this realm, and later changes do not reach it.
    const kept = structuredClone(input);
    const fallbackName = variableOf(body, new Error().stack ?? "") ?? `${word} ${records.length + 1}`;
    records.push({ word, input: kept, fallbackName });
    return makers[word](input);
  };
  continueNumberingAt(0);
  try {
    const given = Object.fromEntries(words.map((word) => [word, recording(word)]));
    new Script(body, { filename: pageName }).runInContext(createContext(given), { timeout: limitMs });
    return { records, problems: [] };
  } catch (error) {
    return { records, problems: [problemOf(error)] };
  }
}

const makers = plan as unknown as Readonly<Record<Word, (input: unknown) => unknown>>;

/** An example ends at once, which may be seconds on a busy machine, or never: only an endless one meets this limit. */
const generousLimitMs = 30_000;

const pageName = "page.js";

/** `house`, if the call follows `const house = `. */
function variableOf(code: string, stack: string): string | undefined {
  const [, line, column] = /page\.js:(\d+):(\d+)/.exec(stack) ?? [];
  const before = code.split("\n")[Number(line) - 1]?.slice(0, Number(column) - 1) ?? "";
  return /\b(?:const|let) (\w+) = $/.exec(before)?.[1];
}

function problemOf(error: unknown): PlanProblem {
  // Thrown inside the context, so it is not an instance of this realm's Error.
  const { code, message } = error as { code?: string; message?: string };
  if (code === "ERR_SCRIPT_EXECUTION_TIMEOUT") return { rule: "plan/too-slow", limit: "time", allowed: 1000 };
  return { rule: "plan/cannot-run", reason: "error-thrown", detail: message ?? String(error) };
}
