/**
 * Starts a time limit for some work; the returned function reports whether it is over. If the machine has no time for this
 * process, the clock advances and the work does not, and a plan must not be stopped because other programs were busy. So the
 * process must also have been given that much CPU time, in any of its threads. Ten times the limit ends all waiting.
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
