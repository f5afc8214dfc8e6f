import { type Profiler, Session } from "node:inspector/promises";

// From the start: V8 does not count functions that ran before.
const session = new Session();
session.connect();
await session.post("Profiler.enable");
await session.post("Profiler.startPreciseCoverage", { callCount: true, detailed: true });

/**
 * How many steps of our own code an operation takes: V8 counts the entries of each function, branch and loop. The count is the
 * same on any machine, however busy. Work inside the JavaScript engine, as in `sort`, is not counted.
 */
export async function countedSteps(run: () => Promise<void>): Promise<number> {
  await session.post("Profiler.takePreciseCoverage");
  await run();
  const { result } = await session.post("Profiler.takePreciseCoverage");
  return result.filter(isOurs).reduce((sum, script) => sum + stepsIn(script), 0);
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
