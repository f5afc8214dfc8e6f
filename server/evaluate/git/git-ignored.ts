import { runGitSync } from "./run-git.ts";

/**
 * The paths below a folder that git ignores there, by the rules of its repository and of its user; a tracked file is never
 * ignored. Paths have forward slashes. The result is empty without git, without a repository, or without an answer in time. If
 * the folder itself is ignored, the user named it on purpose, and nothing in it counts as ignored.
 */
export function ignoredBelow(folder: string, paths: readonly Buffer[], limitMs: number): ReadonlySet<string> {
  // With "./" before it, no name is read as one of git's own patterns.
  const named = [Buffer.from("."), ...paths].flatMap((path) => [Buffer.from("./"), path, Buffer.from("\0")]);
  const output = runGitSync(folder, ["check-ignore", "-z", "--stdin"], Buffer.concat(named), limitMs);
  const ignored = (output?.toString("latin1") ?? "").split("\0").filter(Boolean);
  return ignored.includes("./.") ? new Set() : new Set(ignored.map((path) => path.slice(2)));
}
