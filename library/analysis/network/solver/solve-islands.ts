import { type DisjointSets, disjointSets, joinedBy } from "../../../model/disjoint-sets.ts";
import { graphOf, spanningForest } from "../topology/spanning-forest.ts";
import type { BatteryBranch, Branch, ConverterBranch, Netlist } from "./netlist.ts";
import { regulationShare } from "./solve-devices.ts";

/**
 * Leaves out branches that can carry no current, which leaves equations with one solution:
 *
 * - devices of an island that no source reaches; a converter is a source if its own input is reached;
 * - loads, alone or several together, connected to a single metal component with a source: an open disconnect
 *   leaves all loads behind it like this;
 * - devices that are the only link between two parts of the network: no current returns on another path (Kirchhoff's
 *   current law on the cut). A source of that kind still sets its voltage;
 * - a constant power that is the only link between two islands, or has both terminals on one metal component.
 *
 * Each remaining island gets a reference node.
 */
export function withoutIdle(everything: Netlist): Netlist {
  let netlist = everything;
  // Removing a converter can remove the source of the next one's island, so this repeats until none is removed.
  for (let round = 0; round < mostRounds; round++) {
    const before = netlist.converters.length;
    netlist = withoutOnlyLinks(withoutUnfed(withoutDead(netlist)));
    if (netlist.converters.length === before) break;
  }
  const islands = islandsWithoutConverters(netlist);
  for (const { output } of netlist.converters) islands.union(output.a, output.b);
  const live = new Uint8Array(netlist.nodes);
  const islandOf = new Int32Array(netlist.nodes);
  const sourceAt = new Set<number>();
  for (const { a } of [...netlist.batteries, ...netlist.sources, ...netlist.arrays])
    sourceAt.add(islands.find(a));
  for (const { output } of netlist.converters) sourceAt.add(islands.find(output.a));
  const references = new Map<number, number>();
  for (const { b } of netlist.batteries) {
    const island = islands.find(b);
    if (!references.has(island)) references.set(island, b);
  }
  for (let node = 0; node < netlist.nodes; node++) {
    const island = islands.find(node);
    islandOf[node] = island;
    if (sourceAt.has(island)) live[node] = 1;
    if (!references.has(island)) references.set(island, node);
  }
  return { ...netlist, live, islandOf, references: [...references.values()] };
}

/** Guards against plans made to take long; two rounds are the most that any sensible one takes. */
const mostRounds = 20;

/** Connects the nodes of every branch that gives a voltage between them a meaning: not constant powers, not converters. */
function islandsWithoutConverters(netlist: Netlist): DisjointSets {
  const { conductors, resistors, batteries, currents, sources, arrays } = netlist;
  return joinedBy(netlist.nodes, conductors, resistors, batteries, currents, sources, arrays);
}

/** Removes the branches of islands without a source. Starts at the sources and goes on through converters that they feed. */
function withoutDead(netlist: Netlist): Netlist {
  const islands = islandsWithoutConverters(netlist);
  const live = new Uint8Array(netlist.nodes);
  for (const branches of [netlist.batteries, netlist.sources, netlist.arrays]) {
    for (const { a } of branches) live[islands.find(a)] = 1;
  }
  const running = new Set<ConverterBranch>();
  let waiting = netlist.converters;
  for (;;) {
    const still: ConverterBranch[] = [];
    for (const converter of waiting) {
      const { input, output } = converter;
      const feeding = islands.find(input.a);
      if (input.a === input.b || feeding !== islands.find(input.b) || live[feeding] === 0)
        still.push(converter);
      else {
        live[islands.union(output.a, output.b)] = 1;
        running.add(converter);
      }
    }
    if (still.length === waiting.length) break;
    waiting = still;
  }
  const isLive = ({ a }: Branch) => live[islands.find(a)] === 1;
  const together = ({ a, b }: Branch) => a !== b && islands.find(a) === islands.find(b);
  return {
    ...netlist,
    converters: netlist.converters.filter((converter) => running.has(converter)),
    conductors: netlist.conductors.filter(isLive),
    resistors: netlist.resistors.filter(isLive),
    currents: netlist.currents.filter(isLive),
    powers: netlist.powers.filter((power) => power.powerW > 0 && isLive(power) && together(power)),
  };
}

/**
 * Removes loads connected, directly or through other loads, to only one metal component with a source: their current would
 * have to return to its start. Loads in series between two such components stay.
 */
