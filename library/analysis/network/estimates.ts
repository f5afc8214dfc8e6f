import type { Estimate } from "../../model/estimate.ts";
import type { BatteryPart, Network, Part } from "../../model/network.ts";
import { isConsumer, isPowerDevice, lowestVoltage } from "../../model/part-roles.ts";
import { descriptorOf } from "../../model/parts/index.ts";
import { workedOutOnce } from "../../model/worked-out-once.ts";
import type { SolvedScenario } from "../network-result.ts";
import { islandsOf } from "./topology/islands.ts";

/** The figures behind a result that the plan does not state. All near a part: connected with it by conductors, or through chargers. */
export interface Estimates {
  /** Behind the voltages in a scenario. */
  ofVoltage(scenario: number, part: number): Estimate | undefined;
  /**
   * Behind the currents in a scenario: the same if anything there draws or gives a current that depends on its voltage. Batteries side by
   * side share a current by their resistances. For one result of each scenario.
   */
  ofCurrent(result: SolvedScenario, part: number): Estimate | undefined;
  /** Behind the currents of these devices in a scenario, all near the first: none if they draw the same at any voltage. */
  ofDevices(result: SolvedScenario, parts: readonly number[]): Estimate | undefined;
  /** Behind the currents with constant powers at their lowest voltage. */
  atLowVoltage(scenario: number, part: number): Estimate | undefined;
}

export const estimatesOf: (network: Network) => Estimates = workedOutOnce((network) => {
  const islands = islandsOf(network);
  const byIsland = new Map<number, Part[]>();
  for (const part of network.parts) {
    const island = islands.find(part.index);
    const there = byIsland.get(island);
    if (there) there.push(part);
    else byIsland.set(island, [part]);
  }
  const onNear = (scenario: number, part: number) => {
    const { on } = network.scenarios[scenario]!;
    return (byIsland.get(islands.find(part)) ?? []).filter(({ index }) => on[index]);
  };
  /** Once for each scenario and island. */
  const once = <Rest extends readonly unknown[]>(
    find: (scenario: number, part: number, ...rest: Rest) => Estimate | undefined,
  ) => {
    const known = new Map<number, Estimate | undefined>();
    return (scenario: number, part: number, ...rest: Rest) => {
      const key = scenario * network.parts.length + islands.find(part);
      if (!known.has(key)) known.set(key, find(scenario, part, ...rest));
      return known.get(key);
    };
  };
  const ofVoltage = once((scenario, part) =>
    estimateOf(
      onNear(scenario, part).filter((one) => one.kind === "battery"),
      network.scenarios[scenario]!,
    ),
  );
  const atLowVoltage = once((scenario, part) => {
    const unstated = onNear(scenario, part).flatMap((one) =>
      isPowerDevice(one) && !lowestVoltage(one).isStated ? [lowestVoltage(one).voltageV] : [],
    );
    return unstated.length === 0 ? undefined : { lowestV: Math.min(...unstated) };
  });
  const ofCurrent = once((scenario, part, partA: SolvedScenario["partA"]) => {
    const estimate = ofVoltage(scenario, part);
    if (!estimate) return undefined;
    const near = onNear(scenario, part);
    if (near.some((one) => dependsOnVoltage(one, partA[one.index]!))) return estimate;
    const areSeveral = near.filter(({ kind }) => kind === "battery").length > 1;
    return areSeveral && estimate.internalResistance ? { internalResistance: true } : undefined;
  });
  return {
    ofVoltage,
    atLowVoltage,
    ofDevices: ({ scenario, partA }, parts) =>
      parts.some((part) => dependsOnVoltage(network.parts[part]!, partA[part]!))
        ? ofVoltage(scenario, parts[0]!)
        : undefined,
    ofCurrent: ({ scenario, partA }, part) => ofCurrent(scenario, part, partA),
  };
});

function estimateOf(
  batteries: readonly BatteryPart[],
  { restV, restFrom }: Network["scenarios"][number],
): Estimate | undefined {
  const guessed = batteries.filter(({ index }) => isGuessed(restFrom[index]));
  const lowestV = Math.min(...guessed.map(({ index }) => restV[index]!));
  const estimate: Estimate = {
    ...(guessed.length > 0 && { restV: lowestV }),
    ...(guessed.some(({ index }) => restFrom[index] === "charge below the list") && { belowList: true }),
    ...(batteries.some(({ internal }) => !internal.stated) && { internalResistance: true }),
  };
  return Object.keys(estimate).length === 0 ? undefined : estimate;
}

function isGuessed(from: Network["scenarios"][number]["restFrom"][number]): boolean {
  return from !== undefined && from !== "plan" && from !== "charge";
}

/** A charger at its limit gives the same current at any voltage. */
function dependsOnVoltage(part: Part, currentA: number): boolean {
  if (part.kind === "load") return part.draws.as === "power" || part.draws.as === "resistance";
  if (part.kind === "alternator") return currentA < part.ratedA * nearlyAll;
  if (part.kind === "shoreCharger") return currentA < part.outputA * nearlyAll;
  return isConsumer(part) || descriptorOf(part).role === "converter";
}

const nearlyAll = 1 - 1e-9;
