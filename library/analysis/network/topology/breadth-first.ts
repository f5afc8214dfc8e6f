import { across, type Graph } from "./spanning-forest.ts";

/** A breadth-first walk: the path with the fewest edges from the nearest start to every node. */
export interface BreadthFirst {
  /** By node: index of the start that reached it; the first of several equally near. −1 if none reaches it. */
  readonly start: Int32Array;
  /** By node: the last edge of its path; −1 at a start, and if no start reaches it. */
  readonly cameBy: Int32Array;
  /** Nodes from the starts outwards. */
  readonly order: readonly number[];
}

export function breadthFirst(
  graph: Graph,
  starts: readonly number[],
  isOpen: (edge: number, from: number) => boolean = () => true,
): BreadthFirst {
  const start = new Int32Array(graph.nodes).fill(-1);
  const cameBy = new Int32Array(graph.nodes).fill(-1);
  const order: number[] = [];
  starts.forEach((node, index) => {
    if (start[node] !== -1) return;
    start[node] = index;
    order.push(node);
  });
  for (let next = 0; next < order.length; next++) {
    const node = order[next]!;
    for (let at = graph.first[node]!; at < graph.first[node + 1]!; at++) {
      const edge = graph.edges[at]!;
      const other = across(graph, edge, node);
      if (start[other] !== -1 || !isOpen(edge, node)) continue;
      start[other] = start[node]!;
      cameBy[other] = edge;
      order.push(other);
    }
  }
  return { start, cameBy, order };
}

/** The edges of the path to a node, from the start outwards; empty at a start, and if no start reaches it. */
export function pathTo(graph: Graph, { cameBy }: BreadthFirst, to: number): number[] {
  const way: number[] = [];
  for (let node = to, by = cameBy[to]!; by !== -1; by = cameBy[node]!) {
    way.push(by);
    node = across(graph, by, node);
  }
  return way.reverse();
}
