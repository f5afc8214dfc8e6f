import type { Network } from "../../model/network.ts";
import type {
  ConductorWorst,
  NetworkResult,
  PartWorst,
  ScenarioResult,
  SolvedScenario,
  WorstOf,
} from "../network-result.ts";
import type { NetworkTopology } from "./topology.ts";
import { waysFromBanks } from "./worst-ways.ts";

/** The worst over all scenarios, for each conductor, each part, and each way from a bank to a device. */
export function worstOver(
  network: Network,
  topology: NetworkTopology,
  scenarios: readonly ScenarioResult[],
): Pick<NetworkResult, "conductors" | "parts" | "ways"> {
  const solved = scenarios.filter((result): result is SolvedScenario => result.state === "solved");
  // What a starting motor draws is over before it heats anything.
  const lasting = solved.filter(({ scenario }) => !network.scenarios[scenario]?.momentary);
  const momentary = solved.filter(({ scenario }) => network.scenarios[scenario]?.momentary);
  return {
    conductors: network.conductors.map(
      (_, conductor): ConductorWorst => ({
        worst: greatest(lasting, ({ conductorA }) => Math.abs(conductorA[conductor]!)),
      }),
    ),
    parts: network.parts.map(
      ({ index, kind }): PartWorst => ({
        feeds: greatest(lasting, ({ partA }) => fedOrPassedOn(kind, partA[index]!)),
        draws: greatest(lasting, ({ partA, inputA }) => Math.max(inputA[index]!, drawn(kind, partA[index]!))),
        surge: greatest(momentary, ({ partA, inputA }) => Math.max(inputA[index]!, Math.abs(partA[index]!))),
        lowestV: lowestVoltage(network, solved, index),
      }),
    ),
    ways: waysFromBanks(network, topology, lasting),
  };
}

/** The same current in two scenarios differs in its last digits. */
const moreThanRounding = 1 + 1e-9;

/** Of several scenarios that are as bad the first; undefined where none is left. */
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

const passesCurrentOn: ReadonlySet<string> = new Set([
  "busBar",
  "fusePanel",
  "disconnect",
  "shunt",
  "chassis",
  "part",
]);

/** What only passes current on does so in both directions; everything else feeds where its current is positive. */
function fedOrPassedOn(kind: string, partA: number): number {
  return passesCurrentOn.has(kind) ? Math.abs(partA) : Math.max(0, partA);
}

function drawn(kind: string, partA: number): number {
  return passesCurrentOn.has(kind) ? 0 : Math.max(0, -partA);
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
