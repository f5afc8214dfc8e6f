import { relative, sep } from "node:path";
import { fileURLToPath } from "node:url";
import type { CheckedPlan, IncompletePlan } from "../evaluate/checked-plan.ts";
import type { Checker } from "../evaluate/checker.ts";
import { mayHideHazard } from "../evaluate/files/passed-by.ts";
import type { Uri, Workspace } from "../evaluate/workspace.ts";
import { findPlans } from "./find-plans.ts";
import type { ExitCode, Host } from "./host.ts";
import { createLineIndex } from "./line-index.ts";
import { joinedFiles, passedFiles, sayPassedBy } from "./passed-files.ts";
import { printable } from "./terminal.ts";

/**
 * For commands that make something from each plan: checks every plan that the names refer to, one after the other, and passes on
 * those that ran to their end. For the others, it reports why nothing can be made of them. Returns the worst exit code.
 */
export async function eachCheckedPlan(
  names: readonly string[],
  outside: Host,
  make: (opened: OpenedPlan) => Promise<ExitCode>,
): Promise<ExitCode> {
  const groups = findPlans(names, outside);
  const of = groups.reduce((sum, { roots }) => sum + roots.length, 0);
  const passedBy = joinedFiles(groups.map((group) => passedFiles(group.passedBy, outside.cwd)));
  sayPassedBy(passedBy, outside);
  let [worst, place]: [ExitCode, number] = [of === 0 || passedBy.some(mayHideHazard) ? 2 : 0, 0];
  try {
    for (const { checker, workspace, roots } of groups) {
      for (const root of roots) {
        place++;
        const file = shownFile(root, outside.cwd);
        const plan = await checker.check(root);
        const why = whyUnusable(plan, workspace, outside.cwd);
        if (why !== undefined) outside.err(`loomwright: ${printable(why)}\n`);
        const code =
          why === undefined
            ? await make({ plan: plan as CheckedPlan, file, workspace, checker, place, of })
            : 2;
        if (code > worst) worst = code;
        checker.forget(root);
      }
    }
    return worst;
  } finally {
    await Promise.all(groups.map(({ checker }) => checker.dispose()));
  }
}

export interface OpenedPlan {
  /** It ran to its end; it may still have findings, or a network that could not be read. */
  readonly plan: CheckedPlan;
  /** Path of its root relative to where the command runs, with forward slashes, not yet made printable. */
  readonly file: string;
  readonly workspace: Workspace;
  readonly checker: Checker;
  /** Its position, from 1, among the `of` plans that the names refer to. */
  readonly place: number;
  readonly of: number;
}

/** Path relative to a folder, with forward slashes on every system. */
export function shownFile(uri: Uri, cwd: string): string {
  return relative(cwd, fileURLToPath(uri)).split(sep).join("/");
}

function whyUnusable(
  plan: CheckedPlan | IncompletePlan,
  workspace: Workspace,
  cwd: string,
): string | undefined {
  if (plan.state === "incomplete") {
    const { place, text } = plan.unfinished;
    return `${placeInWords(place.uri, place.start, workspace, cwd)}: this text is not complete TypeScript yet: ${text}`;
  }
  const [problem] = plan.judgement.problems;
  if (!problem) return undefined;
  const found = plan.findings.find(({ finding }) => finding.rule === problem.rule);
  if (!found)
    return `${shownFile(plan.root, cwd)}: it could not be run; loomwright check reports the reason.`;
  return `${placeInWords(found.place.uri, found.place.start, workspace, cwd)}: ${found.message}`;
}

function placeInWords(uri: Uri, offset: number, workspace: Workspace, cwd: string): string {
  const { line, column } = createLineIndex(workspace.read(uri)?.text ?? "").positionAt(offset);
  return `${shownFile(uri, cwd)}:${line}:${column}`;
}
