import type { Network, Part } from "../../model/network.ts";
import { passesCurrentOn } from "../../model/part-roles.ts";
import type {
  ConductorWorst,
  NetworkResult,
  PartWorst,
  ScenarioResult,
  SolvedScenario,
  WorstOf,
} from "../network-result.ts";
import type { NetworkTopology } from "./topology/network-topology.ts";
import { supplyPathsOf } from "./worst-case-paths.ts";

/** The worst over all scenarios, for each conductor, each part, and each path from a bank to a device. */
export function worstCaseOver(
  network: Network,
  topology: NetworkTopology,
  scenarios: readonly ScenarioResult[],
): Pick<NetworkResult, "conductors" | "parts" | "supplyPaths"> {
  const solved = scenarios.filter((result): result is SolvedScenario => result.state === "solved");
  // The current of a starting motor is over before it heats a conductor.
  const lasting = solved.filter(({ scenario }) => !network.scenarios[scenario]?.momentary);
  const momentary = solved.filter(({ scenario }) => network.scenarios[scenario]?.momentary);
  return {
    conductors: network.conductors.map(
      (_, conductor): ConductorWorst => ({
        worst: greatest(lasting, ({ conductorA }) => Math.abs(conductorA[conductor]!)),
      }),
    ),
    parts: network.parts.map(
      (part): PartWorst => ({
        feeds: greatest(lasting, ({ partA }) => fedOrPassedOn(part, partA[part.index]!)),
        draws: greatest(lasting, ({ partA, inputA }) =>
          Math.max(inputA[part.index]!, drawn(part, partA[part.index]!)),
        ),
        surge: greatest(momentary, ({ partA, inputA }) =>
          Math.max(inputA[part.index]!, Math.abs(partA[part.index]!)),
        ),
        lowestV: lowestVoltage(network, solved, part.index),
      }),
    ),
    supplyPaths: supplyPathsOf(network, topology, lasting),
  };
}

/** The same current in two scenarios differs in its last digits. */
const moreThanRounding = 1 + 1e-9;

/** Of several equally bad scenarios the first; undefined if there is none. */
function greatest(
  scenarios: readonly SolvedScenario[],
  currentIn: (result: SolvedScenario) => number,
): WorstOf | undefined {
  let worst: WorstOf | undefined;
  for (const result of scenarios) {
    const currentA = currentIn(result);
    if (worst === undefined || currentA > worst.currentA * moreThanRounding)
      worst = { currentA, scenario: result.scenario };
  }
  return worst;
}

/** Parts that only pass current on do so in both directions; all others feed if their current is positive. */
function fedOrPassedOn(part: Part, partA: number): number {
  return passesCurrentOn(part) ? Math.abs(partA) : Math.max(0, partA);
}

function drawn(part: Part, partA: number): number {
  return passesCurrentOn(part) ? 0 : Math.max(0, -partA);
}

/** While it is on; starting motors included. */
function lowestVoltage(
  network: Network,
  solved: readonly SolvedScenario[],
  part: number,
): PartWorst["lowestV"] {
  let lowest: PartWorst["lowestV"];
  for (const { partV, scenario } of solved) {
    const voltageV = partV[part]!;
    if (Number.isNaN(voltageV) || !network.scenarios[scenario]?.on[part]) continue;
    if (lowest === undefined || voltageV < lowest.voltageV) lowest = { voltageV, scenario };
  }
  return lowest;
}
