import type { CheckOutcome } from "./evaluate/checked-plan.ts";
import type { Snapshot, Uri } from "./evaluate/workspace.ts";

/**
 * Decides when a plan is checked and whether a result may be seen. For each root at most one run is in flight and at most one
 * waits; a newer text takes the waiting one's place, and plans never hold each other up. There is no fixed wait: an idle root
 * starts at once. A result is let through only if every text it was computed from is still the newest.
 */
export interface PublishGate {
  /** Some text of the plan may be new: check it. */
  wake(root: Uri): void;
  /** Resolves when nothing newer than the last outcome let through is known; at once when the root is at rest. */
  settled(root: Uri): Promise<void>;
  /** Stops caring for a root; what is in flight for it is never let through. */
  forget(root: Uri): void;
}

export interface GateWiring {
  check(root: Uri): Promise<CheckOutcome>;
  isCurrent(snapshot: Snapshot): boolean;
  log(text: string): void;
  started(root: Uri): void;
  letThrough(root: Uri, outcome: CheckOutcome | FailedPlan): void;
}

/** The plan could not be checked at all: a broken assumption of ours, never the builder's fault. */
export interface FailedPlan {
  readonly state: "failed";
  readonly root: Uri;
  readonly reason: string;
}

export function createPublishGate(wiring: GateWiring): PublishGate {
  const runs = new Map<Uri, Run>();

  /** The run ends before anybody hears of its outcome, so that whoever is told can wake the root again. */
  const letThrough = (root: Uri, run: Run, outcome: CheckOutcome | FailedPlan): void => {
    runs.delete(root);
    if (run.forgotten) return;
    try {
      wiring.letThrough(root, outcome);
    } catch (error) {
      wiring.log(`A result could not be shown: ${error instanceof Error ? error.stack : error}`);
      // Silence would leave what was shown of an older text standing.
      wiring.letThrough(root, { state: "failed", root, reason: reasonOf(error) });
    }
  };

  const runUntilCurrent = async (root: Uri, run: Run): Promise<void> => {
    for (let ownRepeats = 0; ; ) {
      run.newerWaits = false;
      wiring.started(root);
      const outcome = await checkOrFail(wiring, root);
      if (run.forgotten) return;
      if (outcome.state === "failed" || wiring.isCurrent(outcome.snapshot)) {
        // A failure of an old text is of no interest when a new one waits.
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

  return {
    wake(root) {
      const busy = runs.get(root);
      if (busy) {
        busy.newerWaits = true;
        return;
      }
      const run: Run = { newerWaits: false, forgotten: false, done: Promise.resolve() };
      runs.set(root, run);
      run.done = runUntilCurrent(root, run)
        .catch((error) =>
          wiring.log(`A failure could not be shown: ${error instanceof Error ? error.stack : error}`),
        )
        .finally(() => {
          if (runs.get(root) === run) runs.delete(root);
        });
    },
    async settled(root) {
      for (let run = runs.get(root); run; run = runs.get(root)) await run.done;
    },
    forget(root) {
      const run = runs.get(root);
      if (run) run.forgotten = true;
      runs.delete(root);
    },
  };
}

interface Run {
  newerWaits: boolean;
  forgotten: boolean;
  done: Promise<void>;
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
