import { planRevision } from "../evaluate/git/plan-revision.ts";
import { GitError } from "../evaluate/git/run-git.ts";
import type { OpenedPlan } from "./checked-plans.ts";
import type { GivenOptions } from "./options.ts";
import { UsageError } from "./usage.ts";

/** The revision for the title block and the report: the given text, or the commit; none if neither was asked for. */
export type AskedRevision = { readonly text: string } | "commit" | undefined;

export function readRevision({ revision, commit }: GivenOptions): AskedRevision {
  if (revision !== undefined && commit)
    throw new UsageError("--revision states a revision and --commit takes it from git: give one of them.");
  if (revision?.trim() === "") throw new UsageError("--revision takes a text, such as B.");
  return commit ? "commit" : revision === undefined ? undefined : { text: revision };
}

/** In words; or the reason why there is no commit. */
export async function revisionOf(
  asked: AskedRevision,
  { plan, workspace }: Pick<OpenedPlan, "plan" | "workspace">,
): Promise<{ readonly revision?: string } | { readonly why: string }> {
  if (asked === undefined) return {};
  if (asked !== "commit") return { revision: asked.text };
  try {
    return { revision: await planRevision(plan, workspace) };
  } catch (error) {
    if (!(error instanceof GitError)) throw error;
    return { why: `its commit is not known: ${error.message}` };
  }
}