function withoutUnfed(netlist: Netlist): Netlist {
  const { conductors, batteries, resistors, currents, powers, sources, arrays, converters } = netlist;
  const passing = resistors.filter(({ isLoad }) => !isLoad);
  const metal = joinedBy(netlist.nodes, conductors, passing);
  const feeds = new Uint8Array(netlist.nodes);
  for (const { a, b } of [...batteries, ...sources, ...arrays, ...converters.map(({ output }) => output)]) {
    feeds[metal.find(a)] = 1;
    feeds[metal.find(b)] = 1;
  }
  const loads: readonly Branch[] = [
    ...resistors.filter(({ isLoad }) => isLoad),
    ...currents,
    ...powers,
    ...converters.map(({ input }) => input),
  ];
  const isFeeding = (node: number) => feeds[metal.find(node)] === 1;
  if (loads.every(({ a, b }) => isFeeding(a) && isFeeding(b))) return netlist;
  // Groups components without a source by the loads between them; then finds the different fed components around each group.
  const gathered = disjointSets(netlist.nodes);
  for (const { a, b } of loads) {
    if (!isFeeding(a) && !isFeeding(b)) gathered.union(metal.find(a), metal.find(b));
  }
  const gatheringOf = (node: number) => gathered.find(metal.find(node));
  const first = new Map<number, number>();
  const fed = new Set<number>();
  for (const { a, b } of loads) {
    for (const [inside, outside] of [
      [a, b],
      [b, a],
    ] as const) {
      if (isFeeding(inside) || !isFeeding(outside)) continue;
      const known = first.get(gatheringOf(inside));
      if (known === undefined) first.set(gatheringOf(inside), metal.find(outside));
      else if (known !== metal.find(outside)) fed.add(gatheringOf(inside));
    }
  }
  const isFed = ({ a, b }: Branch) => [a, b].every((node) => isFeeding(node) || fed.has(gatheringOf(node)));
  return {
    ...netlist,
    resistors: resistors.filter((resistor) => !resistor.isLoad || isFed(resistor)),
    currents: currents.filter(isFed),
    powers: powers.filter(isFed),
    converters: converters.filter(({ input }) => isFed(input)),
  };
}

/** Removes loads that are the only link between two parts, and lets sources there set no more than their voltage. */
function withoutOnlyLinks(netlist: Netlist): Netlist {
  const { conductors, batteries, resistors, currents, powers, sources, arrays, converters } = netlist;
  const inputs = converters.map(({ input }) => input);
  const outputs = converters.map(({ output }) => output);
  // Conductors first: only the devices are checked for being an only link.
  const devices = [
    ...batteries,
    ...resistors,
    ...currents,
    ...powers,
    ...sources,
    ...arrays,
    ...inputs,
    ...outputs,
  ];
  const graph = graphOf(netlist.nodes, ...endsOf(conductors, devices));
  const { behind } = spanningForest(graph, everyNode(graph.nodes), () => true);
  const onlyLinks = new Set<Branch>();
  for (let device = 0; device < devices.length; device++) {
    if (behind[conductors.length + device] !== -1) onlyLinks.add(devices[device]!);
  }
  if (onlyLinks.size === 0) return netlist;
  const closesALoop = (branch: Branch) => !onlyLinks.has(branch);
  const blocked: BatteryBranch[] = [
    ...sources
      .filter((source) => onlyLinks.has(source))
      .map(({ a, b, part, outputV, limitA }) => ({
        a,
        b,
        part,
        emfV: outputV,
        ohm: (regulationShare * outputV) / limitA,
      })),
    ...arrays
      .filter((array) => onlyLinks.has(array))
      .map(({ a, b, part, openCircuitV, cornerV, cornerA }) => ({
        a,
        b,
        part,
        emfV: openCircuitV,
        ohm: (openCircuitV - cornerV) / cornerA,
      })),
    ...converters
      .filter(({ input, output }) => onlyLinks.has(output) && closesALoop(input))
      .map(({ output, part, outputV, limitA }) => ({
        ...output,
        part,
        emfV: outputV,
        ohm: (regulationShare * outputV) / limitA,
      })),
  ];
  return {
    ...netlist,
    batteries: [...batteries, ...blocked],
    resistors: resistors.filter((resistor) => !resistor.isLoad || closesALoop(resistor)),
    currents: currents.filter(closesALoop),
    powers: powers.filter(closesALoop),
    sources: sources.filter(closesALoop),
    arrays: arrays.filter(closesALoop),
    converters: converters.filter(({ input, output }) => closesALoop(input) && closesALoop(output)),
  };
}

function endsOf(first: readonly Branch[], second: readonly Branch[]): [Int32Array, Int32Array] {
  const a = new Int32Array(first.length + second.length);
  const b = new Int32Array(a.length);
  for (let index = 0; index < a.length; index++) {
    const branch = index < first.length ? first[index]! : second[index - first.length]!;
    a[index] = branch.a;
    b[index] = branch.b;
  }
  return [a, b];
}

function everyNode(nodes: number): Int32Array {
  const all = new Int32Array(nodes);
  for (let node = 0; node < nodes; node++) all[node] = node;
  return all;
}
