import type { Network, NetworkConductor, Scenario } from "../../../model/network.ts";
import { positionsKey, switchesOf } from "../../../model/switch-positions.ts";
import { workedOutOnce } from "../../../model/worked-out-once.ts";
import type { ScenarioResult } from "../../network-result.ts";
import type { NetworkTopology } from "../topology/network-topology.ts";
import { type ConductorLaw, conductorLaws } from "./conductor-current.ts";
import { withFloatingVoltages } from "./floating-voltages.ts";
import { type LoadabilityLimit, loadabilityLimit } from "./loadability-limit.ts";
import type { Netlist } from "./netlist.ts";
import { measureOf } from "./nodal-equations.ts";
import { type OperatingPoint, operatingPointSolver } from "./operating-point.ts";
import { withoutIdle } from "./solve-islands.ts";
import { type Nodes, netlistOf, nodesOf, possiblePairs } from "./solve-netlist.ts";
import { type SolvedBatteries, solvedBatteries, solvedScenario } from "./solved-scenario.ts";
import { type SparseSystem, sparseSystem } from "./sparse-lu.ts";
import { eliminationOrder } from "./sparse-order.ts";

/** Solves the network in each of its scenarios. Each has a result: its currents and voltages, or why there are none. */
export function solveScenarios(network: Network): readonly ScenarioResult[] {
  const solve = scenarioSolver(network);
  return network.scenarios.map(solve);
}

/**
 * Solves a network in any of its states. The pattern of the equations depends only on the topology and the positions of switches:
 * scenarios share it, and so do networks of the same topology. `index`: that of the scenario in the result.
 */
export function scenarioSolver(
  network: Network,
  patterns: Patterns = new Map(),
): (scenario: Scenario, index: number) => ScenarioResult {
  const solve = partialSolver(network, patterns);
  return (scenario, index) => solve(scenario, network.conductors, index);
}

/**
 * {@link scenarioSolver} with some of the conductors, if the caller knows that others carry no current: the result has the currents of
 * these in their order, and no voltages behind others.
 */
export function partialSolver(
  network: Network,
  patterns: Patterns,
): (scenario: Scenario, conductors: readonly NetworkConductor[], index?: number) => ScenarioResult {
  const patternFor = patternsFor(network, patterns);
  return (scenario, conductors, index = 0) =>
    solveScenario({
      ...{ network: withConductors(network, conductors), scenario, index },
      ...{ laws: conductorLaws(conductors), pattern: patternFor(scenario) },
    });
}

/** {@link partialSolver} for the batteries alone: by part, the current that each gives, A, and its voltage, V. Undefined if unsolved. */
export function batterySolver(
  network: Network,
  patterns: Patterns,
): (scenario: Scenario, conductors: readonly NetworkConductor[]) => SolvedBatteries | undefined {
  const patternFor = patternsFor(network, patterns);
  return (scenario, conductors) => {
    const pattern = patternFor(scenario);
    if (!pattern) return undefined;
    const own = withConductors(network, conductors);
    const everything = netlistOf(own, scenario, pattern.nodes, conductorLaws(conductors));
    const { netlist, limit } = settle(everything, pattern.system);
    if (limit.state === "none" || !isBalanced(limit.point)) return undefined;
    return solvedBatteries(network, netlist, limit.point);
  };
}

/** Of the whole network, whichever of its conductors a solution uses. */
function patternsFor(network: Network, patterns: Patterns): (scenario: Scenario) => Pattern | undefined {
  const switches = switchesOf(network);
  return (scenario) => {
    const key = positionsKey(switches, scenario);
    const pattern = patterns.has(key) ? patterns.get(key) : patternOf(network, scenario);
    patterns.set(key, pattern);
    return pattern;
  };
}

function withConductors(network: Network, conductors: readonly NetworkConductor[]): Network {
  return conductors === network.conductors ? network : { ...network, conductors };
}

/** By the positions of all switches ({@link positionsKey}), filled on demand. */
type Patterns = Map<string, Pattern | undefined>;

/** Those of a topology. */
export const patternsIn = workedOutOnce((_: NetworkTopology): Patterns => new Map());

/** Maximum residual at a node, as a share of {@link measureOf} the largest current; above it the scenario is unsolved. */
const mostResidual = 1e-9;

/** Whether an operating point fulfils Kirchhoff's current law. */
export function isBalanced({ residualA, largestA }: OperatingPoint): boolean {
  return residualA <= mostResidual * measureOf(largestA);
}

function solveScenario(of: {
  network: Network;
  scenario: Scenario;
  index: number;
  laws: readonly ConductorLaw[];
  pattern: Pattern | undefined;
}): ScenarioResult {
  const { network, scenario, index, laws, pattern } = of;
  const unsolved = { state: "unsolved", scenario: index, why: "not-converged", culprits: [] } as const;
  if (!pattern) return { ...unsolved, reachedShare: 0 };
  const { netlist, limit } = settle(netlistOf(network, scenario, pattern.nodes, laws), pattern.system);
  if (limit.state === "none") {
    const { why, reachedShare, culprits } = limit;
    return { ...unsolved, why, reachedShare, culprits };
  }
  const { point } = limit;
  if (!isBalanced(point)) return { ...unsolved, reachedShare: 1 };
  const standing = { ...point, voltages: withFloatingVoltages(netlist, point.voltages) };
  return solvedScenario({ network, scenario, index, netlist, point: standing });
}

/**
 * The operating point of a netlist, and the netlist of the devices that run there. Removes devices and converters without a
 * voltage to run at. That can leave others without a source, so the search is repeated without them.
 */
export function settle(
  everything: Netlist,
  system: SparseSystem,
): { netlist: Netlist; limit: LoadabilityLimit } {
  let netlist = everything;
  for (;;) {
    const solver = operatingPointSolver(netlist, system);
    const point = solver.solve(1);
    const limit =
      point.state === "found" ? ({ state: "found", point } as const) : loadabilityLimit(netlist, solver);
    const idle = solver.notRunning();
    if (idle.size === 0) return { netlist, limit };
    netlist = withoutIdle({
      ...netlist,
      powers: netlist.powers.filter((power) => !idle.has(power)),
      converters: netlist.converters.filter((converter) => !idle.has(converter)),
    });
  }
}

export interface Pattern {
  /** Numbered in the order of elimination. */
  readonly nodes: Nodes;
  readonly system: SparseSystem;
}

/** Undefined for a network too meshed to be eliminated in an acceptable time. */
export function patternOf(network: Network, scenario: Scenario): Pattern | undefined {
  const nodes = nodesOf(network, scenario);
  const pairs = possiblePairs(network, nodes);
  const order = eliminationOrder(nodes.count, pairs);
  if (!order) return undefined;
  return {
    nodes: { count: nodes.count, of: nodes.of.map((node) => order.place[node]!) },
    system: sparseSystem(order),
  };
}
