import { startTimeLimit } from "../evaluate/sandbox/time-limit.ts";

/** Monitors whether an engine's thread is free: pings it at short intervals, for as long as it may be working. */
export interface EngineWatch {
  /** The engine got some work. It is not pinged before the first call. */
  busy(): void;
  answered(): void;
  stop(): void;
}

export interface WatchWiring {
  /** Time limit for an answer of the thread, in ms of time that the machine gave to this process. */
  readonly limitMs: number;
  ping(): void;
  /** The thread takes unusually long, but is within the limit. Called once. */
  slow(): void;
  /**
   * Another thread could take over now. Before that, an end would only throw the work away: the thread may go on, up to
   * {@link mostOver} times the limit.
   */
  canBeReplaced(): boolean;
  /** The thread exceeded the limit. Called once, and ends the watch. */
  stuck(): void;
}

const mostOver = 5;

export function watchEngine({ limitMs, ping, slow, canBeReplaced, stuck }: WatchWiring): EngineWatch {
  let timer: NodeJS.Timeout | undefined;
  let lastBusyMs = 0;
  let stopped = false;
  let slowReported = false;
  /** The outstanding ping: whether it has waited unusually long, too long, and too long in any case. */
  let waiting: Readonly<Record<"isSlow" | "isOver" | "isFarOver", () => boolean>> | undefined;

  const stop = () => {
    stopped = true;
    clearInterval(timer);
  };

  const look = () => {
    if (waiting?.isOver() && (canBeReplaced() || waiting.isFarOver())) {
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
      waiting = {
        isSlow: startTimeLimit(limitMs * slowShare),
        isOver: startTimeLimit(limitMs),
        isFarOver: startTimeLimit(limitMs * mostOver),
      };
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

/** An engine that got no message for this long, and answers, has finished its work. */
const restMs = 10_000;

const slowShare = 0.3;
