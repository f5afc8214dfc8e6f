import { relative, sep } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { type Checker, createChecker } from "../evaluate/checker.ts";
import { diskWorkspace } from "../evaluate/files/disk-workspace.ts";
import type { Revision } from "../evaluate/git/git-revision.ts";
import { type GitWorkspace, gitWorkspace } from "../evaluate/git/git-workspace.ts";
import type { Uri, Workspace } from "../evaluate/workspace.ts";
import { gitLimitMs } from "./named-plans.ts";

/** One state of a folder whose plans are compared: as it lies on the disk, or as of a revision. */
export interface FolderState {
  /** What it is called in the comparison. */
  readonly label: string;
  readonly folder: string;
  readonly checker: Checker;
  readonly workspace: Workspace;
  /** There where the state is a revision's. */
  readonly git: GitWorkspace | undefined;
  /** Asks again until nothing more had to be loaded for the answer. */
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
    // Seven digits are what git itself shows; a name that says the commit already does not say it twice.
    label: commit.startsWith(named.toLowerCase()) ? named : `${named} (${commit.slice(0, 7)})`,
    ...{ folder, git, workspace: git, checker: createChecker(git) },
    settled: git.settled,
  };
}

/** A file's path below the folder of its state, with forward slashes: what is the same file in both states. */
export function pathIn({ folder }: Pick<FolderState, "folder">, uri: Uri): string {
  return relative(folder, fileURLToPath(uri)).split(sep).join("/");
}
