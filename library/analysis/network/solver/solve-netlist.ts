import { disjointSets } from "../../../model/disjoint-sets.ts";
import { internalConnections } from "../../../model/internal-connections.ts";
import type { Join, LoadPart, Network, Part, Scenario, SolarArrayPart } from "../../../model/network.ts";
import { passesCurrentOn } from "../../../model/part-roles.ts";
import { stateIn } from "../../../model/switch-positions.ts";
import { type ConductorLaw, conductorLaws, noLessThanLeast } from "./conductor-current.ts";
import type {
  ArrayBranch,
  BatteryBranch,
  Branch,
  ConductorBranch,
  ConverterBranch,
  CurrentBranch,
  Netlist,
  PowerBranch,
  ResistorBranch,
  SourceBranch,
} from "./netlist.ts";
import type { ArrayCurve } from "./solve-devices.ts";
import { withoutIdle } from "./solve-islands.ts";

/** The branches that can carry current in this scenario. */
export function netlistOf(
  network: Network,
  scenario: Scenario,
  nodes: Nodes = nodesOf(network, scenario),
  laws: readonly ConductorLaw[] = conductorLaws(network.conductors),
): Netlist {
  return withoutIdle(branchesOn(network, scenario, nodes, laws));
}

/** Terminals as nodes. The same for all scenarios with the same positions of all switches. */
export interface Nodes {
  readonly count: number;
  readonly of: Int32Array;
}

export function nodesOf(network: Network, scenario: Scenario): Nodes {
  const metal = disjointSets(network.terminals.length);
  for (const part of network.parts) {
    for (const { between, ohm } of joinsOf(part, scenario)) if (ohm === 0) metal.union(...between);
  }
  const numbers = new Map<number, number>();
  const of = Int32Array.from(network.terminals, (_, terminal) => {
    const set = metal.find(terminal);
    const known = numbers.get(set) ?? numbers.size;
    numbers.set(set, known);
    return known;
  });
  return { count: numbers.size, of };
}

/** The connections between terminals inside a part, in this scenario: an open disconnect has none. */
function joinsOf(part: Part, scenario: Scenario): readonly Join[] {
  return internalConnections(part, stateIn(scenario, part));
}

/** Pairs of nodes that any branch could connect, in any state of the network: the pattern of its equations. */
export function possiblePairs(network: Network, { of }: Nodes): Int32Array {
  const pairs: number[] = [];
  for (const { from, to } of network.conductors) pairs.push(of[from]!, of[to]!);
  for (const part of network.parts) {
    if (part.kind === "part") {
      for (const { between } of part.joins) pairs.push(of[between[0]]!, of[between[1]]!);
      continue;
    }
    // Two terminals, or the four of a charger, each of them dependent on each.
    const own = Object.values<number>(part.terminals);
    for (let one = 0; one < own.length; one++) {
      for (let other = 0; other < one; other++) pairs.push(of[own[one]!]!, of[own[other]!]!);
    }
  }
  return Int32Array.from(pairs);
}

/** All branches that this scenario switches on, whether or not current can flow in them. */
export function branchesOn(
  network: Network,
  scenario: Scenario,
  nodes: Nodes,
  laws: readonly ConductorLaw[],
): Netlist {
  const { of } = nodes;
  const list = {
    conductors: network.conductors.map(
      ({ from, to }, conductor): ConductorBranch => ({
        a: of[from]!,
        b: of[to]!,
        conductor,
        law: laws[conductor]!,
      }),
    ),
    resistors: [] as ResistorBranch[],
    batteries: [] as BatteryBranch[],
    currents: [] as CurrentBranch[],
    powers: [] as PowerBranch[],
    sources: [] as SourceBranch[],
    arrays: [] as ArrayBranch[],
    converters: [] as ConverterBranch[],
  };
  const panels = panelsBehind(network, scenario, nodes);
  const between = ({ positive, negative }: { positive: number; negative: number }): Branch => ({
    a: of[positive]!,
    b: of[negative]!,
  });
  for (const part of network.parts) {
    for (const { between, ohm } of joinsOf(part, scenario)) {
      if (ohm === 0) continue;
      list.resistors.push({
        a: of[between[0]]!,
        b: of[between[1]]!,
        part: part.index,
        ohm: noLessThanLeast(ohm),
        isLoad: false,
      });
    }
    // The branches of parts that pass current on are the joins above.
    if (passesCurrentOn(part) || !scenario.on[part.index]) continue;
    switch (part.kind) {
      case "battery": {
        const emfV = scenario.restV[part.index] ?? part.usualRestV;
        const ohm = noLessThanLeast(part.internal.highOhm);
        list.batteries.push({ part: part.index, emfV, ohm, ...between(part.terminals) });
        break;
      }
      case "alternator":
        list.sources.push({
          part: part.index,
          ...between(part.terminals),
          outputV: part.outputV,
          limitA: part.ratedA,
        });
        break;
      case "shoreCharger":
        list.sources.push({
          part: part.index,
          ...between(part.terminals),
          outputV: part.outputV,
          limitA: part.outputA,
        });
        break;
      case "solarArray":
        if (scenario.sunShare > 0) {
          const tracked = panels.trackedArrays.has(part.index);
          const curve = curveOf(part, scenario.sunShare, tracked);
          list.arrays.push({ part: part.index, ...between(part.terminals), ...curve });
        }
        break;
      case "load":
        addLoad(list, part, between(part.terminals), {
          isStarting: scenario.starting[part.index] === true,
          atLowestV: scenario.lowVoltage !== undefined,
        });
        break;
      case "inverter": {
        const powerW = (100 * part.loadW) / part.efficiencyPercent + part.idleW;
        const atV = scenario.lowVoltage === "all devices" ? part.lowestV : undefined;
        addPower(list, { part: part.index, powerW, ...between(part.terminals) }, atV);
        break;
      }
      case "dcDcCharger": {
        const { inputPositive, inputNegative, outputPositive, outputNegative } = part.terminals;
        list.converters.push({
          part: part.index,
          input: between({ positive: inputPositive, negative: inputNegative }),
          output: between({ positive: outputPositive, negative: outputNegative }),
          outputV: part.outputV,
          limitA: part.outputA,
          efficiency: part.efficiencyPercent / 100,
          inputMaxA: part.inputMaxA ?? Number.POSITIVE_INFINITY,
          ...(scenario.lowVoltage === "all devices" && { lowInputV: part.lowestV }),
          passes: false,
        });
        break;
      }
      case "solarController": {
        const { solarPositive, solarNegative, positive, negative } = part.terminals;
        list.converters.push({
          part: part.index,
          input: between({ positive: solarPositive, negative: solarNegative }),
          output: between({ positive, negative }),
          outputV: part.outputV,
          limitA: part.outputA,
          efficiency: part.efficiencyPercent / 100,
          inputMaxA: part.tracking ? (panels.currentA.get(part.index) ?? 0) : Number.POSITIVE_INFINITY,
          passes: !part.tracking,
        });
        break;
      }
      default:
        part satisfies never;
    }
  }
  return {
    nodes: nodes.count,
    nodeOf: of,
    references: [],
    live: new Uint8Array(nodes.count),
    islandOf: new Int32Array(nodes.count),
    laws,
    ...list,
  };
}

