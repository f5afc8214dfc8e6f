import { Worker } from "node:worker_threads";
import type { Message } from "vscode-languageserver/node";
import type { EngineStart } from "../engine-messages.ts";

/** One engine: everything that reads, runs and judges plans, in a thread that can be ended. */
export interface EngineThread {
  send(message: Message): void;
  /** Ends the thread at once, in the middle of its work. No event follows. */
  end(): void;
}

export interface EngineEvents {
  received(message: Message): void;
  /** The thread ended by itself: out of memory, or a broken assumption of ours. `why` is a clause: "it ran out of memory". */
  ended(why: string): void;
}

/**
 * @param file the bundle of the engine
 * @param number counts the engines of this process: an answer of one is never mistaken for another's
 */
export function startEngineThread(
  file: URL,
  number: number,
  { received, ended }: EngineEvents,
): EngineThread {
  const worker = new Worker(file, {
    workerData: { number } satisfies EngineStart,
    // The protocol may use this process's standard output; output of a library must not get into it.
    stdout: true,
    stdin: false,
  });
  worker.stdout.resume();
  let over = false;
  const end = (why?: string) => {
    if (over) return;
    over = true;
    if (why === undefined) void worker.terminate();
    else ended(why);
  };
  worker.on("message", (message: Message) => {
    if (!over) received(message);
  });
  worker.on("error", (error: NodeJS.ErrnoException) =>
    end(error.code === "ERR_WORKER_OUT_OF_MEMORY" ? "it ran out of memory" : `it failed: ${error.message}`),
  );
  worker.on("exit", (code) => end(`its thread ended with code ${code}`));
  return { send: (message) => worker.postMessage(message), end: () => end() };
}
