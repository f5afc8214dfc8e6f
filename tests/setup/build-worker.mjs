import { existsSync } from "node:fs";
import { buildWorker } from "../../server/build.mjs";

/**
 * Vitest's global setup: bundles the sandbox's worker before any test, to prevent stale ones. Not in `npm test`, which has built
 * everything, and runs other programs of that build at the same time.
 */
export async function setup() {
  if (process.env.LOOMWRIGHT_BUILT) return;
  if (existsSync(new URL("../../server/evaluate/plan-worker.ts", import.meta.url))) await buildWorker();
}
