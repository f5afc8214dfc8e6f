import { Script } from "node:vm";
import { startTimeLimit } from "../sandbox/time-limit.ts";

/**
 * Does some synchronous work on this thread and interrupts it when it exceeds the limit; the result is then undefined. The
 * limit counts time that the machine gave this process: if the machine was busy with other programs, the work starts again with
 * more time, so it must be repeatable.
 *
 * An interruption is no exception: neither `catch` nor `finally` sees it. State outside the work stays as it was at that
 * moment, and the caller must repair it.
 */
export function withinTime<Result>(
  limitMs: number,
  work: () => Result,
): { readonly result: Result } | undefined {
  const isOver = startTimeLimit(limitMs * nearly);
  for (let allowedMs = limitMs; ; allowedMs *= 3) {
    try {
      return { result: interruptible(allowedMs, work) };
    } catch (thrown) {
      if (!isInterruption(thrown)) throw thrown;
      if (isOver()) return undefined;
    }
  }
}

/** The process's own CPU time may lag a little behind the clock. */
const nearly = 0.8;

/** A script finds its work by this name and reads it before anything else runs, so nested calls are safe. */
const door = Symbol.for("loomwright.work-within-time");
const callWork = new Script(`globalThis[Symbol.for(${JSON.stringify(door.description)})]()`);

function interruptible<Result>(limitMs: number, work: () => Result): Result {
  Object.defineProperty(globalThis, door, { value: work, configurable: true });
  try {
    return callWork.runInThisContext({ timeout: Math.ceil(limitMs), displayErrors: false }) as Result;
  } finally {
    Reflect.deleteProperty(globalThis, door);
  }
}

function isInterruption(thrown: unknown): boolean {
  return thrown instanceof Error && "code" in thrown && thrown.code === "ERR_SCRIPT_EXECUTION_TIMEOUT";
}
