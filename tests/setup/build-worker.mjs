import { buildWorker } from "../../server/build.mjs";

/** Vitest's global setup: the sandbox's worker is bundled afresh before any test, so that no test runs a stale one. */
export async function setup() {
  await buildWorker();
}
