import type { CheckedPlan } from "../checked-plan.ts";
import type { Workspace } from "../workspace.ts";
import { lastCommitAround } from "./last-commit.ts";

/**
 * The commit that a plan is at: "1a2b3c4", or "1a2b3c4 + uncommitted" if a file of the plan differs from it. Throws a {@link
 * import("./run-git.ts").GitError} if no commit is available.
 */
export async function planRevision(
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
