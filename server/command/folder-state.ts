import { relative, sep } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { type Checker, createChecker } from "../evaluate/checker.ts";
import { diskWorkspace } from "../evaluate/files/disk-workspace.ts";
import type { Revision } from "../evaluate/git/git-revision.ts";
import { type GitWorkspace, gitWorkspace } from "../evaluate/git/git-workspace.ts";
import type { Uri, Workspace } from "../evaluate/workspace.ts";
import { gitLimitMs } from "./named-plans.ts";

/** One state of a folder whose plans are compared: the present one on disk, or a revision. */
export interface FolderState {
  /** Its name in the comparison. */
  readonly label: string;
  readonly folder: string;
  readonly checker: Checker;
  readonly workspace: Workspace;
  /** Present if the state is a revision. */
  readonly git: GitWorkspace | undefined;
  /** Asks again until the answer required no further loading. */
  settled<Answer>(ask: () => Answer | Promise<Answer>): Promise<Answer>;
}

export function stateOnDisk(folder: string, label: string): FolderState {
  const workspace = diskWorkspace([pathToFileURL(folder).href], { gitLimitMs });
  return {
    ...{ label, folder, workspace, checker: createChecker(workspace), git: undefined },
    settled: async (ask) => ask(),
  };
}

export async function stateAtRevision(folder: string, revision: Revision): Promise<FolderState> {
  const git = await gitWorkspace({ folder, revision, load: "plans" });
  const { named, commit } = revision;
  return {
    // git itself shows seven digits; a name that already is the commit's does not get them again.
    label: commit.startsWith(named.toLowerCase()) ? named : `${named} (${commit.slice(0, 7)})`,
    ...{ folder, git, workspace: git, checker: createChecker(git) },
    settled: git.settled,
  };
}

/** A file's path below the folder of its state, with forward slashes: it identifies a file in both states. */
export function pathIn({ folder }: Pick<FolderState, "folder">, uri: Uri): string {
  return relative(folder, fileURLToPath(uri)).split(sep).join("/");
}
