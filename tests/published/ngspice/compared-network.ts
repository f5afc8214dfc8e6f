import { conductorLaws } from "../../../library/analysis/network/solver/conductor-current.ts";
import type { Netlist } from "../../../library/analysis/network/solver/netlist.ts";
import { leastRunningV } from "../../../library/analysis/network/solver/solve-devices.ts";
import { netlistOf } from "../../../library/analysis/network/solver/solve-netlist.ts";
import {
  lawsDuring,
  patternOf,
  settle,
  solveScenarios,
} from "../../../library/analysis/network/solver/solve-scenarios.ts";
import type { SolvedScenario } from "../../../library/analysis/network-result.ts";
import type { Network } from "../../../library/model/network.ts";
import { runNgspice } from "./run-ngspice.ts";
import { kirchhoff, nodeName, type SpiceBranch, spiceBranches, spiceInput } from "./spice-netlist.ts";

/** A network as the solver answers it, and as ngspice is asked. */
export interface ComparedNetwork {
  readonly netlist: Netlist;
  readonly branches: readonly SpiceBranch[];
  readonly solved: SolvedScenario;
  /** One terminal of each node that a source reaches, in the order of terminals. */
  readonly terminals: readonly number[];
  /** By index of {@link terminals}: our voltages, V. */
  readonly ourV: readonly number[];
}

/** Undefined if the solver finds no operating point. */
export function comparedNetwork(network: Network): ComparedNetwork | undefined {
  const [solved] = solveScenarios(network);
  const [scenario] = network.scenarios;
  const pattern = scenario && patternOf(network, scenario);
  if (!pattern || solved?.state !== "solved") return undefined;
  const laws = lawsDuring({ network, scenario, index: 0, laws: conductorLaws(network.conductors), pattern });
  const everything = netlistOf(network, scenario, pattern.nodes, laws);
  const { netlist } = settle(everything, pattern.system);
  const known = new Set<number>();
  const terminals: number[] = [];
  netlist.nodeOf.forEach((node, terminal) => {
    if (known.has(node) || !netlist.live[node]) return;
    known.add(node);
    terminals.push(terminal);
  });
  return {
    netlist,
    branches: spiceBranches(netlist, solved.conductorA),
    solved,
    terminals,
    ourV: terminals.map((terminal) => solved.terminalV[terminal]!),
  };
}

export interface NgspiceAnswer {
  /** In the order of {@link ComparedNetwork.terminals}, against the same zero in each island, V. */
  readonly voltages: readonly number[];
  /** The number of decimals of a volt in the hint for the search. */
  readonly hintDigits: number;
}

/**
 * ngspice's answer for the coarsest hint that gives one, from `firstHint` on. An answer counts only if its own currents sum to zero
 * at each node, if no device of constant power is below 1 V, and if the next finer hint leads to the same: otherwise it has found
 * the lower of two voltages at which such a device can run.
 */
export function askNgspice(compared: ComparedNetwork, firstHint = 0): NgspiceAnswer | undefined {
  let coarser: NgspiceAnswer | undefined;
  for (let hintDigits = firstHint; hintDigits <= finestHint; hintDigits++) {
    const answer = answerNear(compared, hintDigits);
    if (answer && coarser && areAlike(answer.voltages, coarser.voltages)) return coarser;
    coarser = answer;
  }
  return undefined;
}

const finestHint = 5;

function areAlike(one: readonly number[], other: readonly number[]): boolean {
  return one.every((voltageV, index) => Math.abs(voltageV - other[index]!) <= 1e-4);
}

/** Undefined if ngspice finds no voltages near the hint, our own voltages rounded to so many decimals. */
function answerNear(
  { netlist, branches, terminals, ourV, ...compared }: ComparedNetwork,
  hintDigits: number,
): NgspiceAnswer | undefined {
  const nearV = new Float64Array(netlist.nodes);
  const zeroOf = new Map<number, number>();
  terminals.forEach((terminal, index) => {
    const node = netlist.nodeOf[terminal]!;
    nearV[node] = ourV[index]!;
    if (ourV[index] === 0) zeroOf.set(netlist.islandOf[node]!, node);
  });
  const referenceV = new Map(netlist.references.map((node) => [netlist.islandOf[node]!, nearV[node]!]));
  const { voltages } = runNgspice((printTo) =>
    spiceInput(netlist, branches, {
      nearV: (node) => Number((nearV[node]! - referenceV.get(netlist.islandOf[node]!)!).toFixed(hintDigits)),
      printTo,
    }),
  );
  const theirs = new Float64Array(netlist.nodes);
  for (const terminal of terminals) {
    const node = netlist.nodeOf[terminal]!;
    const name = nodeName(netlist, node);
    const voltageV = name === "0" ? 0 : voltages.get(name);
    if (voltageV === undefined || !Number.isFinite(voltageV)) return undefined;
    theirs[node] = voltageV;
  }
  if (!isAtRest({ ...compared, netlist, branches }, theirs)) return undefined;
  return {
    hintDigits,
    voltages: terminals.map((terminal) => {
      const node = netlist.nodeOf[terminal]!;
      return theirs[node]! - theirs[zeroOf.get(netlist.islandOf[node]!)!]!;
    }),
  };
}

/** Relative to the largest current in our own answer: a wild answer cannot excuse itself by its wild currents. */
const mostResidual = 1e-6;

function isAtRest(
  { netlist, branches, solved }: Pick<ComparedNetwork, "netlist" | "branches" | "solved">,
  voltages: Float64Array,
): boolean {
  const { residualA } = kirchhoff(netlist, branches, voltages);
  const powers = [
    ...netlist.powers,
    ...netlist.converters.flatMap(({ input, passes }) => (passes ? [] : [input])),
  ];
  return (
    residualA <= mostResidual * solved.largestA + 1e-9 &&
    powers.every(({ a, b }) => Math.abs(voltages[a]! - voltages[b]!) >= leastRunningV)
  );
}
