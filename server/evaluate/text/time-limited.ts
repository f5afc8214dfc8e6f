import { Script } from "node:vm";
import { startTimeLimit } from "../sandbox/time-limit.ts";

/**
 * Does some synchronous work on this thread and interrupts it when it takes longer than the limit; then the result is
 * undefined. The limit counts time that the machine gave this process: if the machine was busy with something else, the work
 * begins anew with more time, so it must bear to be done twice.
 *
 * An interruption is no exception: neither `catch` nor `finally` sees it. State that the work keeps outside of itself is as it
 * was at that moment, and the caller must put it in order.
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

/** The process's own account of its time may be a little behind the clock. */
const nearly = 0.8;

/** A script finds its work by this name; it reads it before anything else runs, so calls within calls do no harm. */
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
