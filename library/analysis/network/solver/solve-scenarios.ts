import { isMotor } from "../../../model/motor-starts.ts";
import type { Network, NetworkConductor, Part, Scenario } from "../../../model/network.ts";
import { positionsKey, switchesOf } from "../../../model/switch-positions.ts";
import { workedOutOnce } from "../../../model/worked-out-once.ts";
import type { ScenarioResult } from "../../network-result.ts";
import { startTimeS } from "../../start-time.ts";
import type { NetworkTopology } from "../topology/network-topology.ts";
import { type ConductorLaw, conductorLaws, lawDuringStart } from "./conductor-current.ts";
import { withFloatingVoltages } from "./floating-voltages.ts";
import { type LoadabilityLimit, loadabilityLimit } from "./loadability-limit.ts";
import type { Netlist } from "./netlist.ts";
import { measureOf } from "./nodal-equations.ts";
import { type OperatingPoint, operatingPointSolver } from "./operating-point.ts";
import { withoutIdle } from "./solve-islands.ts";
import { type Nodes, netlistOf, nodesOf, possiblePairs } from "./solve-netlist.ts";
import { type SolvedDevices, solvedDevices, solvedScenario } from "./solved-scenario.ts";
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
  const laws = conductorLaws(network.conductors);
  const patternFor = patternsFor(network, patterns);
  return (scenario, index) => {
    const of = { network, scenario, index, pattern: patternFor(scenario) };
    return solveScenario({ laws: lawsDuring({ laws, ...of }), ...of });
  };
}

/**
 * The laws of the conductors in a scenario. A start heats them little: they are as warm as before it, when each motor that starts ran
 * for long. A state before it without a solution leaves the laws of steady currents, which are the stricter ones.
 */
export function lawsDuring(of: StateToSolve): readonly ConductorLaw[] {
  const { network, scenario, laws } = of;
  const starting = network.parts.filter(isMotor).filter(({ index }) => scenario.starting[index]);
  if (starting.length === 0) return laws;
  const before = solveScenario({
    ...of,
    scenario: { ...scenario, starting: network.parts.map(() => false) },
  });
  if (before.state === "unsolved") return laws;
  const startS = Math.max(...starting.map(startTimeS));
  return laws.map((law, conductor) =>
    lawDuringStart(law, network.conductors[conductor]!, { beforeA: before.conductorA[conductor]!, startS }),
  );
}

/** Parts and conductors of a network, and their terminals as nodes that are numbered without the others. */
export interface Portion {
  readonly parts: readonly Part[];
  readonly conductors: readonly NetworkConductor[];
  readonly nodes: Nodes;
}

/**
 * Solves a portion of a network, if the caller knows that the rest carries no current: by part, its current and voltage. Undefined if
 * unsolved. Portions of one shape share the pattern of their equations.
 */
export function portionSolver(
  network: Network,
  patterns: PortionPatterns,
): (scenario: Scenario, portion: Portion) => SolvedDevices | undefined {
  return (scenario, { parts, conductors, nodes }) => {
    const own = { ...network, parts, conductors };
    const pairs = possiblePairs(own, nodes);
    const key = `${nodes.count} ${pairs.join()}`;
    const pattern = patterns.has(key) ? patterns.get(key) : patternOfPairs(nodes.count, pairs);
    patterns.set(key, pattern);
    if (!pattern) return undefined;
    const numbered = renumbered(nodes, pattern.place);
    const everything = netlistOf(own, scenario, numbered, conductorLaws(conductors));
    const { netlist, limit } = settle(everything, pattern.system);
    if (limit.state === "none" || !isBalanced(limit.point)) return undefined;
    return solvedDevices({ ...own, parts: network.parts }, netlist, limit.point);
  };
}

/** By the shape of a portion, filled on demand. */
export type PortionPatterns = Map<string, ReturnType<typeof patternOfPairs>>;

function patternsFor(network: Network, patterns: Patterns): (scenario: Scenario) => Pattern | undefined {
  const switches = switchesOf(network);
  return (scenario) => {
    const key = positionsKey(switches, scenario);
    const pattern = patterns.has(key) ? patterns.get(key) : patternOf(network, scenario);
    patterns.set(key, pattern);
    return pattern;
  };
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

interface StateToSolve {
  readonly network: Network;
  readonly scenario: Scenario;
  /** That of the scenario in the result. */
  readonly index: number;
  readonly laws: readonly ConductorLaw[];
  readonly pattern: Pattern | undefined;
}

function solveScenario(of: StateToSolve): ScenarioResult {
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
  const found = patternOfPairs(nodes.count, possiblePairs(network, nodes));
  return found && { nodes: renumbered(nodes, found.place), system: found.system };
}

function patternOfPairs(nodes: number, pairs: Int32Array) {
  const order = eliminationOrder(nodes, pairs);
  return order && { place: order.place, system: sparseSystem(order) };
}

function renumbered({ count, of }: Nodes, place: Int32Array): Nodes {
  return { count, of: of.map((node) => place[node]!) };
}
