import type { Network, NetworkConductor, Part, Scenario } from "../../../model/network.ts";
import { isDevice, passesCurrentOn } from "../../../model/part-roles.ts";
import { descriptorOf } from "../../../model/parts/index.ts";
import type { SolvedScenario } from "../../network-result.ts";
import { portsOf } from "../topology/ports.ts";
import { currentOf, resistanceOf, temperatureOf } from "./conductor-current.ts";
import type { Netlist } from "./netlist.ts";
import { voltageAbove, voltageOver } from "./node-voltages.ts";
import type { OperatingPoint } from "./operating-point.ts";
import {
  battery,
  constantCurrent,
  converter,
  emptyConverterFlow,
  type Flow,
  limitedSource,
  passingController,
  solarArray,
} from "./solve-devices.ts";

/** The currents and voltages of an operating point, by conductor, part and terminal of the network. */
export function solvedScenario(of: {
  network: Network;
  scenario: Scenario;
  index: number;
  netlist: Netlist;
  point: OperatingPoint;
}): SolvedScenario {
  const { network, scenario, netlist, point } = of;
  const terminalV = terminalVoltages(network, scenario, netlist, point);
  const conductorA = network.conductors.map(() => 0);
  const conductorC: number[] = [];
  const conductorOhm: number[] = [];
  const shown = withoutRounding(point);
  for (const branch of netlist.conductors) {
    conductorA[branch.conductor] = shown(currentOf(branch.law, voltageOver(point.voltages, branch)));
  }
  netlist.laws.forEach((law, conductor) => {
    conductorC.push(temperatureOf(law, conductorA[conductor]!));
    conductorOhm.push(resistanceOf(law, conductorA[conductor]!));
  });
  const device = deviceCurrents(network.parts.length, netlist, point);
  const [partA, inputA] = [device.partA.map(shown), device.inputA.map(shown)];
  addPassedOn(network, conductorA, partA);
  return {
    state: "solved",
    scenario: of.index,
    terminalV,
    conductorA,
    conductorC,
    conductorOhm,
    partA,
    inputA,
    partV: network.parts.map((part) => voltageAt(part, terminalV)),
    residualA: point.residualA,
    largestA: shown(point.largestA),
    iterations: point.iterations,
  };
}

/**
 * By part: the current that it gives, A, negative if it draws; and its voltage, V, at the output of chargers. Of parts without a branch,
 * batteries are at rest, and others have 0.
 */
export interface SolvedDevices {
  readonly partA: readonly number[];
  readonly partV: readonly number[];
  /** Those of unknown length that carry current: it is solved without their resistance. Absent if there are none. */
  readonly withoutLength?: readonly NetworkConductor[];
}

/** The devices of an operating point, without the conductors between them. */
export function solvedDevices(
  { parts, conductors }: Pick<Network, "parts" | "conductors">,
  netlist: Netlist,
  point: OperatingPoint,
): SolvedDevices {
  const { partA } = deviceCurrents(parts.length, netlist, point);
  const partV = parts.map((part) => (part.kind === "battery" ? part.usualRestV : 0));
  const { batteries, currents, powers, sources, arrays, converters, resistors } = netlist;
  const loads = resistors.filter(({ isLoad }) => isLoad);
  for (const branch of [...batteries, ...currents, ...powers, ...sources, ...arrays, ...loads])
    partV[branch.part] = voltageOver(point.voltages, branch);
  for (const { part, output } of converters) partV[part] = voltageOver(point.voltages, output);
  const shown = withoutRounding(point);
  const withoutLength = netlist.conductors.flatMap(({ conductor, law, ...branch }) => {
    const own = conductors[conductor]!;
    const carries = own.lengthM === undefined && shown(currentOf(law, voltageOver(point.voltages, branch)));
    return carries ? [own] : [];
  });
  return { partA: partA.map(shown), partV, ...(withoutLength.length > 0 && { withoutLength }) };
}

/**
 * As a share of the largest current, or of one ampere if that is less: a current no larger than this is rounding and is shown
 * as 0. The search leaves twice as much of the largest one at a node.
 */
const roundingShare = 1e-12;

/** Sets currents to 0 that are mere rounding beside the largest current of an operating point. */
export function withoutRounding({
  largestA,
}: Pick<OperatingPoint, "largestA">): (currentA: number) => number {
  const roundingA = roundingShare * Math.max(1, largestA);
  return (currentA) => (Math.abs(currentA) <= roundingA ? 0 : currentA);
}

/**
 * By terminal, towards the most negative battery terminal of its island; towards the most negative terminal of a source if
 * there is no battery. Within an island, connected by conductors, devices and sources, a voltage has a meaning.
 */
function terminalVoltages(
  network: Network,
  scenario: Scenario,
  { nodeOf, live, islandOf }: Netlist,
  { voltages: { coarse, fine } }: OperatingPoint,
): number[] {
  const zeros = new Map<number, { node: number; isBattery: boolean }>();
  const voltageOf = (node: number) => coarse[node]! + fine[node]!;
  for (const part of network.parts) {
    if (!scenario.on[part.index]) continue;
    for (const { does, positive, negative } of portsOf(part)) {
      if (does !== "feeds") continue;
      const isBattery = part.kind === "battery";
      for (const terminal of [negative, positive]) {
        const node = nodeOf[terminal]!;
        const known = zeros.get(islandOf[node]!);
        const isBetter =
          known && known.isBattery === isBattery
            ? voltageOf(node) < voltageOf(known.node)
            : isBattery || !known;
        if (isBetter) zeros.set(islandOf[node]!, { node, isBattery });
      }
    }
  }
  return network.terminals.map((_, terminal) => {
    const node = nodeOf[terminal]!;
    if (!live[node]) return Number.NaN;
    const zero = zeros.get(islandOf[node]!)?.node ?? node;
    return coarse[node]! - coarse[zero]! + (fine[node]! - fine[zero]!);
  });
}

