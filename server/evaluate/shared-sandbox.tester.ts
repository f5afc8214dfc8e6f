import { createSandbox, type Sandbox } from "./sandbox.ts";

const sandbox = createSandbox();

/**
 * One sandbox for all checkers of tests that do not test the sandbox: each plan gets a fresh context in any case, and a thread for
 * each test would take longer than most plans. No checker ends it; it ends with the process.
 */
export const sharedSandbox: Sandbox = {
  run: (request) => sandbox.run(request),
  dispose: async () => {},
};
