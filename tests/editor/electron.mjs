// The in-host suite in a desktop VS Code: `npm run test:electron [-- --vscode=PATH] [-- --optional]`.
// Uses the VS Code of --vscode or VSCODE_PATH, else downloads the oldest one that the extension supports.

import { cpSync, mkdtempSync, readFileSync, realpathSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { downloadAndUnzipVSCode, runTests } from "@vscode/test-electron";
import { CannotBeHad } from "./setup/cannot-be-had.mjs";
import { packExtension } from "./setup/extension.mjs";
import { buildSuite } from "./suite/build.mjs";

const extensionFolder = fileURLToPath(new URL("../../extension", import.meta.url));
const words = process.argv.slice(2);
const folder = realpathSync(mkdtempSync(join(tmpdir(), "loomwright-electron-")));

try {
  const program = await findVSCode();
  const suite = await buildSuite();
  packExtension();
  const workspace = join(folder, "workspace");
  cpSync(fileURLToPath(new URL("workspace", import.meta.url)), workspace, { recursive: true });
  await runTests({
    vscodeExecutablePath: program,
    extensionDevelopmentPath: [extensionFolder, suite.extension],
    extensionTestsPath: suite.tests,
    launchArgs: [
      workspace,
      "--disable-workspace-trust",
      "--disable-extensions",
      `--user-data-dir=${join(folder, "user")}`,
      ...(process.getuid?.() === 0 ? ["--no-sandbox"] : []),
    ],
  });
  console.log("All stories of the suite passed in the desktop VS Code.");
} catch (error) {
  if (error instanceof CannotBeHad) {
    console.log(`The suite DID NOT RUN in a desktop VS Code: ${error.message}`);
    process.exitCode = words.includes("--optional") ? 0 : 1;
  } else {
    console.log(`The suite failed in the desktop VS Code: ${error?.message ?? error}`);
    process.exitCode = 1;
  }
} finally {
  rmSync(folder, { recursive: true, force: true });
}

/** The path of the program. Without a network the download fails at once, with the name of the host it could not find. */
async function findVSCode() {
  const stated =
    words.find((word) => word.startsWith("--vscode="))?.slice("--vscode=".length) ?? process.env.VSCODE_PATH;
  if (stated) return stated;
  const { engines } = JSON.parse(readFileSync(join(extensionFolder, "package.json"), "utf8"));
  const version = engines.vscode.replace(/^\D+/, "");
  try {
    return await downloadAndUnzipVSCode({ version, extractSync: true });
  } catch (error) {
    throw new CannotBeHad(
      `VS Code ${version} could not be downloaded (${error.message}), and no installed one was named with --vscode=PATH.`,
    );
  }
}
