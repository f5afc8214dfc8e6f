import { execFileSync } from "node:child_process";
import { readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

const folder = fileURLToPath(new URL("../../../extension", import.meta.url));

/**
 * Packs the extension as it was built last, in the same way as for users.
 *
 * @returns {{ path: string, bytes: number }} the .vsix file
 */
export function packExtension() {
  execFileSync(process.execPath, [join(folder, "package.mjs")], { stdio: ["ignore", "ignore", "inherit"] });
  const { name, version } = JSON.parse(readFileSync(join(folder, "package.json"), "utf8"));
  const path = join(folder, `${name}-${version}.vsix`);
  return { path, bytes: statSync(path).size };
}
