// Before the tests: installs the circuit simulator that the solver is compared with, if possible. If not, the tests compare only
// with its recorded answers, and this reports it.

import { installedProgram, installFromDebian, isDebian } from "./debian.mjs";

const missing = await whyMissing();
if (missing)
  console.log(
    `ngspice: ${missing}; the solver is compared with recorded answers of ngspice, not with a live one.`,
  );

async function whyMissing() {
  if (installedProgram(["ngspice"])) return undefined;
  if (!isDebian()) return "not installed";
  try {
    await installFromDebian("ngspice");
    return undefined;
  } catch (error) {
    return `not installed, and Debian's package could not be: ${error.message.split("\n")[0]}`;
  }
}
