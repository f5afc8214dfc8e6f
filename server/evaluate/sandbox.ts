import type { End, RunOutcome, RunRequest } from "./sandbox/contract.ts";
import { PlanRunner } from "./sandbox/plan-runner.ts";

/**
 * Starts no worker yet: the first plan starts the first worker. A second one is prepared some time after the first plan has
 * ended, to save its cost for a command line that checks one plan.
 */
export function createSandbox(options: { readonly workerFile?: URL | string } = {}): Sandbox {
  const workerFile = options.workerFile ?? new URL("../dist/plan-worker.cjs", import.meta.url);
  let runner: PlanRunner | undefined;
  let spare: PlanRunner | undefined;
  let spareTimer: NodeJS.Timeout | undefined;
  let last: Promise<unknown> = Promise.resolve();
  let closed = false;

  const startSpareSoon = () => {
    clearTimeout(spareTimer);
    spareTimer = setTimeout(() => {
      if (!closed && !spare?.usable) spare = new PlanRunner(workerFile);
    }, spareAfterMs).unref();
  };

  const runNext = async (request: RunRequest): Promise<RunOutcome> => {
    let end: End = { why: "failed", message: "the sandbox was closed" };
    // A worker may turn out to be corrupted while it prepares itself again; the plan then goes to a new one.
    for (let attempt = 0; attempt < 2 && !closed; attempt++) {
      if (!runner?.usable) {
        runner = spare?.usable ? spare : new PlanRunner(workerFile);
        spare = undefined;
      }
      const outcome = await runner.run(request);
      if (outcome) {
        startSpareSoon();
        return outcome;
      }
      end = runner.whySpent ?? end;
    }
    return { records: [], calls: [], allocations: [], end };
  };

  return {
    run(request) {
      const outcome = last.then(() => runNext(request));
      last = outcome.catch(() => {});
      return outcome;
    },
    async dispose() {
      closed = true;
      clearTimeout(spareTimer);
      await Promise.all([runner?.kill(), spare?.kill()]);
    },
  };
}

const spareAfterMs = 500;

/** Runs plans, one after another, in a worker that may be killed; a new one is kept ready. */
export interface Sandbox {
  run(request: RunRequest): Promise<RunOutcome>;
  dispose(): Promise<void>;
}
