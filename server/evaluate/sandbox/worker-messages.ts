import type { End, RunRequest } from "./contract.ts";

/** The data that the parent gives a worker at its start. */
export interface WorkerStart {
  readonly firstPage: SharedArrayBuffer;
}

/** From parent to worker; sent only to a worker that reported ready. */
export type ToWorker = RunRequest;

export type FromWorker =
  /** A fresh context waits for a plan. */
  | { readonly kind: "ready" }
  /** The records exceed the previous pages; they continue in this one. */
  | { readonly kind: "page"; readonly page: SharedArrayBuffer }
  /** The plan has ended. `reusable` is false when the WebAssembly instance may be spoilt or has grown large. */
  | { readonly kind: "ended"; readonly end: End; readonly reusable: boolean };
