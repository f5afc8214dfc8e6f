import { createContext, Script } from "node:vm";
import type { PlanProblem, PlanRecord } from "../model/record.ts";

/** What a plan printed on a rule's page leaves behind. For tests: the page is ours, so it needs no sandbox. */
export interface ExampleRun {
  readonly records: readonly PlanRecord[];
  readonly problems: readonly PlanProblem[];
}

/** Runs the plain JavaScript of a page's plan; its import of the library is left out, the two words are given. */
export function runExample(code: string): ExampleRun {
  const records: PlanRecord[] = [];
  const record = (word: PlanRecord["word"]) => (input: unknown) => {
    // Cloned at once, so that the data is of this realm and later changes do not reach it.
    const kept = structuredClone(input);
    records.push({ word, input: kept, fallbackName: `circuit ${records.length + 1}` });
    return kept;
  };
  const script = new Script(code.replace(/^import .* from "loomwright";\n/m, ""));
  try {
    script.runInContext(createContext({ circuit: record("circuit"), build: record("build") }), {
      timeout: endlessAfterMs,
    });
    return { records, problems: [] };
  } catch (error) {
    return { records, problems: [problemOf(error)] };
  }
}

/** A page's plan ends at once, or never. */
const endlessAfterMs = 500;

function problemOf(error: unknown): PlanProblem {
  // Thrown inside the context, so it is no instance of this realm's Error.
  const { code, message } = error as { code?: string; message?: string };
  if (code === "ERR_SCRIPT_EXECUTION_TIMEOUT") return { rule: "plan/too-slow", limit: "time", allowed: 1000 };
  return { rule: "plan/cannot-run", reason: "error-thrown", detail: message ?? String(error) };
}
