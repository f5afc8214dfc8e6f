import { across, type Graph, spanningForest } from "./spanning-forest.ts";

/**
 * The blocks of a graph: its largest parts that no single node connects alone (J. Hopcroft, R. Tarjan, "Efficient algorithms
 * for graph manipulation", Comm. ACM 16, 1973). A branch that is the only link between two parts is a block of its own.
 */
export interface Blocks {
  /** The edges of each block. */
  readonly all: readonly (readonly number[])[];
  /**
   * All edges of the blocks on the paths between two nodes: a current that enters at one node and leaves at the other flows
   * in those and in no others. Empty if the nodes are not connected.
   */
  between(one: number, other: number): readonly number[];
  /** Whether any path leads from one node to the other. */
  connects(one: number, other: number): boolean;
  /**
   * The blocks on the paths between pairs of nodes, each time with the nodes at which a current enters and leaves it. Several pairs
   * may cross a block between the same two nodes: only the first of them is reported. Takes n log n time for n pairs.
   */
  firstCrossings(pairs: readonly (readonly [number, number])[]): readonly Crossing[];
}

export interface Crossing {
  /** Position in the list of pairs. */
  readonly pair: number;
  /** All edges of the block; one alone is the only link between the two nodes. */
  readonly edges: readonly number[];
  readonly nodes: readonly [number, number];
}

export function blocksOf(graph: Graph): Blocks {
  const { nodes } = graph;
  const { order, root, cameBy, low } = spanningForest(graph, new Int32Array(nodes).keys(), () => true);
  const inOrder = new Int32Array(nodes);
  for (let node = 0; node < nodes; node++) inOrder[order[node]!] = node;
  /** By node: the block of its edge towards the root, and the number of blocks from the root to it. */
  const blockOf = new Int32Array(nodes).fill(-1);
  const depth = new Int32Array(nodes);
  /** By block: the node that connects it to the rest of its tree. */
  const top: number[] = [];
  for (const node of inOrder) {
    const edge = cameBy[node]!;
    if (edge < 0) continue;
    const parent = across(graph, edge, node);
    blockOf[node] = low[node]! >= order[parent]! ? top.push(parent) - 1 : blockOf[parent]!;
    depth[node] = depth[top[blockOf[node]!]!]! + 1;
  }
  const edgesOf = top.map((): number[] => []);
  for (let edge = 0; edge < graph.a.length; edge++) {
    const [a, b] = [graph.a[edge]!, graph.b[edge]!];
    // One of the two lies below the other: this is true of every edge in a depth-first walk.
    if (a !== b) edgesOf[blockOf[order[a]! > order[b]! ? a : b]!]!.push(edge);
  }

  const connects = (one: number, other: number) => root[one] === root[other];

  function between(one: number, other: number): readonly number[] {
    if (!connects(one, other)) return [];
    const found: (readonly number[])[] = [];
    const climb = (node: number) => {
      found.push(edgesOf[blockOf[node]!]!);
      return top[blockOf[node]!]!;
    };
    let [a, b] = [one, other];
    while (a !== b) {
      if (blockOf[a] === blockOf[b]) b = a = climb(a);
      else if (depth[a]! < depth[b]!) b = climb(b);
      else if (depth[a]! > depth[b]!) a = climb(a);
      else [a, b] = [climb(a), climb(b)];
    }
    return found.flat();
  }

  const parent = (node: number) => top[blockOf[node]!]!;
  /** By node: a node further up. Two kinds of steps reach any depth in log n of them (E. Myers, Information Processing Letters 17, 1983). */
  const jump = new Int32Array(nodes);
  for (const node of inOrder) {
    if (blockOf[node]! < 0) jump[node] = node;
    else {
      const far = jump[parent(node)]!;
      const isEven = depth[parent(node)]! - depth[far]! === depth[far]! - depth[jump[far]!]!;
      jump[node] = isEven ? jump[far]! : parent(node);
    }
  }
  const upTo = (node: number, level: number) => {
    let at = node;
    while (depth[at]! > level) at = depth[jump[at]!]! >= level ? jump[at]! : parent(at);
    return at;
  };

  /** On the ways up from both, the last nodes before the ways meet; the same node twice if one way is part of the other. */
  function beforeMeeting(one: number, other: number): readonly [number, number] {
    const level = Math.min(depth[one]!, depth[other]!);
    let [a, b] = [upTo(one, level), upTo(other, level)];
    while (a !== b && parent(a) !== parent(b))
      [a, b] = jump[a] === jump[b] ? [parent(a), parent(b)] : [jump[a]!, jump[b]!];
    return [a, b];
  }

  function firstCrossings(pairs: readonly (readonly [number, number])[]): readonly Crossing[] {
    const found: Crossing[] = [];
    // A node whose way to its parent is reported is left out of later climbs.
    const open = Int32Array.from({ length: nodes }, (_, node) => node);
    const nextOpen = (node: number) => {
      let end = node;
      while (open[end] !== end) end = open[end]!;
      for (let at = node; at !== end; ) {
        const next = open[at]!;
        open[at] = end;
        at = next;
      }
      return end;
    };
    const across = new Set<number>();
    pairs.forEach(([one, other], pair) => {
      if (!connects(one, other)) return;
      const report = (from: number, to: number) =>
        found.push({ pair, edges: edgesOf[blockOf[from]!]!, nodes: [from, to] });
      const climb = (from: number, level: number) => {
        for (let node = nextOpen(from); depth[node]! > level; node = nextOpen(node)) {
          report(node, parent(node));
          open[node] = parent(node);
        }
      };
      const [a, b] = beforeMeeting(one, other);
      const isAcross = a !== b && blockOf[a] === blockOf[b];
      const level = a === b ? depth[a]! : isAcross ? depth[a]! : depth[a]! - 1;
      climb(one, level);
      climb(other, level);
      const key = Math.min(a, b) * nodes + Math.max(a, b);
      if (!isAcross || across.has(key)) return;
      across.add(key);
      report(a, b);
    });
    return found;
  }

  return { all: edgesOf, between, connects, firstCrossings };
}
