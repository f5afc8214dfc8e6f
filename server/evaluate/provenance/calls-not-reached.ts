import ts from "typescript";
import { sitesInFile } from "../instrument/instrument.ts";
import type { RunOutcome } from "../sandbox/contract.ts";
import type { LoadProblem } from "../text/load-plan.ts";
import type { PlanFile } from "../text/parse.ts";

/**
 * Compares the parsed text with the run. If a plan ran to its end, every call of a DSL function in a statement that always runs
 * must have been entered. If one was not, the engine was given another text than the parser, or read it differently, and the
 * records must not pass for the whole plan. Returns the first such call of each file.
 */
export function callsPassedBy(files: readonly PlanFile[], { calls }: RunOutcome): readonly LoadProblem[] {
  const entered = new Map<number, Uint8Array>();
  for (const { number, instrumented } of files) {
    if (instrumented && instrumented.certain.length > 0)
      entered.set(number, new Uint8Array(instrumented.sites.length));
  }
  for (const { callSite } of calls) {
    const sites = entered.get(Math.floor(callSite / sitesInFile));
    if (sites) sites[callSite % sitesInFile] = 1;
  }
  return files.flatMap((file) => {
    const passedBy = file.instrumented?.certain.find((site) => entered.get(file.number)?.[site] !== 1);
    const node = passedBy === undefined ? undefined : file.tree.instrumented?.sites[passedBy]?.node;
    if (!node || !("expression" in node)) return [];
    const word = ts.isPropertyAccessExpression(node.expression) ? node.expression.name : node.expression;
    const place = { uri: file.uri, start: word.getStart(file.tree.source), end: word.end };
    const detail = file.text.slice(place.start, place.end);
    return [{ reason: "call-not-reached", detail, place } as const];
  });
}
