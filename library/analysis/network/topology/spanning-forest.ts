/** A graph as packed lists of the edges at each node: those of node n are in `edges` from `first[n]` to `first[n + 1]`. */
export interface Graph {
  readonly nodes: number;
  /** Both ends of each edge. */
  readonly a: Int32Array;
  readonly b: Int32Array;
  readonly first: Int32Array;
  readonly edges: Int32Array;
}

export function graphOf(nodes: number, a: Int32Array, b: Int32Array): Graph {
  const first = new Int32Array(nodes + 1);
  for (let edge = 0; edge < a.length; edge++) {
    first[a[edge]! + 1]!++;
    first[b[edge]! + 1]!++;
  }
  for (let node = 0; node < nodes; node++) first[node + 1]! += first[node]!;
  const next = first.slice(0, nodes);
  const edges = new Int32Array(2 * a.length);
  for (let edge = 0; edge < a.length; edge++) {
    edges[next[a[edge]!]!++] = edge;
    edges[next[b[edge]!]!++] = edge;
  }
  return { nodes, a, b, first, edges };
}

/** The edges at a node, ascending; one with both ends there, twice. */
export function edgesAt({ first, edges }: Graph, node: number): Int32Array {
  return edges.subarray(first[node], first[node + 1]);
}

/** The other end of an edge. */
export function across(graph: Graph, edge: number, node: number): number {
  return graph.a[edge]! === node ? graph.b[edge]! : graph.a[edge]!;
}

/**
 * A depth-first walk of everything that is reachable from the roots over open edges. One pass finds the edges that are the
 * only link between two parts of the graph, and the nodes behind each: the nodes of every subtree are numbered
 * consecutively (Tarjan, "A note on finding the bridges of a graph", 1974).
 */
export interface SpanningForest {
  /** By node: its number in the order of the walk; −1 if no root reaches it. */
  readonly order: Int32Array;
  /** By node: the greatest number in its subtree. */
  readonly last: Int32Array;
  /** By node: the root of the tree that it is in. */
  readonly root: Int32Array;
  /** By edge: the node on its far side if it is the only link between the two sides; −1 for all others. */
  readonly behind: Int32Array;
  /** By node: its edge in the tree, towards the root; −1 at a root. */
  readonly cameBy: Int32Array;
  /** By node: the least number that its subtree reaches by one edge that is not of the tree. */
  readonly low: Int32Array;
}

export function spanningForest(
  graph: Graph,
  roots: Iterable<number>,
  isOpen: (edge: number) => boolean,
): SpanningForest {
  const { nodes, first, edges } = graph;
  const order = new Int32Array(nodes).fill(-1);
  const last = new Int32Array(nodes);
  const root = new Int32Array(nodes).fill(-1);
  const behind = new Int32Array(graph.a.length).fill(-1);
  const low = new Int32Array(nodes);
  const cameBy = new Int32Array(nodes);
  const next = new Int32Array(nodes);
  const path = new Int32Array(nodes);
  let count = 0;
  for (const start of roots) {
    if (order[start] !== -1) continue;
    let depth = 0;
    const enter = (node: number, edge: number) => {
      order[node] = low[node] = count++;
      root[node] = start;
      cameBy[node] = edge;
      next[node] = first[node]!;
      path[depth++] = node;
    };
    enter(start, -1);
    while (depth > 0) {
      const node = path[depth - 1]!;
      if (next[node]! < first[node + 1]!) {
        const edge = edges[next[node]!++]!;
        if (edge === cameBy[node] || !isOpen(edge)) continue;
        const other = across(graph, edge, node);
        if (order[other] === -1) enter(other, edge);
        else low[node] = Math.min(low[node]!, order[other]!);
        continue;
      }
      depth--;
      last[node] = count - 1;
      if (depth === 0) continue;
      const parent = path[depth - 1]!;
      low[parent] = Math.min(low[parent]!, low[node]!);
      if (low[node] === order[node]) behind[cameBy[node]!] = node;
    }
  }
  return { order, last, root, behind, cameBy, low };
}
