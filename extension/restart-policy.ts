/** Decides whether a server that ended may be started again. */
export interface RestartPolicy {
  /** Call it once for each time the server ended. */
  mayRestart(): boolean;
}

/**
 * At most three restarts within three minutes: one failure is not worth a message, but a server that ends again and again would
 * only use the processor and leave the person without findings and without a reason.
 *
 * @param nowMs the clock
 */
export function createRestartPolicy(nowMs: () => number): RestartPolicy {
  let ends: number[] = [];
  return {
    mayRestart() {
      const now = nowMs();
      ends = [...ends.filter((end) => now - end < withinMs), now];
      return ends.length <= restarts;
    },
  };
}

const restarts = 3;
const withinMs = 3 * 60 * 1_000;
