import { joinedBy } from "../../../model/disjoint-sets.ts";
import type { Network, Scenario } from "../../../model/network.ts";
import { passesCurrentOn } from "../../../model/part-roles.ts";
import type { PartState } from "../../../model/parts/define-part.ts";
import { workedOutOnce } from "../../../model/worked-out-once.ts";
import { type Blocks, blocksOf } from "../topology/blocks.ts";
import { graphOf } from "../topology/spanning-forest.ts";
import { conductorLaws, currentOf } from "./conductor-current.ts";
import type { Branch, Netlist } from "./netlist.ts";
import { voltageOver } from "./node-voltages.ts";
import { operatingPointSolver } from "./operating-point.ts";
import { constantCurrent, type Flow } from "./solve-devices.ts";
import { branchesOn, nodesOf } from "./solve-netlist.ts";
import { isBalanced } from "./solve-scenarios.ts";
import { withoutRounding } from "./solved-scenario.ts";
import { type SparseSystem, sparseSystem } from "./sparse-lu.ts";
import { eliminationOrder } from "./sparse-order.ts";

/** A constant-current load between two terminals of a network with only the batteries switched on. */
export interface AddedLoad {
  /** Part whose own connections are ignored during the solution: a load's current does not pass through the load's inside. */
  readonly part: number;
  readonly positive: number;
  readonly negative: number;
  readonly currentA: number;
}

interface AddedFlow {
  /** The current it draws, A: less than its own on conductors that are far too thin. */
  readonly drawnA: number;
  /** The conductors that can carry its current, ascending, each with the current added by the load, A. */
  readonly conductors: readonly { readonly conductor: number; readonly addedA: number }[];
  /** The batteries that can supply it, each with the part of the current that it gives, A. */
  readonly batteries: readonly { readonly part: number; readonly addedA: number }[];
}

export interface AddedLoads {
  /** Undefined if no current can flow between its terminals, or if the solver finds no solution. */
  flow(load: AddedLoad): AddedFlow | undefined;
}

/**
 * Solves how the batteries share a load, for many loads one by one. A load's current flows only in the blocks on the paths
 * between its terminals ({@link Blocks}). The flow within a block depends only on the current that passes through it. So each
 * solution has the size of the load's own paths, however large the network is. Prepared once for each network.
 */
export const addedLoads: (network: Network) => AddedLoads = workedOutOnce((network) =>
  addedLoadsWith(network, new Map()),
);

