// The stories in the real editor: `node tests/editor/run.mjs [--picture] [names of stories …]`.
// Gets VS Code's server and a Chromium, packs the extension, and passes their paths to the stories.

import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import { isDebian } from "../setup/debian.mjs";
import { CannotBeHad } from "./setup/cannot-be-had.mjs";
import { findChromium } from "./setup/chromium.mjs";
import { findEditor } from "./setup/editor.mjs";
import { packExtension } from "./setup/extension.mjs";
import { buildSuite } from "./suite/build.mjs";

const house = fileURLToPath(new URL("../..", import.meta.url));
const words = process.argv.slice(2);

const missing = [];
const get = async (find) => {
  try {
    return await find();
  } catch (error) {
    if (!(error instanceof CannotBeHad)) throw error;
    missing.push(error.message);
    return undefined;
  }
};
const editor = await get(findEditor);
const chromium = await get(findChromium);

if (editor && chromium) {
  const suite = await buildSuite();
  const extension = packExtension();
  console.log(
    `VS Code ${editor.version}, ${chromium}, extension of ${(extension.bytes / 1e6).toFixed(2)} MB`,
  );
  const { status } = spawnSync(
    process.execPath,
    [
      "node_modules/vitest/vitest.mjs",
      ...["run", "--config", "tests/editor/vitest.config.ts"],
      ...(words.includes("--picture") ? ["picture"] : words),
    ],
    {
      cwd: house,
      stdio: "inherit",
      env: {
        ...process.env,
        LOOMWRIGHT_EDITOR: editor.folder,
        LOOMWRIGHT_CHROMIUM: chromium,
        LOOMWRIGHT_VSIX: extension.path,
        LOOMWRIGHT_SUITE: suite.extension,
        ...(words.includes("--picture") ? { LOOMWRIGHT_PICTURE: "take" } : {}),
      },
    },
  );
  process.exitCode = status ?? 1;
} else {
  console.log("The stories in the real editor DID NOT RUN. What they need could not be had:");
  for (const what of missing) console.log(`- ${what}`);
  // On Debian and in continuous integration everything is available, so a missing component is a fault there.
  if (process.env.CI === "true" || isDebian()) process.exitCode = 1;
}
