import { existsSync } from "node:fs";
import { buildWorker } from "../../server/build.mjs";

/** Vitest's global setup: bundles the sandbox's worker before any test, to prevent stale ones. */
export async function setup() {
  if (existsSync(new URL("../../server/evaluate/plan-worker.ts", import.meta.url))) await buildWorker();
}
