import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";

const house = fileURLToPath(new URL("../..", import.meta.url));

/**
 * The files that differ from the main branch, committed or not: the changes since this branch left it. On the main branch itself,
 * if no server has one: the uncommitted files.
 *
 * @returns {{ files: readonly string[], since: string }} paths from the house, including deleted files; and the base of the
 * comparison
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
