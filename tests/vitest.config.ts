import { availableParallelism } from "node:os";
import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";

const house = fileURLToPath(new URL("..", import.meta.url));

export default defineConfig({
  root: house,
  resolve: { alias: { loomwright: `${house}library/plan/index.ts` } },
  test: {
    include: ["library/**/*.test.ts", "server/**/*.test.ts", "extension/**/*.test.ts", "tests/**/*.test.ts"],
    globalSetup: ["tests/setup/build-worker.mjs"],
    setupFiles: ["tests/setup/property-seed.ts"],
    maxWorkers: availableParallelism(),
    // Only to end what hangs: a busy machine must not fail what is merely slow.
    testTimeout: 120_000,
  },
});
