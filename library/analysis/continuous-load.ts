import type { Network, Scenario } from "../model/network.ts";
import { ratingOverContinuousLoad } from "../standards/protection-rules.ts";
import type { scenarioSolver } from "./network/solver/solve-scenarios.ts";
import type { ScenarioResult, SolvedScenario } from "./network-result.ts";

/** A current that may flow for hours, and the part of it that is drawn by devices which run for hours. */
export interface LoadForHours {
  readonly currentA: number;
  /** Of {@link currentA}, A. */
  readonly continuousA: number;
}

/**
 * The least rating over a load, A.
 *
 *     I_rating ≥ 1.25 · I_continuous + 1.00 · (I − I_continuous)
 *
 * NFPA 70, 215.3: 125 % of the continuous load plus 100 % of the load that is not continuous.
 */
export function ratingOver({ currentA, continuousA }: LoadForHours): number {
  return ratingOverContinuousLoad.factor * continuousA + (currentA - continuousA);
}

/** The part indices of the loads that do not run for hours, as they or the circuits that end at them state. */
export function loadsForMinutes({ parts, conductors, terminals }: Network): ReadonlySet<number> {
  const loads = parts.flatMap((part) => (part.kind === "load" && !part.continuous ? [part.index] : []));
  const fed = conductors.flatMap(({ role, run, to }) => {
    const part = parts[terminals[to]!.part]!;
    return role === "positive" && !run.continuous && part.kind === "load" ? [part.index] : [];
  });
  return new Set([...loads, ...fed]);
}

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
  for (const { state, scenario: index } of left.size > 0 ? results : []) {
    const scenario = network.scenarios[index];
    if (state !== "solved" || !scenario || scenario.momentary) continue;
    if (![...left].some((part) => scenario.on[part])) continue;
    const without: Scenario = { ...scenario, on: scenario.on.map((is, part) => is && !left.has(part)) };
    const result = solve(without, index);
    if (result.state === "solved") solved.set(index, result);
  }
  return solved;
}
