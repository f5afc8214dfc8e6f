import { accessSync, constants, existsSync, readFileSync } from "node:fs";
import { delimiter, join } from "node:path";
import { runCommand } from "./run-command.mjs";

/** Whether this is a Debian or one of its descendants: there, apt can provide everything we need. */
export function isDebian() {
  return (
    existsSync("/etc/os-release") && /^ID(_LIKE)?=.*\bdebian\b/m.test(readFileSync("/etc/os-release", "utf8"))
  );
}

/**
 * Installs packages of Debian, as root or through a `sudo` without a password.
 *
 * @param {...string} packages
 * @returns {Promise<void>} rejects if this user may not, or if there is no such package
 */
export async function installFromDebian(...packages) {
  const env = { ...process.env, DEBIAN_FRONTEND: "noninteractive" };
  const asRoot = process.getuid?.() === 0 ? [] : ["sudo", "-n"];
  const apt = (...args) => {
    const [program, ...rest] = [...asRoot, "apt-get", ...args];
    return runCommand(program, rest, { env });
  };
  await apt("update");
  await apt("install", "-y", "--no-install-recommends", ...packages);
}

/**
 * The path of the first of some programs that is installed.
 *
 * @param {readonly string[]} names
 * @param {readonly string[]} [otherFolders] besides those of the PATH
 * @returns {string | undefined}
 */
export function installedProgram(names, otherFolders = []) {
  const folders = [...(process.env.PATH ?? "").split(delimiter), ...otherFolders];
  return folders.flatMap((folder) => names.map((name) => join(folder, name))).find(isProgram);
}

export function isProgram(path) {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}
