import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

const root = fileURLToPath(new URL("../..", import.meta.url));

/** The files of the repository, from its root, with those that are new and not ignored. */
export function trackedFiles(): readonly string[] {
  const { stdout, status, stderr } = spawnSync(
    "git",
    ["ls-files", "--cached", "--others", "--exclude-standard"],
    { cwd: root, encoding: "utf8" },
  );
  if (status !== 0) throw new Error(`git ls-files: ${stderr}`);
  return stdout.split("\n").filter((file) => file !== "" && existsSync(join(root, file)));
}
