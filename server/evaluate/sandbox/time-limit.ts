/**
 * Starts a limit on how long something may be at work; what comes back says whether it is over. Where the machine has no time for
 * this process, the clock goes on and the work does not, and a plan must not be stopped because something else was busy: so the
 * process must also have been given that much time, by whichever of its threads it was used. Ten times the limit ends all waiting.
 */
export function startTimeLimit(limitMs: number): () => boolean {
  const startedMs = performance.now();
  const startedCpu = process.cpuUsage();
  return () => {
    const passedMs = performance.now() - startedMs;
    if (passedMs < limitMs) return false;
    const { user, system } = process.cpuUsage(startedCpu);
    return (user + system) / 1_000 >= limitMs || passedMs >= 10 * limitMs;
  };
}
