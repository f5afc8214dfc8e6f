import type { Network } from "../../../model/network.ts";
import type { NetworkResult, ScenarioResult, WorstOf } from "../../network-result.ts";
import { islandsOf, partAt } from "../topology/islands.ts";
import type { NetworkTopology } from "../topology/network-topology.ts";

type Worst = Pick<NetworkResult, "conductors" | "parts" | "supplyPaths">;

/**
 * Removes worst-case results from the conductors and parts of islands where they are unknown. Such an island has a source
 * with its own poles connected together, and its currents then do not show how the build will run. Or it could not be solved
 * in a scenario that lasts, and the worst case may be in just that scenario. The scenarios keep their solutions, and what flows in
 * those that were solved, or with a single device, remains as the least.
 */
export function excludeUnsolvedIslands(
  network: Network,
  { shorts }: NetworkTopology,
  scenarios: readonly ScenarioResult[],
  worst: Worst,
): Worst {
  const unsolved = scenarios.flatMap((one) =>
    one.state === "unsolved" && !network.scenarios[one.scenario]?.momentary ? [one] : [],
  );
  if (shorts.length === 0 && unsolved.length === 0) return worst;
  const islands = islandsOf(network);
  const isAnywhere = unsolved.some(({ culprits }) => culprits.length === 0);
  const shorted = new Set(shorts.map(({ source }) => islands.find(source)));
  const collapsed = new Set(unsolved.flatMap(({ culprits }) => culprits).map(islands.find));
  const isShorted = (part: number) => shorted.has(islands.find(part));
  const isUnknown = (part: number) => isAnywhere || collapsed.has(islands.find(part)) || isShorted(part);
  const leastAt = (part: number, least: WorstOf | undefined) =>
    isShorted(part) && least?.alone === undefined ? undefined : least;
  return {
    conductors: worst.conductors.map((one, conductor) => {
      const part = partAt(network, network.conductors[conductor]!.from);
      if (!isUnknown(part)) return one;
      const { worst, design } = one.least;
      const least = { worst: leastAt(part, worst), design: leastAt(part, design) };
      return { worst: undefined, design: undefined, forHours: undefined, least };
    }),
    parts: worst.parts.map((one, part) =>
      isUnknown(part) ? { ...nothingWorst, least: leastAt(part, one.least) } : one,
    ),
    supplyPaths: worst.supplyPaths.filter(({ part }) => !isUnknown(part)),
  };
}

const nothingWorst = {
  feeds: undefined,
  draws: undefined,
  forHours: undefined,
  surge: undefined,
  lowestV: undefined,
};
