// A folder for plans, in which the library and its types are found as in a build of one's own.

import { mkdirSync, mkdtempSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

const house = fileURLToPath(new URL("../..", import.meta.url));

/** The caller removes it. */
export function makeBenchFolder() {
  const folder = mkdtempSync(join(tmpdir(), "loomwright-bench-"));
  mkdirSync(join(folder, "node_modules"));
  symlinkSync(join(house, "library"), join(folder, "node_modules/loomwright"), "junction");
  writeFileSync(
    join(folder, "tsconfig.json"),
    JSON.stringify({
      compilerOptions: {
        target: "es2022",
        module: "esnext",
        moduleResolution: "bundler",
        strict: true,
        noEmit: true,
        types: [],
      },
    }),
  );
  return folder;
}
