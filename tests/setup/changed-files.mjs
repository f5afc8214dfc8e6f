import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";

const house = fileURLToPath(new URL("../..", import.meta.url));

/**
 * The files that differ from the main branch, committed or not: what was changed since this branch left it. On the main branch
 * itself, without one on a server: the files that are not committed.
 *
 * @returns {{ files: readonly string[], since: string }} paths from the house, those of deleted files too; and what they are compared with
 */
export function changedFiles() {
  const main = ["origin/HEAD", "origin/main", "main"].find(
    (name) => git("rev-parse", "--verify", name).length > 0,
  );
  const [base] = main ? git("merge-base", "HEAD", main) : [];
  const [head] = git("rev-parse", "HEAD");
  if (!head) throw new Error("quick needs git to know what was changed; `npm test` runs everything");
  const files = [
    ...git("diff", "--name-only", "--no-renames", base ?? "HEAD", "--"),
    ...git("ls-files", "--others", "--exclude-standard"),
  ];
  return {
    files: [...new Set(files)].sort(),
    since: base && base !== head ? `${base.slice(0, 10)}, where this branch left ${main}` : "the last commit",
  };
}

function git(...words) {
  const { status, stdout } = spawnSync("git", ["-c", "core.quotePath=false", ...words], {
    cwd: house,
    encoding: "utf8",
  });
  return status === 0 ? stdout.split("\n").filter((line) => line !== "") : [];
}
