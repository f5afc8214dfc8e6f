// Packs the extension from dist into a .vsix beside this file: `npm run package -w extension`. Prints its name and size.

import { execFileSync } from "node:child_process";
import { readFileSync, rmSync, statSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const here = dirname(fileURLToPath(import.meta.url));
const { name, version } = JSON.parse(readFileSync(join(here, "package.json"), "utf8"));
const packed = join(here, `${name}-${version}.vsix`);
const vsce = join(dirname(createRequire(import.meta.url).resolve("@vscode/vsce/package.json")), "vsce");

rmSync(packed, { force: true });
execFileSync(
  process.execPath,
  [
    vsce,
    "package",
    // Everything is bundled.
    "--no-dependencies",
    // The pictures of the README travel in the package; they have no network address to point to.
    "--no-rewrite-relative-links",
    "--allow-missing-repository",
    "--out",
    packed,
  ],
  { cwd: here, stdio: ["ignore", "ignore", "inherit"] },
);
console.log(`${packed}: ${(statSync(packed).size / 1e6).toFixed(2)} MB`);
