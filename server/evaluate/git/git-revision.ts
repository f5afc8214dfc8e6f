import { GitError, runGit } from "./run-git.ts";

/** One commit, as the user named it. */
export interface Revision {
  /** As typed: "HEAD~1". */
  readonly named: string;
  /** All of its hexadecimal digits. */
  readonly commit: string;
}

/** The position of a folder in a repository. */
export interface RepositoryPlace {
  /** False: a bare repository, or the repository's own data. There is no working tree to compare with. */
  readonly hasWorkTree: boolean;
  /** The folder below the top of the repository, with forward slashes and one at the end; "" at the top. */
  readonly prefix: string;
  /** Its history was cut off when it was cloned. */
  readonly shallow: boolean;
}

/** Throws a {@link GitError} if the folder is in no repository, or git may not read it. */
export async function repositoryAt(folder: string, signal?: AbortSignal): Promise<RepositoryPlace> {
  const words = ["rev-parse", "--is-inside-work-tree", "--is-shallow-repository", "--show-prefix"];
  const { code, output, complaint } = await runGit(folder, words, signal ? { signal } : {});
  if (code !== 0) throw new GitError(troubleWith(folder, complaint));
  const [inside, shallow, ...prefix] = output.toString("utf8").replace(/\n$/, "").split("\n");
  return { hasWorkTree: inside === "true", shallow: shallow === "true", prefix: prefix.join("\n") };
}

/** The commit that a name refers to in the repository of a folder. Throws a {@link GitError} if there is none. */
export async function revisionAt(folder: string, named: string, signal?: AbortSignal): Promise<Revision> {
  const place = await repositoryAt(folder, signal);
  if (named === "" || named.startsWith("-") || /[\0\n]/.test(named))
    throw new GitError(`'${named}' is not the name of a revision`);
  const asked = signal ? { signal } : {};
  const { code, output } = await runGit(
    folder,
    ["rev-parse", "--verify", "--quiet", "--end-of-options", `${named}^{commit}`],
    asked,
  );
  const commit = output.toString("utf8").trim();
  if (code === 0 && /^[0-9a-f]{40,64}$/.test(commit)) return { named, commit };
  const any = await runGit(folder, ["rev-list", "--max-count=1", "--all"], asked);
  if (any.code === 0 && any.output.length === 0)
    throw new GitError("this repository has no commit yet to compare with");
  if (/\.\./.test(named)) throw new GitError(`'${named}' names a range; give its two ends as two arguments`);
  throw new GitError(
    `there is no revision '${named}' in this repository${
      place.shallow
        ? "; its history was cut off when it was cloned (git fetch --unshallow brings the rest)"
        : ""
    }`,
  );
}

function troubleWith(folder: string, complaint: string): string {
  if (/not a git repository/i.test(complaint)) return `${folder} is not in a git repository`;
  if (/dubious ownership|safe\.directory/i.test(complaint))
    return `git does not read ${folder}, because it belongs to another user; git config safe.directory lists the trusted folders`;
  return `git cannot read the repository of ${folder}: ${complaint.split("\n")[0] || "it gave no reason"}`;
}
