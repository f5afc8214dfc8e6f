import { installedProgram, installFromDebian, isDebian, isProgram } from "../../setup/debian.mjs";
import { CannotBeHad } from "./cannot-be-had.mjs";

/** Chromium without windows of its own. The same engine draws a page in half of the time. */
const shell = "chromium-headless-shell";
const names = [shell, "chromium", "chromium-browser", "google-chrome-stable", "google-chrome", "chrome"];
const macApplications = [
  "/Applications/Chromium.app/Contents/MacOS/Chromium",
  "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
];

/**
 * The path of a Chromium: CHROME_PATH, or an installed one. If there is none, Debian's is installed, if this user may.
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

function installedChromium() {
  return installedProgram(names, ["/usr/bin", "/snap/bin"]) ?? macApplications.find(isProgram);
}

/** With fonts: without any the workbench would show boxes in the pictures. */
async function installWithApt() {
  const fonts = ["fonts-dejavu-core", "fonts-liberation"];
  try {
    await installFromDebian(shell, ...fonts);
  } catch {
    // Older releases have only the whole of Chromium.
    await installFromDebian("chromium", ...fonts);
  }
}
