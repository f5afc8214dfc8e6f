import { resistanceOf } from "../../../library/analysis/network/solver/conductor-current.ts";
import type { Branch, Netlist } from "../../../library/analysis/network/solver/netlist.ts";
import { leastRunningV, regulationShare } from "../../../library/analysis/network/solver/solve-devices.ts";

/**
 * The same branches for ngspice, with their equations written a second time, independent of the solver's: as text for ngspice,
 * and as functions to check its answer. Conductors have their resistance at our currents; whether that resistance and that
 * current belong together is checked without ngspice.
 */
export function spiceBranches(netlist: Netlist, conductorA: readonly number[]): readonly SpiceBranch[] {
  const branches: SpiceBranch[] = [];
  const add = (name: string, between: Branch, currentA: SpiceBranch["currentA"], text: readonly string[]) =>
    branches.push({ name, between, currentA, text });
  const node = (index: number) => nodeName(netlist, index);
  const ends = ({ a, b }: Branch) => `${node(a)} ${node(b)}`;
  const over = ({ a, b }: Branch) => `(v(${node(a)})-v(${node(b)}))`;
  const resistor = (name: string, branch: Branch, ohm: number) =>
    add(name, branch, (voltage) => voltage(branch) / ohm, [`R${name} ${ends(branch)} ${ohm}`]);

  for (const branch of netlist.conductors) {
    resistor(`c${branch.conductor}`, branch, resistanceOf(branch.law, conductorA[branch.conductor]!));
  }
  netlist.resistors.forEach((branch, index) => {
    resistor(`r${index}`, branch, branch.ohm);
  });
  netlist.batteries.forEach((branch, index) => {
    const { emfV, ohm } = branch;
    add(`b${index}`, branch, (voltage) => (voltage(branch) - emfV) / ohm, [
      `Vb${index} e${index} ${node(branch.b)} ${emfV}`,
      `Rb${index} ${node(branch.a)} e${index} ${ohm}`,
    ]);
  });
  netlist.currents.forEach((branch, index) => {
    const slope = branch.currentA / leastRunningV;
    const most = branch.currentA;
    add(`i${index}`, branch, (voltage) => Math.min(Math.max(slope * voltage(branch), -most), most), [
      `Bi${index} ${ends(branch)} I=min(max(${slope}*${over(branch)},${-most}),${most})`,
    ]);
  });
  netlist.powers.forEach((branch, index) => {
    // No device runs below 1 V; there it is a resistance. Otherwise the search would divide by zero and find a device that feeds.
    const { powerW } = branch;
    const at = (voltageV: number) => Math.min(powerW / Math.max(voltageV, leastRunningV), powerW * voltageV);
    add(`p${index}`, branch, (voltage) => at(voltage(branch)), [
      `Bp${index} ${ends(branch)} I=min(${powerW}/max(${over(branch)},${leastRunningV}),${powerW}*${over(branch)})`,
    ]);
  });
  const regulated = ({ outputV, limitA }: { outputV: number; limitA: number }) => {
    const siemens = limitA / (regulationShare * outputV);
    return {
      text: (voltage: string) => `min(max(${siemens}*(${outputV}-${voltage}),0),${limitA})`,
      at: (voltageV: number) => Math.min(Math.max(siemens * (outputV - voltageV), 0), limitA),
      siemens,
    };
  };
  netlist.sources.forEach((branch, index) => {
    const source = regulated(branch);
    add(`s${index}`, branch, (voltage) => -source.at(voltage(branch)), [
      `Bs${index} ${ends(branch)} I=-${source.text(over(branch))}`,
    ]);
  });
  netlist.arrays.forEach((branch, index) => {
    const { shortCircuitA, cornerV, cornerA, openCircuitV } = branch;
    const fall = (shortCircuitA - cornerA) / cornerV;
    const steep = cornerA / (openCircuitV - cornerV);
    const at = (voltageV: number) =>
      Math.min(shortCircuitA - fall * voltageV, steep * (openCircuitV - voltageV));
    add(`a${index}`, branch, (voltage) => -at(voltage(branch)), [
      `Ba${index} ${ends(branch)} I=-min(${shortCircuitA}-${fall}*${over(branch)},${steep}*(${openCircuitV}-${over(branch)}))`,
    ]);
  });
  netlist.converters.forEach((branch, index) => {
    const { input, output, passes, efficiency, inputMaxA } = branch;
    const source = regulated(branch);
    const [inputV, outputV] = [over(input), over(output)];
    const bounded = (text: string) => `max(${text},${leastRunningV})`;
    if (passes) {
      const through = `max(0,min(${source.siemens}*(${inputV}-${outputV}),${source.text(outputV)}))`;
      const at = (voltage: (branch: Branch) => number) =>
        Math.max(
          0,
          Math.min(source.siemens * (voltage(input) - voltage(output)), source.at(voltage(output))),
        );
      add(`k${index}`, input, at, [`Bk${index} ${ends(input)} I=${through}`]);
      add(`o${index}`, output, (voltage) => -at(voltage), [`Bo${index} ${ends(output)} I=-${through}`]);
      return;
    }
    const isLimited = Number.isFinite(inputMaxA);
    const mostW = (volts: number) => efficiency * volts * inputMaxA;
    const given = isLimited
      ? `min(${source.text(outputV)},${efficiency * inputMaxA}*${bounded(inputV)}/${bounded(outputV)})`
      : source.text(outputV);
    const givenA = (voltage: (branch: Branch) => number) => {
      const regulatedA = source.at(voltage(output));
      return isLimited ? Math.min(regulatedA, mostW(voltage(input)) / voltage(output)) : regulatedA;
    };
    add(
      `k${index}`,
      input,
      (voltage) => (voltage(output) * givenA(voltage)) / (efficiency * voltage(input)),
      [`Bk${index} ${ends(input)} I=${outputV}*${given}/(${efficiency}*${bounded(inputV)})`],
    );
    add(`o${index}`, output, (voltage) => -givenA(voltage), [`Bo${index} ${ends(output)} I=-${given}`]);
  });
  return branches;
}

