import { accessSync, constants, existsSync, readFileSync } from "node:fs";
import { delimiter, join } from "node:path";
import { CannotBeHad } from "./cannot-be-had.mjs";
import { runCommand } from "./run-command.mjs";

const names = ["chromium", "chromium-browser", "google-chrome-stable", "google-chrome", "chrome"];
const macApplications = [
  "/Applications/Chromium.app/Contents/MacOS/Chromium",
  "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
];

/**
 * The path of a Chromium: CHROME_PATH, or one that is installed. Where there is none, Debian's is installed, if this user may.
 *
 * @returns {Promise<string>}
 */
export async function findChromium() {
  const stated = process.env.CHROME_PATH;
  if (stated) {
    if (isProgram(stated)) return stated;
    throw new CannotBeHad(`Chromium: CHROME_PATH is ${stated}, and there is no program at that path`);
  }
  const installed = installedChromium();
  if (installed) return installed;
  if (!isDebian()) throw new CannotBeHad("Chromium: none is installed; install one or set CHROME_PATH");
  try {
    await installWithApt();
  } catch (error) {
    throw new CannotBeHad(`Chromium: none is installed, and Debian's could not be: ${error.message}`);
  }
  const fresh = installedChromium();
  if (fresh) return fresh;
  throw new CannotBeHad(
    "Chromium: Debian's package was installed, but no program of that name is on the PATH",
  );
}

/** Whether this is a Debian or one of its descendants: there, apt can give us everything we need. */
export function isDebian() {
  return (
    existsSync("/etc/os-release") && /^ID(_LIKE)?=.*\bdebian\b/m.test(readFileSync("/etc/os-release", "utf8"))
  );
}

function installedChromium() {
  const folders = [...(process.env.PATH ?? "").split(delimiter), "/usr/bin", "/snap/bin"];
  return [...folders.flatMap((folder) => names.map((name) => join(folder, name))), ...macApplications].find(
    isProgram,
  );
}

function isProgram(path) {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

/** With fonts: without any the workbench would show boxes in the pictures. */
async function installWithApt() {
  const env = { ...process.env, DEBIAN_FRONTEND: "noninteractive" };
  const asRoot = process.getuid?.() === 0 ? [] : ["sudo", "-n"];
  const apt = (...args) => {
    const [program, ...rest] = [...asRoot, "apt-get", ...args];
    return runCommand(program, rest, { env });
  };
  await apt("update");
  await apt("install", "-y", "--no-install-recommends", "chromium", "fonts-dejavu-core", "fonts-liberation");
}
