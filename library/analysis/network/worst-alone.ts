import type { Network, Part } from "../../model/network.ts";
import { isCharging, passesCurrentOn } from "../../model/part-roles.ts";
import { descriptorOf } from "../../model/parts/index.ts";
import { isSamePosition, isSwitch, stateIn } from "../../model/switch-positions.ts";
import { workedOutOnce } from "../../model/worked-out-once.ts";
import type { SolvedScenario, WorstAlone } from "../network-result.ts";
import { type SingleDraw, singleDraws } from "../single-draw.ts";
import { type AddedLoads, addedLoads, addedLoadsWith } from "./solver/added-load.ts";
import type { Blocks, Crossing } from "./topology/blocks.ts";
import { type NetworkGraph, networkGraph } from "./topology/network-graph.ts";
import type { NetworkTopology } from "./topology/network-topology.ts";
import {
  blocksWhile,
  isSharedByUnknown,
  type States,
  type WithSources,
  withSources,
} from "./topology/source-blocks.ts";
import { type Graph, spanningForest } from "./topology/spanning-forest.ts";

/** By conductor and by part: the greatest current of one device alone; undefined if no device needs it. */
export interface AloneCurrents {
  readonly conductors: readonly (Alone | undefined)[];
  /** Fed or passed on; drawn, which includes a battery that is charged. */
  readonly feeds: readonly (Alone | undefined)[];
  readonly draws: readonly (Alone | undefined)[];
}

/** The current of the device that needs the most, in use, and for ampacity and ratings. */
interface Alone {
  readonly worst: WorstAlone;
  readonly design: WorstAlone;
}

/**
 * The current that each single device causes in everything between it and its bank, out and back, and the greatest of them at each
 * place. Scenarios may leave a device out, or have it on only while a charger supplies it; its wires carry the current all the same.
 *
 * A place that alone connects a device to its bank carries all of its current. Where ways divide (parallel batteries, two cables) the
 * current divides by their resistances; that takes a solution, and only the {@link mostDivided} greatest are worked out, because each
 * takes as long as its ways are. A switch that only adds a second way (the disconnect of one of two batteries, or one that lends the
 * starter battery) counts open, because the other way then carries everything; and closed too, if a scenario that lasts has it so.
 */
export function aloneCurrents(
  network: Network,
  topology: NetworkTopology,
  lasting: readonly SolvedScenario[],
  shares: "undivided" | "divided" = "undivided",
): AloneCurrents {
  return greatestAlone(network, topology, singleDraws(network, topology.banks), lasting, shares);
}

/**
 * The same for given currents, greatest first. `lasting`: scenarios that may show their shares on divided ways. `shares`: whether each of
 * several ways with an unknown length carries everything, or its share with the shortest length.
 */
