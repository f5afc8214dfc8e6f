import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";

export default defineConfig({
  root: fileURLToPath(new URL("../..", import.meta.url)),
  // The names in the list of in-host stories are also read outside the extension host; there is no `vscode` there.
  resolve: { alias: { vscode: fileURLToPath(new URL("harness/no-vscode.ts", import.meta.url)) } },
  test: {
    // Not *.test.ts: these need the editor, which only run.mjs provides.
    include: ["tests/editor/stories/*.story.ts"],
    // One workbench at a time: two would compete for the processor, and time out.
    fileParallelism: false,
    testTimeout: 60_000,
    hookTimeout: 120_000,
  },
});
