import { existsSync } from "node:fs";
import { buildWorker } from "../../server/build.mjs";

/** Vitest's global setup: the sandbox's worker is bundled afresh before any test, so that no test runs a stale one. */
export async function setup() {
  if (existsSync(new URL("../../server/evaluate/plan-worker.ts", import.meta.url))) await buildWorker();
}
