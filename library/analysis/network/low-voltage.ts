import type { Network, Scenario } from "../../model/network.ts";
import { isPowerDevice, type PowerDevice } from "../../model/part-roles.ts";
import type { ScenarioResult, SolvedScenario } from "../network-result.ts";
import type { scenarioSolver } from "./solver/solve-scenarios.ts";

/**
 * The network when the batteries are nearly empty, for ampacity and ratings: every device of constant power draws the current of the
 * lowest voltage at which it works, I = P / U. Only scenarios that last and have a solution; those in which no such device is on
 * are left out, because their currents are the same.
 */
export interface LowVoltage {
  /** Only the loads draw that current; inverters and chargers draw as in the scenario. */
  readonly loads: readonly SolvedScenario[];
  readonly allDevices: readonly SolvedScenario[];
}

export function atLowVoltage(
  network: Network,
  results: readonly ScenarioResult[],
  solve: ReturnType<typeof scenarioSolver>,
): LowVoltage {
  const devices = network.parts.filter(isPowerDevice);
  const loads: SolvedScenario[] = [];
  const allDevices: SolvedScenario[] = [];
  for (const { state, scenario: index } of devices.length > 0 ? results : []) {
    const scenario = network.scenarios[index];
    if (state !== "solved" || !scenario || scenario.momentary) continue;
    const solved = (lowVoltage: NonNullable<Scenario["lowVoltage"]>) => {
      const result = solve({ ...scenario, lowVoltage }, index);
      return result.state === "solved" ? [result] : [];
    };
    const on = devices.filter((device) => scenario.on[device.index]);
    const withLoads = on.some(isLoad) ? solved("loads") : [];
    loads.push(...withLoads);
    allDevices.push(...(on.every(isLoad) ? withLoads : solved("all devices")));
  }
  return { loads, allDevices };
}

function isLoad({ kind }: PowerDevice): boolean {
  return kind === "load";
}
