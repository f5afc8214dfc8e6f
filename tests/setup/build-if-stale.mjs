// For `npm run quick`, before tests that run the built product: builds it, unless it is newer than all its sources.

import { spawnSync } from "node:child_process";
import { readdirSync, statSync } from "node:fs";
import { fileURLToPath } from "node:url";

const house = fileURLToPath(new URL("../..", import.meta.url));

/** One file of each room's build, in build order. */
const built = ["server/dist/command.cjs", "library/dist/command.cjs", "extension/dist/library-rest.json"];

if (isStale()) {
  const { status } = spawnSync("npm", ["run", "--silent", "build"], {
    cwd: house,
    stdio: "inherit",
    shell: process.platform === "win32",
  });
  process.exitCode = status ?? 1;
} else console.log("The build is newer than its sources.");

function isStale() {
  const builtAt = Math.min(...built.map((file) => changedAt(file) ?? 0));
  const sources = [
    "package-lock.json",
    "LICENSE",
    ...["library", "server", "extension"].flatMap(everythingIn),
  ];
  return sources.some((file) => changedAt(file) > builtAt);
}

/** Files and folders: a folder changes when a file in it is renamed or deleted. */
function everythingIn(folder) {
  return readdirSync(`${house}${folder}`, { withFileTypes: true }).flatMap((entry) => {
    const path = `${folder}/${entry.name}`;
    if (entry.isDirectory())
      return ["dist", "node_modules"].includes(entry.name) ? [] : [path, ...everythingIn(path)];
    return entry.name.endsWith(".test.ts") ? [] : [path];
  });
}

/** Milliseconds; undefined if it does not exist. */
function changedAt(file) {
  return statSync(`${house}${file}`, { throwIfNoEntry: false })?.mtimeMs;
}
