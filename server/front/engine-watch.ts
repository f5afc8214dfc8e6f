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
  /** The thread takes unusually long: another one should load. Called again at the limit, for as long as none is ready. */
  slow(): void;
  /**
   * Another thread can take over. While none can, an end would only throw the work away, and the one that loads takes its time from
   * this one: the limit begins anew once it has loaded, up to {@link mostOver} times.
   */
  isAnotherReady(): boolean;
  /** The thread exceeded the limit. Called once, and ends the watch. */
  stuck(): void;
}

/** Our choice: the wait for one without an end is limited. */
const mostOver = 5;

export function watchEngine({ limitMs, ping, slow, isAnotherReady, stuck }: WatchWiring): EngineWatch {
  let timer: NodeJS.Timeout | undefined;
  let lastBusyMs = 0;
  let stopped = false;
  let slowReported = false;
  let waiting: Waiting | undefined;

  const stop = () => {
    stopped = true;
    clearInterval(timer);
  };

  const look = () => {
    if (waiting?.isFarOver() || (waiting?.isOver() && waiting.another)) {
      stop();
      stuck();
    } else if (waiting?.isOver()) {
      if (isAnotherReady()) waiting = { ...waiting, isOver: startTimeLimit(limitMs), another: true };
      // The one that was to take over may have got other work.
      else slow();
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
        another: isAnotherReady(),
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

/** The outstanding ping. */
interface Waiting {
  /** It has waited unusually long, too long, and too long in any case. */
  readonly isSlow: () => boolean;
  readonly isOver: () => boolean;
  readonly isFarOver: () => boolean;
  /** Another thread could take over when the limit began. */
  readonly another: boolean;
}

const intervalMs = 50;

/** An engine that got no message for this long, and answers, has finished its work. */
const restMs = 10_000;

const slowShare = 0.3;
