/**
 * The worker in which plans run. It has no environment and no standard streams, and knows nothing but QuickJS; its parent
 * kills it when a plan does not let go.
 */
import { readFileSync } from "node:fs";
import { parentPort, workerData } from "node:worker_threads";
import base from "@jitl/quickjs-ng-wasmfile-release-sync";
import { newQuickJSWASMModuleFromVariant, newVariant } from "quickjs-emscripten-core";
import { engineMemory } from "./sandbox/engine-memory.ts";
import { writePages } from "./sandbox/record-pages.ts";
import { createRealm } from "./sandbox/run-plan.ts";
import type { FromWorker, ToWorker, WorkerStart } from "./sandbox/worker-messages.ts";
import type { End } from "./sandbox.ts";

/** WebAssembly memory never shrinks. An instance begins with 16 MiB; one that a plan has blown up is thrown away. */
const reusableBytes = 32 * 1024 * 1024;

/** After a limit was hit, the engine may not have let go of everything, and then ends itself when asked to clean up. */
const mayReuseAfter = (end: End) => end === "whole" || end.why === "error";

async function work() {
  // Listening comes first: a worker with nothing to wait for settles all its background work before it goes on, and the
  // engine's machine code is being made there. On a busy machine that took half a second.
  let answer: (request: ToWorker) => void = () => {};
  parentPort?.on("message", (request: ToWorker) => answer(request));
  const tell = (message: FromWorker) => parentPort?.postMessage(message);

  useUniversalTime();
  const memory = engineMemory();
  const quickjs = await newQuickJSWASMModuleFromVariant(
    newVariant(base, {
      wasmBinary: new Uint8Array(readFileSync(new URL("../dist/quickjs.wasm", import.meta.url))).buffer,
      wasmMemory: memory.memory,
      emscriptenModule: { print: () => {}, printErr: () => {} } as never,
    }),
  );
  const records = writePages((workerData as WorkerStart).firstPage, (page) => tell({ kind: "page", page }));
  let room = createRealm(quickjs, memory, records);
  answer = (request) => {
    let reusable = false;
    try {
      const end = room.run(request);
      reusable = mayReuseAfter(end) && memory.bytes <= reusableBytes;
      tell({ kind: "ended", end, reusable });
    } catch (error) {
      tell({ kind: "ended", end: { why: "failed", message: String(error) }, reusable });
    }
    if (!reusable) return;
    // The answer is on its way; the next plan finds a fresh context waiting.
    room.dispose();
    room = createRealm(quickjs, memory, records);
    tell({ kind: "ready" });
  };
  tell({ kind: "ready" });
}

/** QuickJS asks this realm for the local time zone. What a plan gives must not depend on where it is checked. */
function useUniversalTime() {
  const clock = Date.prototype as unknown as Record<string, unknown>;
  for (const part of ["FullYear", "Month", "Date", "Day", "Hours", "Minutes", "Seconds"]) {
    clock[`get${part}`] = clock[`getUTC${part}`];
  }
  clock.getTimezoneOffset = () => 0;
}

void work();
