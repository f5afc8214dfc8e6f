import { type Profiler, Session } from "node:inspector/promises";

/**
 * How many steps of our own code something takes: V8 counts how often each function is entered and each branch and loop is gone
 * through. The same on any machine, however busy it is. What the engine does inside of itself, as in `sort`, is not counted.
 */
export async function countedSteps(run: () => Promise<void>): Promise<number> {
  const session = new Session();
  session.connect();
  try {
    await session.post("Profiler.enable");
    await session.post("Profiler.startPreciseCoverage", { callCount: true, detailed: true });
    await session.post("Profiler.takePreciseCoverage");
    await run();
    const { result } = await session.post("Profiler.takePreciseCoverage");
    await session.post("Profiler.stopPreciseCoverage");
    return result.filter(isOurs).reduce((sum, script) => sum + stepsIn(script), 0);
  } finally {
    session.disconnect();
  }
}

function isOurs({ url }: Profiler.ScriptCoverage): boolean {
  return /\/(library|server)\/(?!.*node_modules)/.test(url);
}

function stepsIn({ functions }: Profiler.ScriptCoverage): number {
  return functions.reduce(
    (sum, { ranges }) => sum + ranges.reduce((within, { count }) => within + count, 0),
    0,
  );
}
