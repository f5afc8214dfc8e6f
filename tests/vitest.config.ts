import { availableParallelism } from "node:os";
import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";
import { LongFirst } from "./setup/long-first.ts";
import { casesOfCommit } from "./setup/which-cases.ts";

const house = fileURLToPath(new URL("..", import.meta.url));
const tests = ["library", "server", "extension", "tests"].map((folder) => `${folder}/**/*.test.ts`);

/**
 * The test files that each need a separate process, with the reason. All others share a few processes, to import the compiler and
 * the engine once and not once for each file. A new test file shares; if it affects its process, a guard
 * (`tests/setup/shared-process.ts`) fails it and names this list.
 */
const alone: Readonly<Record<string, string>> = {
  "tests/hostile/memory.test.ts": "counts the memory of its process and sets a V8 flag",
  "tests/growth/*.test.ts":
    "counts steps with V8's precise coverage, which must start before the code it counts is loaded, or sets a V8 flag",
  "server/open-plans.test.ts": "mocks a module",
  "server/front/engine-watch.test.ts": "sets the clock",
};

/** The test files that affect their process, but not one another: they share processes among themselves, without the guard. */
const apart: Readonly<Record<string, string>> = {
  "tests/difference/*.test.ts": "changes the current directory and the PATH within a test",
  "{server/output/{report-pdf,label-pdf,drawing-files},tests/report/bench-edition,tests/front-view/template}.test.ts":
    "reads PDF with pdf.js, which adds the built-ins of newer engines, and a browser's `self`, to its process",
};

const [filesAlone, filesApart] = [Object.keys(alone), Object.keys(apart)];

const common = { root: house, resolve: { alias: { loomwright: `${house}library/plan/index.ts` } } };
const propertySeed = "tests/setup/property-seed.ts";
const keptEngine = "tests/setup/kept-engine.ts";

// For the tests in their processes, and for the global setup in this one.
process.env.LOOMWRIGHT_CASES = casesOfCommit(house);

/** Long enough for a slow test on a busy machine; it only ends a test that hangs. */
const testTimeout = 120_000;

export default defineConfig({
  ...common,
  test: {
    globalSetup: ["tests/setup/build-worker.mjs", "tests/setup/which-cases.ts"],
    maxWorkers: availableParallelism(),
    // The projects, and the runs one after another, compile a module once, not each for itself.
    experimental: { fsModuleCache: true },
    // Not if another order is asked for: Vitest's own random one would give way to it.
    sequence: process.argv.some((word) => word.startsWith("--sequence.shuffle"))
      ? {}
      : { sequencer: LongFirst },
    // They extend nothing, so that the global setup runs once and not once for each.
    projects: [
      {
        ...common,
        test: {
          name: "shared",
          include: tests,
          exclude: ["**/node_modules/**", ...filesAlone, ...filesApart],
          setupFiles: [propertySeed, keptEngine, "tests/setup/shared-process.ts"],
          isolate: false,
          testTimeout,
          hookTimeout: testTimeout,
        },
      },
      {
        ...common,
        test: {
          name: "alone",
          include: filesAlone,
          setupFiles: [propertySeed, keptEngine],
          testTimeout,
          hookTimeout: testTimeout,
        },
      },
      {
        ...common,
        test: {
          name: "apart",
          include: filesApart,
          setupFiles: [propertySeed, keptEngine],
          isolate: false,
          testTimeout,
          hookTimeout: testTimeout,
        },
      },
    ],
  },
});
