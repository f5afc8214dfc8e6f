import type { PassedFile } from "./passed-files.ts";
import type { Reported } from "./reported-plan.ts";
import type { Shard } from "./shard.ts";

/** The result of a check. */
export interface CheckedPlans {
  readonly plans: readonly Reported[];
  /** The same in every share. */
  readonly passedBy: readonly PassedFile[];
  readonly shard?: Shard;
}
