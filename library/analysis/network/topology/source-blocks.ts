import { internalConnections } from "../../../model/internal-connections.ts";
import type { Network } from "../../../model/network.ts";
import type { PartState } from "../../../model/parts/define-part.ts";
import { type Blocks, blocksOf } from "./blocks.ts";
import type { NetworkGraph } from "./network-graph.ts";
import { portsOf } from "./ports.ts";
import { type Graph, graphOf } from "./spanning-forest.ts";

/** The terminals of a network, connected through the sources that supply it too: the blocks show where a current divides. */
export interface WithSources {
  /** Terminals, with the edges of the network and one for each source that supplies others. */
  readonly graph: Graph;
  /** Part indices of the sources, in the order of their edges, which come last. */
  readonly sources: readonly number[];
}

/** A current passes through the battery that supplies it; where there is none, through any other source. */
export function withSources({ network, terminals, componentOf }: NetworkGraph): WithSources {
  const feeding = network.parts
    .flatMap(portsOf)
    .filter(({ does, part }) => does === "feeds" && part.kind !== "solarArray");
  const withBattery = new Set(
    feeding.flatMap(({ part, positive }) => (part.kind === "battery" ? [componentOf[positive]] : [])),
  );
  const sources = feeding.filter(
    ({ part, positive }) => part.kind === "battery" || !withBattery.has(componentOf[positive]),
  );
  return {
    sources: sources.map(({ part }) => part.index),
    graph: graphOf(
      terminals.nodes,
      Int32Array.from([...terminals.a, ...sources.map(({ positive }) => positive)]),
      Int32Array.from([...terminals.b, ...sources.map(({ negative }) => negative)]),
    ),
  };
}

/** By part index: the states of switches that are not as if all were closed. */
export type States = ReadonlyMap<number, PartState>;

/** The blocks of the network while some switches are in these states. */
export function blocksWhile(
  states: States,
  { network, edges }: NetworkGraph,
  { graph }: WithSources,
): Blocks {
  if (states.size === 0) return blocksOf(graph);
  const closed = new Map(
    [...states].map(([part, state]) => [
      part,
      new Set(internalConnections(network.parts[part]!, state).map(({ between }) => between.join())),
    ]),
  );
  // An edge from a terminal to itself leads nowhere: the edges keep their numbers.
  const b = graph.b.map((node, edge) => {
    const pairs = closed.get(edges[edge]?.part ?? -1);
    return pairs && !pairs.has(`${graph.a[edge]},${node}`) ? graph.a[edge]! : node;
  });
  return blocksOf(graphOf(graph.nodes, graph.a, b));
}

/** Whether the current divides in a block by a length that is unknown. */
export function isSharedByUnknown({ conductors }: Network, block: readonly number[]): boolean {
  return (
    block.length > 1 &&
    block.some((edge) => edge < conductors.length && conductors[edge]!.lengthM === undefined)
  );
}
