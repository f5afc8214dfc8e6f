import { existsSync, realpathSync } from "node:fs";
import { dirname, relative, sep } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import type { Uri } from "../workspace.ts";
import { repositoryAt, revisionAt } from "./git-revision.ts";
import { type GitWorkspace, gitWorkspace } from "./git-workspace.ts";
import { GitError } from "./run-git.ts";

/** The last commit of the repository that contains a file, as files that a plan can be made from. */
export interface LastCommit {
  /** "the last commit (1a2b3c4)". */
  readonly label: string;
  /** "1a2b3c4" */
  readonly short: string;
  /** Reads requested files only. */
  readonly workspace: GitWorkspace;
  /** Reads every file that contains the library's name: for a plan with a moved file. */
  whole(): Promise<GitWorkspace>;
  /** A file's path below the folder of this workspace, with forward slashes. */
  nameOf(uri: Uri): string;
}

/** `folders` are those that plans may import from. Throws a {@link GitError} if no commit is available. */
export async function lastCommitAround(
  file: Uri,
  folders: readonly Uri[],
  signal?: AbortSignal,
): Promise<LastCommit> {
  if (!file.startsWith("file:")) throw new GitError("this plan is not in a file yet");
  let folder = dirname(fileURLToPath(file));
  while (!existsSync(folder) && dirname(folder) !== folder) folder = dirname(folder);
  const { prefix } = await repositoryAt(folder, signal);
  const top = climbed(folder, prefix.split("/").filter(Boolean).length, folders);
  const revision = await revisionAt(top, "HEAD", signal);
  const asked = { folder: top, revision, folders, ...(signal ? { signal } : {}) };
  const short = revision.commit.slice(0, 7);
  return {
    label: `the last commit (${short})`,
    short,
    workspace: await gitWorkspace({ ...asked, load: "asked for" }),
    whole: () => gitWorkspace({ ...asked, load: "plans" }),
    nameOf: (uri) => relative(top, fileURLToPath(uri)).split(sep).join("/"),
  };
}

/**
 * Up to the top of the repository, but not out of the folder that the editor has open: no plan may import from beyond it. A
 * folder that was reached by a symbolic link is not left by the path it was entered.
 */
function climbed(folder: string, levels: number, folders: readonly Uri[]): string {
  let at = folder;
  for (let level = 0; level < levels; level++) {
    if (folders.includes(pathToFileURL(at).href)) break;
    const parent = dirname(at);
    if (realpathSync(parent) !== dirname(realpathSync(at))) break;
    at = parent;
  }
  return at;
}