/** Between its positive and its negative terminal; at the output for chargers. */
function voltageAt(part: Part, terminalV: readonly number[]): number {
  const poles = portsOf(part);
  const { positive, negative } = poles.find(({ does }) => does === "feeds") ?? poles[0] ?? {};
  if (positive === undefined || negative === undefined) return Number.NaN;
  return terminalV[positive]! - terminalV[negative]!;
}

/** Currents of everything that feeds or draws: positive if it feeds. */
function deviceCurrents(
  parts: number,
  netlist: Netlist,
  { voltages }: OperatingPoint,
): { partA: number[]; inputA: number[] } {
  const partA = Array<number>(parts).fill(0);
  const inputA = Array<number>(parts).fill(0);
  const flow: Flow = { currentA: 0, siemens: 0 };
  for (const branch of netlist.batteries) {
    battery(branch, voltageAbove(voltages, branch, branch.emfV), flow);
    partA[branch.part] = -flow.currentA;
  }
  for (const branch of netlist.currents) {
    constantCurrent(branch, voltageOver(voltages, branch), flow);
    partA[branch.part] = -flow.currentA;
  }
  for (const branch of netlist.powers) partA[branch.part] = -branch.powerW / voltageOver(voltages, branch);
  for (const branch of netlist.sources) {
    limitedSource(branch, voltageOver(voltages, branch), flow);
    partA[branch.part] = -flow.currentA;
  }
  for (const branch of netlist.arrays) {
    solarArray(branch, voltageOver(voltages, branch), flow);
    partA[branch.part] = -flow.currentA;
  }
  for (const branch of netlist.resistors) {
    if (branch.isLoad) partA[branch.part] = -voltageOver(voltages, branch) / branch.ohm;
  }
  const through = emptyConverterFlow();
  for (const branch of netlist.converters) {
    const inputV = voltageOver(voltages, branch.input);
    const outputV = voltageOver(voltages, branch.output);
    if (branch.passes) passingController(branch, { inputV, outputV }, through, flow);
    else converter(branch, { inputV, outputV, share: 1 }, through, flow);
    partA[branch.part] = through.outputA;
    inputA[branch.part] = through.inputA;
  }
  return { partA, inputA };
}

/**
 * For parts that only pass current on: the current that conductors bring to a terminal, or to a bus in all. Of the terminals, the
 * one with the greatest current.
 */
function addPassedOn(network: Network, conductorA: readonly number[], partA: number[]): void {
  const arrivingA = new Float64Array(network.terminals.length);
  const broughtA = new Float64Array(network.terminals.length);
  network.conductors.forEach(({ from, to }, conductor) => {
    const currentA = conductorA[conductor]!;
    arrivingA[from]! -= currentA;
    arrivingA[to]! += currentA;
    broughtA[currentA > 0 ? to : from]! += Math.abs(currentA);
  });
  for (const { part, on, line, throughA } of throughMounted(network, arrivingA)) {
    arrivingA[on]! -= throughA;
    arrivingA[line]! += throughA;
    broughtA[on]! += Math.max(0, -throughA);
    partA[part] = throughA;
  }
  // The current of a part that feeds or draws follows from its own law.
  for (const part of network.parts.filter(passesCurrentOn)) {
    const terminals: Readonly<Record<string, number>> = part.terminals;
    const { collectsAt } = descriptorOf(part);
    const brought = (names: readonly string[]) =>
      names.reduce((sum, terminal) => sum + broughtA[terminals[terminal]!]!, 0);
    // A panel's negative bus may carry more than its feed, if returns of other devices end there.
    partA[part.index] = collectsAt
      ? Math.max(
          brought(collectsAt),
          brought(Object.keys(terminals).filter((name) => !collectsAt.includes(name))),
        )
      : greatestOf(Object.values(terminals).map((terminal) => arrivingA[terminal]!));
  }
}

/** The first of several of the same amount: of two terminals, the current from the first one to the second. */
function greatestOf(currents: readonly number[]): number {
  return currents.reduce(
    (greatest, currentA) =>
      Math.abs(currentA) > Math.abs(greatest) * moreThanRounding ? currentA : greatest,
    0,
  );
}

const moreThanRounding = 1 + 1e-9;

/**
 * The current through each device that is mounted on a terminal, from there to its load side, where conductors take it on, or
 * further devices that are mounted there.
 */
function throughMounted({ parts }: Network, arrivingA: Float64Array) {
  const mounted = parts
    .filter(isDevice)
    .flatMap(({ index, mountedOn, terminals }) =>
      mountedOn === undefined ? [] : [{ part: index, on: mountedOn, ...terminals }],
    );
  const byTerminal = new Map<number, (typeof mounted)[number][]>();
  for (const device of mounted) {
    const there = byTerminal.get(device.on);
    if (there) there.push(device);
    else byTerminal.set(device.on, [device]);
  }
  const throughA = (device: (typeof mounted)[number], seen: readonly number[] = []): number => {
    // Two devices on one another carry no current that conductors bring.
    if (seen.includes(device.part)) return 0;
    const further = byTerminal.get(device.load) ?? [];
    return further.reduce(
      (sumA, next) => sumA + throughA(next, [...seen, device.part]),
      -arrivingA[device.load]!,
    );
  };
  return mounted.map((device) => ({ ...device, throughA: throughA(device) }));
}
