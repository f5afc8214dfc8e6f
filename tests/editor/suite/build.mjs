// Bundles the in-host suite into tests/editor/dist/suite: an extension without a user interface, whose tests the editor runs in
// its extension host. The extension under test is the installed one; this one only carries the suite.

import { mkdirSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";

const here = dirname(fileURLToPath(import.meta.url));

/** @returns {Promise<{ extension: string, tests: string }>} the folder of that extension, and the file with `run()` */
export async function buildSuite() {
  const extension = join(here, "..", "dist", "suite");
  const tests = join(extension, "run.js");
  mkdirSync(extension, { recursive: true });
  await build({
    entryPoints: [join(here, "run.ts")],
    outfile: tests,
    bundle: true,
    platform: "node",
    target: "node20",
    format: "cjs",
    external: ["vscode"],
    sourcemap: "inline",
    logLevel: "error",
  });
  const manifest = {
    name: "suite",
    publisher: "loomwright-tests",
    version: "0.0.0",
    engines: { vscode: "*" },
  };
  writeFileSync(join(extension, "package.json"), JSON.stringify(manifest));
  return { extension, tests };
}
