// Renews recorded.json: `node tests/published/ngspice/run.mjs`. Needs ngspice (Debian package `ngspice`).
// The recorded voltages are ngspice's answers, never edited by hand.

import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { build } from "esbuild";

const folder = mkdtempSync(join(tmpdir(), "loomwright-ngspice-"));
try {
  // The oldest supported Node runs no TypeScript.
  const bundle = join(folder, "record.mjs");
  await build({
    entryPoints: [fileURLToPath(new URL("record.ts", import.meta.url))],
    bundle: true,
    platform: "node",
    format: "esm",
    outfile: bundle,
    logLevel: "warning",
  });
  const { record } = await import(pathToFileURL(bundle).href);
  record(fileURLToPath(new URL("recorded.json", import.meta.url)));
} finally {
  rmSync(folder, { recursive: true, force: true });
}
