import type { Network, Scenario } from "../model/network.ts";
import { loadsForMinutes } from "./load-for-hours.ts";
import type { scenarioSolver } from "./network/solver/solve-scenarios.ts";
import type { ScenarioResult, SolvedScenario } from "./network-result.ts";

/**
 * The scenarios that last without the loads that do not run for hours, by index. Scenarios in which no such load is on are left out,
 * because all of their current is continuous; and those without a solution.
 */
export function continuousAlone(
  network: Network,
  results: readonly ScenarioResult[],
  solve: ReturnType<typeof scenarioSolver>,
): ReadonlyMap<number, SolvedScenario> {
  const left = loadsForMinutes(network);
  const solved = new Map<number, SolvedScenario>();
  // Scenarios that differ only in those loads, or in chargers that the plan does not have, are alike without them.
  const known = new Map<string, ScenarioResult>();
  for (const { state, scenario: index } of left.size > 0 ? results : []) {
    const scenario = network.scenarios[index];
    if (state !== "solved" || !scenario || scenario.momentary) continue;
    if (![...left].some((part) => scenario.on[part])) continue;
    const without: Scenario = { ...scenario, on: scenario.on.map((is, part) => is && !left.has(part)) };
    const { on, restV, sunShare, selected } = without;
    const key = JSON.stringify([on, restV, sunShare, [...(selected ?? [])]]);
    const result = known.get(key) ?? solve(without, index);
    known.set(key, result);
    if (result.state === "solved") solved.set(index, { ...result, scenario: index });
  }
  return solved;
}
