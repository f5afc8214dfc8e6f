import ts from "typescript";
import type { InvalidValue } from "../../library/model/run.ts";
import type { SourceRange } from "./checked-plan.ts";
import type { LocatedPlan } from "./provenance/located-plan.ts";
import type { End } from "./sandbox/contract.ts";
import type { LoadedPlan } from "./text/load-plan.ts";
import type { LastEdit } from "./workspace.ts";

/**
 * The name that stopped the plan because nothing declares it, if it touches the last edit: `{ gau }` on the way to
 * `{ gauge: 4 }`, `from: hou` on the way to `from: house.positive`. A text that the engine cannot even read is half typed too.
 */
export function nameBeingTyped(edit: LastEdit, plan: LoadedPlan, end: End): SourceRange | undefined {
  const [problem, ...others] = plan.problems;
  if (problem) {
    const isName = problem.reason === "import-name-missing" && others.length === 0;
    return isName && touches(problem.place, edit) ? problem.place : undefined;
  }
  if (end === "whole" || end.why !== "error" || !plan.files.has(edit.uri)) return undefined;
  // `const` alone is no error to TypeScript's parser, and cannot be run.
  if (!end.began) return { ...edit };
  const name = /^ReferenceError: (\S+) is not defined$/.exec(end.message)?.[1];
  const source = name === undefined ? undefined : plan.files.get(edit.uri)?.tree.source;
  return source && identifierAt(edit, source, name!);
}

function identifierAt(edit: LastEdit, source: ts.SourceFile, name: string): SourceRange | undefined {
  const find = (node: ts.Node): SourceRange | undefined => {
    if (node.pos > edit.end || node.end < edit.start) return undefined;
    const place = { uri: edit.uri, start: node.getStart(source), end: node.end };
    if (ts.isIdentifier(node)) return node.text === name && touches(place, edit) ? place : undefined;
    return ts.forEachChild(node, find);
  };
  return find(source);
}

/**
 * The call around the last edit, if a value of it is the reason why the network can no longer be judged, or only without this circuit:
 * one that has a start and no length yet, `from: panel` on the way to `from: panel.branch`.
 */
export function callBeingTyped(
  edit: LastEdit,
  located: Pick<LocatedPlan, "judgement" | "callOf">,
  before: Pick<LocatedPlan, "judgement"> | undefined,
): SourceRange | undefined {
  if (!before?.judgement.network) return undefined;
  const { invalid } = located.judgement.model;
  const callsOf = (refused: readonly InvalidValue[]) =>
    [...new Set(refused.map(({ record }) => record))].map((record) => located.callOf(record));
  const stopping = callsOf(invalid.filter(({ stopsNetwork }) => stopsNetwork));
  if (!stopping.every((call) => touches(call, edit))) return undefined;
  const leftOut = callsOf(invalid.filter(({ leavesOutCircuit }) => leavesOutCircuit));
  return [...stopping, ...leftOut].find((call) => touches(call, edit));
}

function touches({ uri, start, end }: SourceRange, edit: LastEdit): boolean {
  return uri === edit.uri && start <= edit.end && edit.start <= end;
}
