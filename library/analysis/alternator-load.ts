import type { AlternatorPart, BatteryPart, Network, Part } from "../model/network.ts";
import { isConsumer } from "../model/part-roles.ts";
import { descriptorOf } from "../model/parts/index.ts";
import { loadsForMinutes } from "./load-for-hours.ts";
import { type Edge, networkGraph, reachedFrom } from "./network/topology/network-graph.ts";
import { portsOf } from "./network/topology/ports.ts";
import type { NetworkResult, SolvedScenario } from "./network-result.ts";

/** The load on one or more alternators that feed the same conductors, for as long as a scenario lasts. */
export interface AlternatorLoad {
  readonly alternators: readonly AlternatorPart[];
  /** Their continuous output together, A. */
  readonly allowedA: number;
  /** The demand in the scenario with the greatest load on them. */
  readonly everything: Demand | undefined;
  /**
   * The same without devices that only the built-in scenarios switch on: the plan does not state that all run at once
   * for hours.
   */
  readonly certain: Demand | undefined;
}

export interface Demand {
  readonly currentA: number;
  readonly scenario: number;
  /** Part indices, greatest first. */
  readonly devices: readonly { readonly part: number; readonly currentA: number }[];
}

/**
 * Sum of the currents of devices that run for hours on the alternator's side of any charger: continuous loads, inverters,
 * inputs of chargers, and LiFePO4 batteries, which take all the current they are given until they are full: together the rating
 * of the alternators, or less if their stated charge limits are lower. The solver's current is no measure of that: a lead-acid
 * battery beside them would take most of it in a network that is solved at rest voltages, but only for minutes. Lead-acid
 * batteries soon take less and less, so they are left out (common practice, no source); so are motors that are just starting.
 *
 * Other sources do not reduce the sum: at sea or on the road there is no shore and perhaps no sun.
 */
export function alternatorLoads({
  network,
  result,
}: {
  readonly network: Network;
  readonly result: NetworkResult;
}): readonly AlternatorLoad[] {
  const alternators = network.parts.filter((part) => part.kind === "alternator");
  const taken = new Set<AlternatorPart>();
  return alternators.flatMap((alternator): AlternatorLoad[] => {
    if (taken.has(alternator)) return [];
    const side = reachedFrom(networkGraph(network), [alternator.terminals.positive]);
    const together = alternators.filter(({ terminals }) => side.has(terminals.positive));
    for (const one of together) taken.add(one);
    const demands = result.scenarios.flatMap((solved): Demand[] => {
      const scenario = network.scenarios[solved.scenario];
      const runs = together.some(({ index }) => scenario?.on[index]);
      if (solved.state !== "solved" || !scenario || scenario.momentary || !runs) return [];
      return [demandIn(network, solved, together)];
    });
    const certain = demands.map((demand) =>
      network.scenarios[demand.scenario]?.record === undefined ? chargingOf(network, demand) : demand,
    );
    return [
      {
        alternators: together,
        allowedA: together.reduce((sum, { ratedA, continuousPercent }) => {
          return sum + (ratedA * continuousPercent) / 100;
        }, 0),
        everything: greatest(demands),
        certain: greatest(certain),
      },
    ];
  });
}

function demandIn(network: Network, solved: SolvedScenario, alternators: readonly AlternatorPart[]): Demand {
  const on = network.scenarios[solved.scenario]?.on ?? [];
  const forMinutes = loadsForMinutes(network);
  const closed = ({ part }: Edge) => part === -1 || on[part] === true;
  const positives = alternators.flatMap(({ index, terminals }) => (on[index] ? [terminals.positive] : []));
  const side = reachedFrom(networkGraph(network), positives, closed);
  const there = network.parts.filter((part) => {
    const terminal = forMinutes.has(part.index) ? undefined : inputOf(part);
    return terminal !== undefined && side.has(terminal) && on[part.index];
  });
  const batteries = there.filter((part) => part.kind === "battery");
  const devices = there.flatMap((part) => {
    if (part.kind === "battery") return [];
    const currentA =
      part.kind === "dcDcCharger" ? solved.inputA[part.index] : -(solved.partA[part.index] ?? 0);
    return currentA !== undefined && currentA > 0 ? [{ part: part.index, currentA }] : [];
  });
  const ratedA = alternators.reduce((sum, { index, ratedA }) => sum + (on[index] ? ratedA : 0), 0);
  return demandOf(solved.scenario, [...devices, ...chargeShares(batteries, ratedA)]);
}

/** Divides the alternators' rating among lithium batteries: each takes an equal share, but not more than its stated limit. */
function chargeShares(batteries: readonly BatteryPart[], ratedA: number): Demand["devices"] {
  const limitOf = ({ maxChargeA = Number.POSITIVE_INFINITY }: BatteryPart) => maxChargeA;
  const byLimit = [...batteries].sort(
    (one, other) => limitOf(one) - limitOf(other) || one.index - other.index,
  );
  let leftA = ratedA;
  return byLimit.map((battery, place) => {
    const currentA = Math.min(limitOf(battery), leftA / (byLimit.length - place));
    leftA -= currentA;
    return { part: battery.index, currentA };
  });
}

/** The positive terminal of a part that can draw for hours; undefined for all others. */
function inputOf(part: Part): number | undefined {
  if (part.kind === "battery") return part.chemistry === "LiFePO4" ? part.terminals.positive : undefined;
  // A solar controller draws from its panels.
  if (descriptorOf(part).chargesWith === "sun") return undefined;
  return portsOf(part).find(({ does }) => does === "draws")?.positive;
}

/** The demand of charging alone: it is on whenever the engine is. */
function chargingOf(network: Network, { scenario, devices }: Demand): Demand {
  const charging = devices.filter(({ part }) => {
    const drawing = network.parts[part];
    return drawing !== undefined && !isConsumer(drawing);
  });
  return demandOf(scenario, charging);
}

function demandOf(scenario: number, devices: Demand["devices"]): Demand {
  return {
    scenario,
    currentA: devices.reduce((sum, { currentA }) => sum + currentA, 0),
    devices: [...devices].sort((one, other) => other.currentA - one.currentA || one.part - other.part),
  };
}

function greatest(demands: readonly Demand[]): Demand | undefined {
  let most: Demand | undefined;
  for (const demand of demands) if (!most || demand.currentA > most.currentA) most = demand;
  return most;
}
