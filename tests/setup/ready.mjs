// Installs and builds missing components: `npm run demo` and `npm test` each work as the first command in a fresh clone.
// It uses only Node, because no package is installed yet when it runs. With `--install-only` it does not build.

import { spawnSync } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";

const house = fileURLToPath(new URL("../..", import.meta.url));

if (!installedIsCurrent()) {
  step("installing what the project needs (npm ci)", [
    "ci",
    "--no-fund",
    "--no-audit",
    "--loglevel",
    "error",
  ]);
}
if (!process.argv.includes("--install-only")) step("building", ["run", "--silent", "build"]);

/** npm records its installation beside it; if the versions there equal those of the lock file, no installation is needed. */
function installedIsCurrent() {
  const installed = `${house}node_modules/.package-lock.json`;
  if (!existsSync(installed)) return false;
  const wanted = packagesOf(`${house}package-lock.json`);
  const present = packagesOf(installed);
  return Object.entries(wanted).every(
    ([name, { version, optional, link }]) =>
      name === "" ||
      !name.includes("node_modules/") ||
      link ||
      optional ||
      present[name]?.version === version,
  );
}

function packagesOf(lockFile) {
  return JSON.parse(readFileSync(lockFile, "utf8")).packages ?? {};
}

function step(what, npmArguments) {
  process.stderr.write(`loomwright: ${what} …\n`);
  const npm = process.platform === "win32" ? "npm.cmd" : "npm";
  const { status, error } = spawnSync(npm, npmArguments, {
    cwd: house,
    stdio: ["ignore", process.stderr, process.stderr],
    shell: process.platform === "win32",
  });
  if (status === 0) return;
  process.stderr.write(
    `loomwright: ${what} failed${error ? `: ${error.message}` : ""}; the lines above say why.\n`,
  );
  process.exit(1);
}
