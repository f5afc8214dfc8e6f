import inspector from "node:inspector";
import inspectorPromises from "node:inspector/promises";
import { syncBuiltinESMExports } from "node:module";
import v8 from "node:v8";
import { afterAll, expect, vi } from "vitest";

/*
 * For test files that share a process: a file that affects the process would change the results of other files, depending on the
 * order of execution. Such an effect fails the file, with the way out.
 */

const wayOut =
  "a file that needs this goes into the list `alone` or `apart` of tests/vitest.config.ts, with the reason";

function forbid(holder: object, names: readonly string[], of: string): void {
  for (const name of names)
    Object.assign(holder, {
      [name]: () => {
        throw new Error(`${of}.${name} affects all test files of this process: ${wayOut}`);
      },
    });
}

/** Globals that zod, Vitest and elkjs define for themselves when they are imported. */
const ofPackages = /^(__(zod|vitest)|goog$)/;

forbid(vi, ["mock", "doMock", "stubGlobal", "stubEnv", "useFakeTimers", "resetModules"], "vi");
forbid(v8, ["setFlagsFromString", "setHeapSnapshotNearHeapLimit", "takeCoverage"], "v8");
forbid(inspector.Session.prototype, ["connect"], "inspector.Session");
forbid(inspectorPromises.Session.prototype, ["connect"], "inspector.Session");
forbid(process, ["chdir", "memoryUsage"], "process");
syncBuiltinESMExports();

// Before the file is imported: effects of its top-level code count too.
const before = stateOfProcess();

afterAll(() => {
  expect(stateOfProcess(), `this file left its process changed: ${wayOut}`).toEqual(before);
});

/** Everything a test file could leave behind for the next one, except the state of modules, which a house test forbids. */
function stateOfProcess(): unknown {
  return {
    environment: { ...process.env },
    directory: process.cwd(),
    exitCode: process.exitCode,
    globals: Object.getOwnPropertyNames(globalThis)
      .filter((name) => !ofPackages.test(name))
      .sort(),
    listeners: process
      .eventNames()
      .map((name) => `${String(name)}: ${process.listenerCount(name)}`)
      .sort(),
  };
}
