import { setImmediate as nextTurn } from "node:timers/promises";
import type { CheckOutcome } from "./evaluate/checked-plan.ts";
import type { Uri } from "./evaluate/workspace.ts";

/**
 * Decides when a plan is checked and whether a result may be shown. For each root at most one run is in flight and at most one
 * waits; a newer text replaces the waiting one. There is no fixed delay: an urgent root starts at once, and urgent plans never
 * delay each other. All others are checked one at a time, while no urgent one is. A result is let through only if every text it
 * was computed from is still the newest.
 */
export interface PublishGate {
  /** A text of the plan may be new: check it. */
  wake(root: Uri): void;
  /** Resolves when no text newer than the last outcome let through is known; at once when the root is at rest. */
  settled(root: Uri): Promise<void>;
  /** Drops a root; its run in flight is never let through. */
  forget(root: Uri): void;
  /** True if no root is being checked and none waits. */
  atRest(): boolean;
}

export interface GateWiring {
  check(root: Uri): Promise<CheckOutcome>;
  /** A user is looking at the plan now. */
  isUrgent(root: Uri): boolean;
  /** Every text that it was computed from is still the newest, and half-typed text still is half typed. */
  isCurrent(outcome: CheckOutcome): boolean;
  log(text: string): void;
  started(root: Uri): void;
  letThrough(root: Uri, outcome: CheckOutcome | FailedPlan): void;
  /** The last of all runs has ended. */
  rested(): void;
}

/** The plan could not be checked at all: a broken assumption of ours, never the builder's fault. */
export interface FailedPlan {
  readonly state: "failed";
  readonly root: Uri;
  readonly reason: string;
}

export function createPublishGate(wiring: GateWiring): PublishGate {
  const runs = new Map<Uri, Run>();
  /** Runs that are not urgent, in their order. */
  const waiting: (readonly [Uri, Run])[] = [];
  let serving = false;

  /** The run ends before its outcome is passed on, to let the recipient wake the root again. */
  const letThrough = (root: Uri, run: Run, outcome: CheckOutcome | FailedPlan): void => {
    runs.delete(root);
    if (run.forgotten) return;
    try {
      wiring.letThrough(root, outcome);
    } catch (error) {
      wiring.log(`A result could not be shown: ${error instanceof Error ? error.stack : error}`);
      // Without this, the results of an older text would remain on display.
      wiring.letThrough(root, { state: "failed", root, reason: reasonOf(error) });
    }
  };

  const runUntilCurrent = async (root: Uri, run: Run): Promise<void> => {
    for (let ownRepeats = 0; ; ) {
      run.newerWaits = false;
      wiring.started(root);
      const outcome = await checkOrFail(wiring, root);
      if (run.forgotten) return;
      if (outcome.state === "failed" || wiring.isCurrent(outcome)) {
        // A failure of an old text is irrelevant when a new one waits.
        if (outcome.state === "failed" && run.newerWaits) continue;
        letThrough(root, run, outcome);
        return;
      }
      if (run.newerWaits) continue;
      ownRepeats++;
      if (ownRepeats > mostOwnRepeats) {
        letThrough(root, run, { state: "failed", root, reason: "its files keep changing on disk" });
        return;
      }
    }
  };

  const begin = (root: Uri, run: Run): void => {
    // One that waited may have become urgent, or was closed; it is then skipped.
    if (run.started || run.forgotten) return;
    run.started = true;
    runUntilCurrent(root, run)
      .catch((error) =>
        wiring.log(`A failure could not be shown: ${error instanceof Error ? error.stack : error}`),
      )
      .finally(() => {
        if (runs.get(root) === run) runs.delete(root);
        run.end();
        if (runs.size === 0) wiring.rested();
      });
  };

  const serveWaiting = async (): Promise<void> => {
    if (serving) return;
    serving = true;
    for (let next = waiting.shift(); next; next = waiting.shift()) {
      // Requests that arrived during the previous check are answered first.
      await nextTurn();
      for (let urgent = urgentRun(); urgent; urgent = urgentRun()) await urgent.done;
      const [root, run] = next;
      begin(root, run);
      await run.done;
    }
    serving = false;
  };

  const urgentRun = (): Run | undefined =>
    [...runs].find(([root, { started }]) => started && wiring.isUrgent(root))?.[1];

  return {
    wake(root) {
      const known = runs.get(root);
      if (known) known.newerWaits = true;
      const run = known ?? newRun();
      runs.set(root, run);
      if (wiring.isUrgent(root)) begin(root, run);
      else if (!known) {
        waiting.push([root, run]);
        void serveWaiting();
      }
    },
    async settled(root) {
      for (let run = runs.get(root); run; run = runs.get(root)) await run.done;
    },
    forget(root) {
      const run = runs.get(root);
      runs.delete(root);
      if (!run) return;
      run.forgotten = true;
      if (!run.started) run.end();
    },
    atRest: () => runs.size === 0,
  };
}

interface Run {
  newerWaits: boolean;
  forgotten: boolean;
  started: boolean;
  readonly done: Promise<void>;
  readonly end: () => void;
}

function newRun(): Run {
  let end = () => {};
  const done = new Promise<void>((resolve) => {
    end = resolve;
  });
  return { newerWaits: false, forgotten: false, started: false, done, end };
}

/** A file that a build step rewrites all the time must not keep the server busy for ever. */
const mostOwnRepeats = 5;

async function checkOrFail({ check }: GateWiring, root: Uri): Promise<CheckOutcome | FailedPlan> {
  try {
    return await check(root);
  } catch (error) {
    return { state: "failed", root, reason: reasonOf(error) };
  }
}

function reasonOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
