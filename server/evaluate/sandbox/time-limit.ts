/** The time that has passed, and the CPU time that this process has had in all its threads, ms; each from any moment on. */
export interface Clocks {
  wallMs(): number;
  cpuMs(): number;
}

const ofThisProcess: Clocks = {
  wallMs: () => performance.now(),
  cpuMs() {
    const { user, system } = process.cpuUsage();
    return (user + system) / 1_000;
  },
};

/**
 * Starts a time limit for some work; the returned function reports whether it is over. If the machine has no time for this
 * process, the clock advances and the work does not, and a plan must not be stopped because other programs were busy. So the
 * process must also have been given that much CPU time, in any of its threads. Ten times the limit ends all waiting.
 */
export function startTimeLimit(limitMs: number, { wallMs, cpuMs }: Clocks = ofThisProcess): () => boolean {
  const started = { wallMs: wallMs(), cpuMs: cpuMs() };
  return () => {
    const passedMs = wallMs() - started.wallMs;
    if (passedMs < limitMs) return false;
    return cpuMs() - started.cpuMs >= limitMs || passedMs >= 10 * limitMs;
  };
}