function addLoad(
  list: { currents: CurrentBranch[]; powers: PowerBranch[]; resistors: ResistorBranch[] },
  { index: part, draws, lowestV }: LoadPart,
  { a, b }: Branch,
  { isStarting, atLowestV }: { readonly isStarting: boolean; readonly atLowestV: boolean },
): void {
  switch (draws.as) {
    case "current":
      list.currents.push({ a, b, part, currentA: draws.currentA });
      break;
    case "motor":
      list.currents.push({ a, b, part, currentA: isStarting ? draws.startingA : draws.runningA });
      break;
    case "power":
      addPower(list, { a, b, part, powerW: draws.powerW }, atLowestV ? lowestV : undefined);
      break;
    case "resistance":
      list.resistors.push({ a, b, part, ohm: noLessThanLeast(draws.ohm), isLoad: true });
  }
}

/** As a constant power; or as the current that it draws at a voltage. */
function addPower(
  { currents, powers }: { currents: CurrentBranch[]; powers: PowerBranch[] },
  power: PowerBranch,
  atV: number | undefined,
): void {
  const { powerW, ...at } = power;
  if (atV === undefined) powers.push(power);
  else currents.push({ ...at, currentA: powerW / atV });
}

/** Fraction of I_sc at the corner. Below 1, because an ideal current source leaves the voltage undetermined. */
const untrackedShare = 0.99;

/** The curve of `series` modules in series and `parallel` such strings in parallel, in this share of full sun. */
function curveOf(of: SolarArrayPart, sunShare: number, tracked: boolean): ArrayCurve {
  const strings = of.parallel * sunShare;
  const shortCircuitA = of.shortCircuitA * strings;
  return {
    shortCircuitA,
    cornerV: of.maxPowerV * of.series,
    cornerA: tracked ? of.maxPowerA * strings : untrackedShare * shortCircuitA,
    openCircuitV: of.openCircuitV * of.series,
  };
}

/**
 * The arrays on a tracking controller, and the current at maximum power that such a controller finds. Several
 * controllers on the same modules share it in equal parts; the weakest of arrays in series limits it.
 */
function panelsBehind(
  network: Network,
  scenario: Scenario,
  { count, of }: Nodes,
): { trackedArrays: ReadonlySet<number>; currentA: ReadonlyMap<number, number> } {
  const trackedArrays = new Set<number>();
  const currentA = new Map<number, number>();
  const arrays = network.parts.filter(
    (part): part is SolarArrayPart => part.kind === "solarArray" && scenario.on[part.index] === true,
  );
  if (arrays.length === 0) return { trackedArrays, currentA };
  const wired = disjointSets(count);
  for (const { from, to } of network.conductors) wired.union(of[from]!, of[to]!);
  for (const part of network.parts) {
    for (const { between } of joinsOf(part, scenario)) wired.union(of[between[0]]!, of[between[1]]!);
  }
  const netOf = (terminal: number) => wired.find(of[terminal]!);
  const endingAt = new Map<number, SolarArrayPart>();
  for (const array of arrays) endingAt.set(netOf(array.terminals.positive), array);
  const controllersAt = new Map<number, number[]>();
  for (const part of network.parts) {
    if (part.kind !== "solarController" || !part.tracking || !scenario.on[part.index]) continue;
    const net = netOf(part.terminals.solarPositive);
    controllersAt.set(net, [...(controllersAt.get(net) ?? []), part.index]);
  }
  for (const top of arrays) {
    const controllers = controllersAt.get(netOf(top.terminals.positive)) ?? [];
    if (controllers.length === 0) continue;
    let weakestA = Number.POSITIVE_INFINITY;
    const string = new Set<SolarArrayPart>();
    for (let array: SolarArrayPart | undefined = top; array && !string.has(array); ) {
      string.add(array);
      trackedArrays.add(array.index);
      weakestA = Math.min(weakestA, array.maxPowerA * array.parallel);
      array = endingAt.get(netOf(array.terminals.negative));
    }
    const share = (weakestA * scenario.sunShare) / controllers.length;
    for (const controller of controllers) currentA.set(controller, (currentA.get(controller) ?? 0) + share);
  }
  return { trackedArrays, currentA };
}
