import { runGitSync } from "./run-git.ts";

/**
 * Which of the paths below a folder git ignores there, by the rules of its repository and of its user; a file that is tracked is
 * never ignored. Paths have forward slashes. Without git, without a repository, or without an answer in time, none is. If the
 * folder itself is ignored, somebody named it on purpose, and nothing in it is.
 */
export function ignoredBelow(folder: string, paths: readonly Buffer[], limitMs: number): ReadonlySet<string> {
  // With the folder before it, no name is taken for one of git's own patterns.
  const named = [Buffer.from("."), ...paths].flatMap((path) => [Buffer.from("./"), path, Buffer.from("\0")]);
  const output = runGitSync(folder, ["check-ignore", "-z", "--stdin"], Buffer.concat(named), limitMs);
  const ignored = (output?.toString("latin1") ?? "").split("\0").filter(Boolean);
  return ignored.includes("./.") ? new Set() : new Set(ignored.map((path) => path.slice(2)));
}
