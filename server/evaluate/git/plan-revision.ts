import type { CheckedPlan } from "../checked-plan.ts";
import type { Workspace } from "../workspace.ts";
import { lastCommitAround } from "./last-commit.ts";
import { GitError } from "./run-git.ts";

/** The revision for the title block and the report: the given text, or the commit; none if neither was asked for. */
export type AskedRevision = { readonly text: string } | "commit" | undefined;

/** In words; or the reason why there is no commit. */
export async function revisionOf(
  asked: AskedRevision,
  plan: Pick<CheckedPlan, "root" | "snapshot">,
  workspace: Pick<Workspace, "read" | "folders">,
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

/**
 * The commit that a plan is at: "1a2b3c4", or "1a2b3c4 + uncommitted" if a file of the plan differs from it. Throws a {@link GitError} if no commit is available.
 */
async function planRevision(
  { root, snapshot }: Pick<CheckedPlan, "root" | "snapshot">,
  workspace: Pick<Workspace, "read" | "folders">,
): Promise<string> {
  const commit = await lastCommitAround(root, workspace.folders());
  const files = [...snapshot.keys()];
  const committed = await commit.workspace.settled(() =>
    files.map((uri) => commit.workspace.read(uri)?.text),
  );
  const isSame = files.every((uri, index) => sameText(workspace.read(uri)?.text, committed[index]));
  return isSame ? commit.short : `${commit.short} + uncommitted`;
}

/** Git may have put other line ends into the working tree. */
function sameText(one: string | undefined, other: string | undefined): boolean {
  return one?.replaceAll("\r\n", "\n") === other?.replaceAll("\r\n", "\n");
}