/** The same while some switches are in these states, by part index. */
export function addedLoadsWith(network: Network, states: ReadonlyMap<number, PartState>): AddedLoads {
  const [first] = network.scenarios;
  if (!first) return { flow: () => undefined };
  // The negatives that a charger connects are edges here; those edges are absent while that charger itself is the load.
  const apart: Network = {
    ...network,
    parts: network.parts.map((part) => (part.kind === "dcDcCharger" ? { ...part, isolated: true } : part)),
  };
  const selected = new Map(
    [...states].flatMap(([part, state]) => (state.selected ? [[part, state.selected] as const] : [])),
  );
  const batteriesOnly: Scenario = {
    ...first,
    on: network.parts.map(
      (part) =>
        part.kind === "battery" || (passesCurrentOn(part) && states.get(part.index)?.closed !== false),
    ),
    // The first scenario's positions do not count: which battery feeds the load may not depend on it.
    selected,
    starting: network.parts.map(() => false),
    sunShare: 0,
    momentary: false,
  };
  const nodes = nodesOf(apart, batteriesOnly);
  const node = (terminal: number) => nodes.of[terminal]!;
  const negatives = network.parts.flatMap((part) =>
    part.kind === "dcDcCharger" && !part.isolated
      ? [{ part: part.index, a: node(part.terminals.inputNegative), b: node(part.terminals.outputNegative) }]
      : [],
  );
  const batteriesAlone = branchesOn(apart, batteriesOnly, nodes, conductorLaws(network.conductors));
  const { conductors, resistors, batteries } = batteriesAlone;
  const branches: readonly Branch[] = [...conductors, ...resistors, ...batteries, ...negatives];
  const firstOf = {
    resistors: conductors.length,
    batteries: conductors.length + resistors.length,
    negatives: conductors.length + resistors.length + batteries.length,
  };
  const graph = graphOf(
    nodes.count,
    Int32Array.from(branches, ({ a }) => a),
    Int32Array.from(branches, ({ b }) => b),
  );
  const blocks = blocksOf(graph);
  const edgesFor = ({ positive, negative }: AddedLoad) => blocks.between(node(positive), node(negative));

  /** The branches that can carry the load's current, and their nodes numbered in the order of elimination. */
  function wayOf(load: AddedLoad): Path | undefined {
    const edges = Int32Array.from(edgesFor(load)).sort();
    const local = numbering();
    const ends = { a: local.of(node(load.positive)), b: local.of(node(load.negative)) };
    const way = Array.from(edges, (edge) => {
      const { a, b } = branches[edge]!;
      return { edge, a: local.of(a), b: local.of(b) };
    }).filter(({ edge }) => negatives[edge - firstOf.negatives]?.part !== load.part);
    const joined = way.filter(({ edge }) => edge >= firstOf.negatives);
    const metal = joinedBy(local.count(), joined);
    // Without the part's own connection, some of these branches may have no link to the others.
    const linked = joinedBy(local.count(), way);
    if (linked.find(ends.a) !== linked.find(ends.b) || metal.find(ends.a) === metal.find(ends.b))
      return undefined;
    const resisting = way.filter(
      ({ edge, a }) => edge < firstOf.negatives && linked.find(a) === linked.find(ends.a),
    );
    const points = numbering();
    const pointsOf = ({ a, b }: Branch) => ({ a: points.of(metal.find(a)), b: points.of(metal.find(b)) });
    const [between, ...found] = [ends, ...resisting].map(pointsOf);
    const order = eliminationOrder(
      points.count(),
      [between!, ...found].flatMap(({ a, b }) => [a, b]),
    );
    if (!order) return undefined;
    const placed = ({ a, b }: Branch) => ({ a: order.place[a]!, b: order.place[b]! });
    const at = new Map(resisting.map(({ edge }, index) => [edge, placed(found[index]!)]));
    const onWay = <Item>(list: readonly Item[], first: number) =>
      resisting.flatMap(({ edge }) => {
        const item = list[edge - first];
        return item ? [{ ...item, ...at.get(edge)! }] : [];
      });
    return {
      between: placed(between!),
      system: sparseSystem(order),
      conductors: onWay(conductors, 0),
      resistors: onWay(resistors, firstOf.resistors),
      batteries: onWay(batteries, firstOf.batteries),
    };
  }

  function flow(load: AddedLoad): AddedFlow | undefined {
    const way = wayOf(load);
    const [battery] = way?.batteries ?? [];
    if (!way || !battery) return undefined;
    const { between, system, ...lists } = way;
    const idle: Netlist = { ...batteriesAlone, ...lists, nodes: system.size, references: [battery.b] };
    const drawing = { ...between, part: load.part, currentA: load.currentA };
    const before = operatingPointSolver(idle, system).solve(1);
    const after = operatingPointSolver({ ...idle, currents: [drawing] }, system).solve(1);
    if (before.state !== "found" || after.state !== "found" || !isBalanced(before) || !isBalanced(after))
      return undefined;
    const drawn: Flow = { currentA: 0, siemens: 0 };
    constantCurrent(drawing, voltageOver(after.voltages, drawing), drawn);
    const [shownBefore, shownAfter] = [withoutRounding(before), withoutRounding(after)];
    return {
      drawnA: shownAfter(drawn.currentA),
      conductors: idle.conductors.map((branch) => ({
        conductor: branch.conductor,
        addedA:
          shownAfter(currentOf(branch.law, voltageOver(after.voltages, branch))) -
          shownBefore(currentOf(branch.law, voltageOver(before.voltages, branch))),
      })),
      batteries: idle.batteries.map((branch) => ({
        part: branch.part,
        addedA: (voltageOver(before.voltages, branch) - voltageOver(after.voltages, branch)) / branch.ohm,
      })),
    };
  }

  return { flow };
}

interface Path extends Pick<Netlist, "conductors" | "resistors" | "batteries"> {
  readonly between: Branch;
  readonly system: SparseSystem;
}

/** Numbers keys from 0, in the order of the calls. */
function numbering() {
  const numbers = new Map<number, number>();
  const of = (key: number) => {
    const known = numbers.get(key) ?? numbers.size;
    numbers.set(key, known);
    return known;
  };
  return { of, count: () => numbers.size };
}
