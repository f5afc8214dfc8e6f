import { sampleNetwork } from "../../library/analysis/network/sample-network.tester.ts";
import { conductorLaws } from "../../library/analysis/network/solver/conductor-current.ts";
import { operatingPointSolver } from "../../library/analysis/network/solver/operating-point.ts";
import { netlistOf } from "../../library/analysis/network/solver/solve-netlist.ts";
import { patternOf, settle, solveScenarios } from "../../library/analysis/network/solver/solve-scenarios.ts";
import type { Draw, Network, Part } from "../../library/model/network.ts";
import { nodeName, type SpiceBranch, spiceBranches } from "../published/ngspice/spice-netlist.ts";

export { solveScenarios };

/**
 * A large build: a bank, an alternator, a charger to a second bank, and panels of a dozen loads each, of constant current,
 * constant power and constant resistance in turn; about 150 A in all, at any size. The same in three scenarios.
 */
export function benchNetwork(branches: number): Network {
  const build = sampleNetwork();
  const bank = build.battery();
  const [plus, minus] = [build.busBar(), build.busBar()];
  const shunt = build.shunt();
  build.cable(bank.positive, plus, thick(1));
  build.cable(bank.negative, shunt.batterySide, thick(0.5));
  build.cable(shunt.systemSide, minus, thick(0.5));
  const alternator = build.alternator({ ratedA: 90 });
  build.cable(alternator.positive, plus, thick(3));
  build.cable(alternator.negative, minus, thick(3));
  const starter = build.battery({ nominalV: 12.5 });
  const charger = build.dcDcCharger({ outputA: 10 });
  build.cable(plus, charger.inputPositive, thick(2));
  build.cable(minus, charger.inputNegative, thick(2));
  build.cable(charger.outputPositive, starter.positive, thick(2));
  build.cable(charger.outputNegative, starter.negative, thick(2));
  const loads = Math.max(1, Math.round((branches - 16) / 3.17));
  const currentA = 150 / loads;
  const draws: readonly Draw[] = [
    { as: "current", currentA },
    { as: "power", powerW: 12 * currentA },
    { as: "resistance", ohm: 12 / currentA },
  ];
  const drawOf = new Map<number, Draw>();
  let panel = build.panel();
  for (let count = 0; count < loads; count++) {
    if (count % 12 === 0) {
      if (count > 0) panel = build.panel();
      build.cable(plus, panel.feed, thick(2 + (count % 5)));
      build.cable(panel.negative, minus, thick(2 + (count % 5)));
    }
    const load = build.load();
    drawOf.set(load.part, draws[count % 3]!);
    const lengthM = 1 + (count % 7);
    build.cable(panel.branch, load.positive, { lengthM });
    build.cable(load.negative, panel.negative, { lengthM });
  }
  const network = build.network();
  const [scenario] = network.scenarios;
  return {
    ...network,
    scenarios: [scenario!, scenario!, scenario!],
    parts: network.parts.map((part): Part => {
      const own = drawOf.get(part.index);
      return part.kind === "load" && own ? { ...part, draws: own } : part;
    }),
  };
}

const thick = (lengthM: number) =>
  ({ lengthM, conductor: { system: "awg", awg: "4/0", parallel: 4 } }) as const;

/** Solves the first scenario repeatedly. Like ngspice's analysis time, this excludes preparing the pattern and the branches. */
export function operatingPointOf(network: Network): () => unknown {
  const [scenario] = network.scenarios;
  const pattern = patternOf(network, scenario!)!;
  const netlist = netlistOf(network, scenario!, pattern.nodes, conductorLaws(network.conductors));
  const solver = operatingPointSolver(netlist, pattern.system);
  return () => solver.solve(1);
}

/** The same network for ngspice, with the hint that it needs, solved `times` times over in one process. */
export function spiceText(network: Network, times: number): { text: string; branches: number } {
  const [scenario] = network.scenarios;
  const pattern = patternOf(network, scenario!)!;
  const [result] = solveScenarios(network);
  if (result?.state !== "solved") throw new Error("The bench's own network has no operating point.");
  const everything = netlistOf(network, scenario!, pattern.nodes, conductorLaws(network.conductors));
  const { netlist } = settle(everything, pattern.system);
  const branches = spiceBranches(netlist, result.conductorA);
  const hints: string[] = [];
  const known = new Set<number>();
  netlist.nodeOf.forEach((node, terminal) => {
    if (known.has(node) || nodeName(netlist, node) === "0") return;
    known.add(node);
    hints.push(`.nodeset v(${nodeName(netlist, node)})=${Math.round(result.terminalV[terminal]!)}`);
  });
  const text = [
    "the bench's network",
    ...branches.flatMap((branch: SpiceBranch) => branch.text),
    ...hints,
    ".options reltol=1e-12 abstol=1e-15 vntol=1e-12 itl1=2000 gmin=1e-18",
    ".control",
    `repeat ${times}`,
    "op",
    "end",
    "print all > voltages.txt",
    ".endc",
    ".end",
    "",
  ].join("\n");
  return { text, branches: branches.length };
}
