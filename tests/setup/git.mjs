// Before the tests: git, which reads the older states of a plan. Tests of that need it, and fail without it.

import { installedProgram, installFromDebian, isDebian } from "./debian.mjs";

if (!installedProgram(["git"])) {
  try {
    if (!isDebian()) throw new Error("install it, and run the tests again");
    await installFromDebian("git");
  } catch (error) {
    console.log(`git is missing: ${error.message.split("\n")[0]}`);
    process.exitCode = 1;
  }
}