export interface SpiceBranch {
  readonly name: string;
  readonly between: Branch;
  readonly currentA: (voltage: (branch: Branch) => number) => number;
  readonly text: readonly string[];
}

/**
 * One operating point, all voltages printed with all their digits. The rounded voltages are hints that select one of the two
 * voltages of a constant power; the answer does not depend on them otherwise.
 */
export function spiceInput(
  netlist: Netlist,
  branches: readonly SpiceBranch[],
  of: { nearV: (node: number) => number; printTo: string },
): string {
  const hints: string[] = [];
  for (let node = 0; node < netlist.nodes; node++) {
    const name = nodeName(netlist, node);
    if (name !== "0" && netlist.live[node]) hints.push(`.nodeset v(${name})=${of.nearV(node)}`);
  }
  return [
    "a random network",
    ...branches.filter(({ between }) => between.a !== between.b).flatMap(({ text }) => text),
    ...hints,
    ".options reltol=1e-12 abstol=1e-15 vntol=1e-12 itl1=2000 gmin=1e-18",
    ".control",
    "set numdgt=15",
    "op",
    `print all > ${of.printTo}`,
    ".endc",
    ".end",
    "",
  ].join("\n");
}

/** Every island has its own zero; they are connected there, where no current can flow between them. */
export function nodeName({ references }: Netlist, node: number): string {
  return references.includes(node) ? "0" : `n${node}`;
}

/** The largest sum of currents at any node at these voltages, and the largest current, A. */
export function kirchhoff(
  netlist: Netlist,
  branches: readonly SpiceBranch[],
  voltages: ArrayLike<number>,
): { residualA: number; largestA: number } {
  const sums = new Float64Array(netlist.nodes);
  const voltage = ({ a, b }: Branch) => voltages[a]! - voltages[b]!;
  let largestA = 0;
  for (const { between, currentA } of branches) {
    if (between.a === between.b) continue;
    const flowingA = currentA(voltage);
    sums[between.a]! += flowingA;
    sums[between.b]! -= flowingA;
    largestA = Math.max(largestA, Math.abs(flowingA));
  }
  return { residualA: Math.max(0, ...sums.map(Math.abs)), largestA };
}
