/**
 * The worker that runs plans. It has no environment and no standard streams, and contains only QuickJS; its parent kills it
 * when a plan does not stop.
 */
import { readFileSync } from "node:fs";
import { parentPort, workerData } from "node:worker_threads";
import base from "@jitl/quickjs-ng-wasmfile-release-sync";
import { newQuickJSWASMModuleFromVariant, newVariant } from "quickjs-emscripten-core";
import type { End } from "./sandbox/contract.ts";
import { engineMemory } from "./sandbox/engine-memory.ts";
import { writePages } from "./sandbox/record-pages.ts";
import { createRealm } from "./sandbox/run-plan.ts";
import type { FromWorker, ToWorker, WorkerStart } from "./sandbox/worker-messages.ts";

/** WebAssembly memory never shrinks. An instance begins with 16 MiB; one that a plan has enlarged is discarded. */
const reusableBytes = 32 * 1024 * 1024;

/** After a limit was hit, the engine may not have freed everything, and then aborts when disposed of. */
const mayReuseAfter = (end: End) => end === "whole" || end.why === "error";

async function work() {
  // Listening comes first: a worker with no pending event finishes all its background work before it continues, and that
  // includes compiling the engine. On a busy machine that took half a second.
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
    // The answer is sent; the next plan gets a prepared context.
    room.dispose();
    room = createRealm(quickjs, memory, records);
    tell({ kind: "ready" });
  };
  tell({ kind: "ready" });
}

/** QuickJS asks this realm for the local time zone. A plan's records must not depend on where it is checked. */
function useUniversalTime() {
  const clock = Date.prototype as unknown as Record<string, unknown>;
  for (const part of ["FullYear", "Month", "Date", "Day", "Hours", "Minutes", "Seconds"]) {
    clock[`get${part}`] = clock[`getUTC${part}`];
  }
  clock.getTimezoneOffset = () => 0;
}

void work();
