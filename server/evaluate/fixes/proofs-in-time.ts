import type { CheckedPlan } from "../checked-plan.ts";

/**
 * The number of findings with fixes to try when a person asks about many at once. Each trial runs the whole plan again: the
 * more calls a plan makes, the fewer findings get their fixes tried. All trials together take at most some seconds.
 */
export function findingsWithFixesTried({ records }: Pick<CheckedPlan, "records">): number {
  return Math.max(1, Math.min(200, Math.floor(recordsInAllTrials / Math.max(1, records.length))));
}

/** The trials of 200 findings of a plan of 200 calls. */
const recordsInAllTrials = 40_000;
