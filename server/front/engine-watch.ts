import { startTimeLimit } from "../evaluate/sandbox/time-limit.ts";

/** Finds out whether an engine's thread is free: asks it at short intervals, for as long as it may be at work. */
export interface EngineWatch {
  /** The engine was given something to do. Before the first call it is not pinged. */
  busy(): void;
  answered(): void;
  stop(): void;
}

export interface WatchWiring {
  /** How long the thread may take to answer, in ms, of time that the machine gave to this process. */
  readonly limitMs: number;
  ping(): void;
  /** The thread takes unusually long, though not too long yet. Called once. */
  slow(): void;
  /** The thread took longer than the limit. Called once, and the watch is over. */
  stuck(): void;
}

export function watchEngine({ limitMs, ping, slow, stuck }: WatchWiring): EngineWatch {
  let timer: NodeJS.Timeout | undefined;
  let lastBusyMs = 0;
  let stopped = false;
  let slowReported = false;
  /** Of the ping that waits for its answer: whether it has waited unusually long, and too long. */
  let waiting: { readonly isSlow: () => boolean; readonly isOver: () => boolean } | undefined;

  const stop = () => {
    stopped = true;
    clearInterval(timer);
  };

  const look = () => {
    if (waiting?.isOver()) {
      stop();
      stuck();
    } else if (waiting) {
      if (slowReported || !waiting.isSlow()) return;
      slowReported = true;
      slow();
    } else if (performance.now() - lastBusyMs > restMs) {
      clearInterval(timer);
      timer = undefined;
    } else {
      waiting = { isSlow: startTimeLimit(limitMs * slowShare), isOver: startTimeLimit(limitMs) };
      ping();
    }
  };

  return {
    busy() {
      lastBusyMs = performance.now();
      if (!stopped) timer ??= setInterval(look, intervalMs);
    },
    answered() {
      waiting = undefined;
    },
    stop,
  };
}

const intervalMs = 50;

/** An engine that had no message for so long, and answers, has finished its work. */
const restMs = 10_000;

const slowShare = 0.3;
