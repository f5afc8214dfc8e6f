import { across, type Graph, spanningForest } from "./spanning-forest.ts";

/**
 * The blocks of a graph: its largest parts that no single node connects alone (J. Hopcroft, R. Tarjan, "Efficient algorithms
 * for graph manipulation", Comm. ACM 16, 1973). A branch that is the only link between two parts is a block of its own.
 */
export interface Blocks {
  /**
   * All edges of the blocks on the paths between two nodes: a current that enters at one node and leaves at the other flows
   * in those and in no others. Empty if the nodes are not connected.
   */
  between(one: number, other: number): readonly number[];
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

  function between(one: number, other: number): readonly number[] {
    if (root[one] !== root[other]) return [];
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

  return { between };
}