export function greatestAlone(
  network: Network,
  topology: NetworkTopology,
  draws: readonly SingleDraw[],
  lasting: readonly SolvedScenario[] = [],
  shares: "undivided" | "divided" = "undivided",
): AloneCurrents {
  const worst: Mutable = {
    conductors: network.conductors.map(() => undefined),
    feeds: network.parts.map(() => undefined),
    draws: network.parts.map(() => undefined),
  };
  if (draws.length === 0) return worst;
  const wiring = networkGraph(network);
  const { all, adding: indices, open, blocksByStates: known } = waysIn(topology, wiring);
  const adding = new Set([...indices].map((index) => network.parts[index]!));
  const blocksIn = (states: States) => {
    const key = JSON.stringify([...states]);
    const blocks = known.get(key) ?? blocksWhile(states, wiring, all);
    known.set(key, blocks);
    return blocks;
  };
  const whileOpen = blocksIn(open);
  const isSupplied = ({ positive, negative }: SingleDraw) => whileOpen.connects(positive, negative);
  const situations: Situation[] = [{ blocks: whileOpen, draws: draws.filter(isSupplied), states: open }];
  const whileClosed = (closed: ReadonlySet<Part>, those: readonly SingleDraw[]) => {
    if (closed.size === 0 || those.length === 0) return;
    const others = [...open].filter(([index]) => !closed.has(network.parts[index]!));
    for (const positions of positionsOf(closed)) {
      const states = new Map([...others, ...positions]);
      situations.push({ blocks: blocksIn(states), draws: those, states });
    }
  };
  whileClosed(closedInAScenario(network, adding), draws.filter(isSupplied));
  whileClosed(
    adding,
    draws.filter((draw) => !isSupplied(draw)),
  );
  // Apart, because the greatest charging current of a battery is not the greatest that it feeds.
  const ways = situations.flatMap(({ draws, ...situation }) =>
    (["draws", "feeds"] as const).map((does) => ({
      draws: draws.filter((draw) => draw.does === does),
      ...situation,
    })),
  );
  for (const { blocks, draws, states } of ways) {
    const isSolved = solvedOnBatteries(network, lasting, states);
    for (const draw of draws)
      if (blocks.connects(draw.positive, draw.negative)) raise(worst[draw.does], draw.part.index, draw);
    const pairs = draws.map(({ positive, negative }) => [positive, negative] as const);
    const divided = new Map<number, Crossing[]>();
    for (const crossing of blocks.firstCrossings(pairs)) {
      const draw = draws[crossing.pair]!;
      for (const terminal of crossing.nodes) passes(worst, network, terminal, draw);
      // Of several ways with an unknown length, each may carry everything.
      if (
        crossing.edges.length === 1 ||
        (shares === "undivided" && isSharedByUnknown(network, crossing.edges))
      )
        for (const edge of crossing.edges) carries(worst, all, wiring, edge, draw);
      else divided.set(crossing.pair, [...(divided.get(crossing.pair) ?? []), crossing]);
    }
    const unsolved = [...divided].filter(([pair]) => !isSolved(draws[pair]!)).slice(0, mostDivided);
    if (unsolved.length === 0) continue;
    const loads = states.size === 0 ? addedLoads(network) : addedLoadsWith(network, states);
    for (const [pair, crossings] of unsolved) divides(worst, network, draws[pair]!, crossings, loads);
  }
  return worst;
}

/** Our choice: more than any build has places at which the ways to its banks divide. */
const mostDivided = 64;

interface Mutable {
  readonly conductors: (Alone | undefined)[];
  readonly feeds: (Alone | undefined)[];
  readonly draws: (Alone | undefined)[];
}

/** @param share Part of the device's current that flows here. */
function raise(list: (Alone | undefined)[], at: number, draw: SingleDraw, share = 1): void {
  const known = list[at];
  if (known && draw.designA * share <= known.design.currentA) return;
  list[at] = share === 1 ? allOf(draw) : shareOf(draw, share);
}

/** A device that an edit leaves as it was has the same one. */
const allOf = workedOutOnce((draw: SingleDraw) => shareOf(draw, 1));

function shareOf({ currentA, designA, estimate, part }: SingleDraw, share: number): Alone {
  const alone = part.index;
  return {
    worst: { currentA: currentA * share, alone },
    design: { currentA: designA * share, alone, ...(estimate && { estimate }) },
  };
}

/** A bus bar, panel or the like that the current passes at a terminal. */
function passes(worst: Mutable, network: Network, terminal: number, draw: SingleDraw): void {
  const at = network.parts[network.terminals[terminal]!.part]!;
  if (passesCurrentOn(at)) raise(worst.feeds, at.index, draw);
}

/** All of the current flows through one edge. */
function carries(
  worst: Mutable,
  { sources, graph }: WithSources,
  { network, edges }: NetworkGraph,
  edge: number,
  draw: SingleDraw,
): void {
  if (edge < network.conductors.length) raise(worst.conductors, edge, draw);
  for (const terminal of [graph.a[edge]!, graph.b[edge]!]) passes(worst, network, terminal, draw);
  const source = sources[edge - edges.length];
  if (source !== undefined && network.parts[source]!.kind === "battery")
    raise(draw.does === "draws" ? worst.feeds : worst.draws, source, draw);
}

