// Before the tests: the circuit simulator that the solver is held against, where it can be had. Where it cannot, the tests
// compare with its recorded answers alone, and this says so.

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
