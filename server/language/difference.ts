import {
  type ComparedPlan,
  evaluatedSide,
  type PlanSide,
} from "../../library/documents/difference/compared-plan.ts";
import {
  type Comparison,
  differenceMarkdown,
} from "../../library/documents/difference/difference-markdown.ts";
import { type PairedPlan, pairedPlan, pairPlans } from "../../library/documents/difference/pair-plans.ts";
import { planDifference } from "../../library/documents/difference/plan-difference.ts";
import { type Checker, createChecker } from "../evaluate/checker.ts";
import { fileName } from "../evaluate/files/file-name.ts";
import type { GitWorkspace } from "../evaluate/git/git-workspace.ts";
import { type LastCommit, lastCommitAround } from "../evaluate/git/last-commit.ts";
import { GitError } from "../evaluate/git/run-git.ts";
import { type Evaluated, evaluatedOrWhy } from "../evaluate/not-evaluated.ts";
import type { Uri, Workspace } from "../evaluate/workspace.ts";
import type { DifferenceAnswer } from "./messages.ts";
import { plainWords } from "./plain-words.ts";
import type { PlanInView } from "./plan-in-view.ts";

/** Plans as they are in the editor, unsaved text included, compared with the last commit of their repository. */
export async function difference(
  views: readonly PlanInView[],
  workspace: Workspace,
  signal: AbortSignal,
): Promise<DifferenceAnswer> {
  const [first] = views;
  if (!first) return { state: "cannot", message: notYet };
  try {
    const commit = await lastCommitAround(first.plan.root, workspace.folders(), signal);
    const plans: ComparedPlan[] = [];
    for (const view of views) plans.push(await comparedPlan(view, commit, workspace));
    const stale = views.some(({ current }) => !current);
    const comparison: Comparison = {
      before: commit.label,
      after: stale ? "the editor, as of the last complete text" : "the editor",
      plans,
      notes: commit.workspace.metLink ? ["Symbolic links in the last commit are not followed."] : [],
    };
    const markdown = differenceMarkdown(comparison, { all: false });
    const { root, judgement } = first.plan;
    return { state: "compared", title: plainWords(judgement.model.build.name ?? fileName(root)), markdown };
  } catch (error) {
    if (!(error instanceof GitError)) throw error;
    return { state: "cannot", message: plainWords(`There is no state to compare with: ${error.message}.`) };
  }
}

const notYet =
  "This file is not part of a plan that could be worked out yet: complete its text, and ask again.";

async function comparedPlan(
  { plan }: PlanInView,
  commit: LastCommit,
  workspace: Workspace,
): Promise<ComparedPlan> {
  const { root } = plan;
  const path = commit.nameOf(root);
  const now = evaluatedOrWhy(plan, workspace);
  const before = commit.workspace.has(root)
    ? { path, evaluated: await evaluatedIn(commit.workspace, root) }
    : await movedFrom(root, now, commit, workspace);
  if (!before) return { path, movedFrom: undefined, state: "added", side: sideOf(now) };
  const old = before.evaluated;
  const moved = before.path === path ? undefined : before.path;
  if (old.state === "evaluated" && now.state === "evaluated")
    return {
      ...{ path, movedFrom: moved, state: "compared" },
      difference: planDifference(old.judgement, now.judgement),
    };
  const sides = { before: sideOf(old), after: sideOf(now) };
  return { path, movedFrom: moved, state: "not-evaluated", unchanged: false, ...sides };
}

/** A plan of the last commit whose file is gone, and that matches by its name or by most of its content. */
async function movedFrom(
  root: Uri,
  now: Evaluated,
  commit: LastCommit,
  workspace: Workspace,
): Promise<Pick<Old, "path" | "evaluated"> | undefined> {
  const whole = await commit.whole();
  const checker = createChecker(whole);
  try {
    const roots = await whole.settled(() => checker.roots());
    const gone: Old[] = [];
    for (const uri of roots.filter((one) => workspace.read(one) === undefined))
      gone.push(asOld(commit.nameOf(uri), await evaluatedBy(checker, whole, uri)));
    const { pairs } = pairPlans(gone, [asOld(commit.nameOf(root), now)]);
    return pairs[0]?.before;
  } finally {
    await checker.dispose();
  }
}

interface Old extends PairedPlan {
  readonly evaluated: Evaluated;
}

function asOld(path: string, evaluated: Evaluated): Old {
  const judgement = evaluated.state === "evaluated" ? evaluated.judgement : undefined;
  return { ...pairedPlan(path, judgement), evaluated };
}

async function evaluatedIn(workspace: GitWorkspace, root: Uri): Promise<Evaluated> {
  const checker = createChecker(workspace);
  try {
    return await evaluatedBy(checker, workspace, root);
  } finally {
    await checker.dispose();
  }
}

async function evaluatedBy(checker: Checker, workspace: GitWorkspace, root: Uri): Promise<Evaluated> {
  return evaluatedOrWhy(await workspace.settled(() => checker.check(root)), workspace);
}

function sideOf(evaluated: Evaluated): PlanSide {
  return evaluated.state === "evaluated" ? evaluatedSide(evaluated.judgement) : evaluated;
}