/** The current divides in these blocks. */
function divides(
  worst: Mutable,
  network: Network,
  draw: SingleDraw,
  crossings: readonly Crossing[],
  loads: AddedLoads,
): void {
  const { part, positive, negative, currentA, does } = draw;
  const flow = loads.flow({ part: part.index, positive, negative, currentA });
  if (!flow || !(flow.drawnA > 0)) return;
  // On conductors that are far too thin it does not get all: the part it gets is shared in the same way.
  const share = (addedA: number) => Math.abs(addedA) / flow.drawnA;
  const inBlocks = new Set(crossings.flatMap(({ edges }) => edges));
  const into = new Map<number, number>();
  const outOf = new Map<number, number>();
  const add = (to: Map<number, number>, terminal: number, more: number) => {
    const at = network.terminals[terminal]!.part;
    to.set(at, (to.get(at) ?? 0) + more);
  };
  for (const { conductor, addedA } of flow.conductors) {
    if (!inBlocks.has(conductor)) continue;
    raise(worst.conductors, conductor, draw, share(addedA));
    const { from, to } = network.conductors[conductor]!;
    add(outOf, addedA > 0 ? from : to, share(addedA));
    add(into, addedA > 0 ? to : from, share(addedA));
  }
  for (const at of new Set([...into.keys(), ...outOf.keys()])) {
    if (!passesCurrentOn(network.parts[at]!)) continue;
    raise(worst.feeds, at, draw, Math.max(into.get(at) ?? 0, outOf.get(at) ?? 0));
  }
  for (const { part: battery, addedA } of flow.batteries)
    raise(does === "draws" ? worst.feeds : worst.draws, battery, draw, share(addedA));
}

/**
 * Whether a scenario with the switches in these states shows how batteries alone share at least this current: every other current there
 * adds to it.
 */
function solvedOnBatteries(
  { scenarios, parts }: Network,
  lasting: readonly SolvedScenario[],
  states: States,
) {
  const onBatteries = lasting.filter(({ scenario: index }) => {
    const scenario = scenarios[index]!;
    return (
      parts.every((part) => !isCharging(part) || !scenario.on[part.index]) &&
      [...states].every(([part, state]) => isSamePosition(stateIn(scenario, parts[part]!), state))
    );
  });
  return ({ part: { index }, currentA, does }: SingleDraw): boolean =>
    does === "draws" &&
    onBatteries.some(
      ({ partA, inputA }) => Math.max(inputA[index]!, -partA[index]!) >= currentA * solvedShare,
    );
}

/** A solved current differs from the stated one in its last digits. */
const solvedShare = 1 - 1e-9;

interface Situation {
  readonly blocks: Blocks;
  readonly draws: readonly SingleDraw[];
  readonly states: States;
}

/** The switches without which everything is still supplied: they add a second way. */
function switchesThatAddAWay({ network, edges }: NetworkGraph, graph: Graph): ReadonlySet<number> {
  const contacts = edges.flatMap(({ part }, edge) => {
    const owner = network.parts[part];
    return owner && isSwitch(owner) ? [{ part, edge }] : [];
  });
  if (contacts.length === 0) return new Set();
  const { behind } = spanningForest(graph, new Int32Array(graph.nodes).keys(), () => true);
  return new Set(contacts.filter(({ edge }) => behind[edge] === -1).map(({ part }) => part));
}

function closedInAScenario({ scenarios }: Network, switches: ReadonlySet<Part>): ReadonlySet<Part> {
  const lasting = scenarios.filter(({ momentary }) => !momentary);
  return new Set([...switches].filter(({ index }) => lasting.some(({ on }) => on[index])));
}

/** All of them closed; selector switches on one input after the other instead, for each may have to carry everything. */
function positionsOf(switches: ReadonlySet<Part>): readonly States[] {
  const inputs = [...switches].map((part) => ({
    part: part.index,
    inputs: descriptorOf(part).positions?.flatMap(({ selected = [] }) => selected) ?? [],
  }));
  const most = Math.max(1, ...inputs.map((one) => one.inputs.length));
  return Array.from(
    { length: most },
    (_, at) =>
      new Map(
        inputs.flatMap(({ part, inputs }) => {
          const input = inputs[at % inputs.length];
          return input === undefined ? [] : [[part, { closed: true, selected: [input] }] as const];
        }),
      ),
  );
}

/** The ways between devices and their banks. */
interface Ways {
  readonly all: WithSources;
  /** Part indices of the switches that add a second way. */
  readonly adding: ReadonlySet<number>;
  /** The states in which all of those are open. */
  readonly open: States;
  /** Filled on demand. */
  readonly blocksByStates: Map<string, Blocks>;
}

/** Loads do not change them. */
function waysIn(topology: NetworkTopology, wiring: NetworkGraph): Ways {
  const known = knownWays.get(topology);
  if (known) return known;
  const all = withSources(wiring);
  const adding = switchesThatAddAWay(wiring, all.graph);
  const open = new Map([...adding].map((index) => [index, { closed: false }] as const));
  const ways = { all, adding, open, blocksByStates: new Map<string, Blocks>() };
  knownWays.set(topology, ways);
  return ways;
}

const knownWays = new WeakMap<NetworkTopology, Ways>();
