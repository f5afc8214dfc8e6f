/** The graph to lay out: nodes with ports on their west and east sides, and lines between ports. Pure numbers, px. */
export interface DiagramGraph {
  readonly nodes: readonly GraphNode[];
  readonly edges: readonly GraphEdge[];
}

/** The order of the nodes is their order from top to bottom, if the lines leave a choice. */
export interface GraphNode {
  readonly width: number;
  readonly height: number;
  /**
   * `placed`: its ports are at {@link GraphPort.y}. `free`: they may change places along their side to reduce line crossings; on
   * each side they are stacked around its middle, each with its own height.
   */
  readonly ports: "placed" | "free";
  readonly rows: readonly GraphPort[];
}

export interface GraphPort {
  readonly side: "west" | "east";
  /** Of the point where the line arrives, from the top of the node. Used only if ports are placed. */
  readonly y: number;
  /** Room that its row takes. */
  readonly height: number;
}

/** From a port to a port, in the direction of reading: each is the index of a node and of one of its rows. */
export interface GraphEdge {
  readonly from: readonly [node: number, row: number];
  readonly to: readonly [node: number, row: number];
}

export interface PlacedGraph {
  readonly width: number;
  readonly height: number;
  /** In the order of the graph's nodes. */
  readonly nodes: readonly PlacedNode[];
  /** In the order of the graph's edges: from port to port, bends included. */
  readonly edges: readonly (readonly Point[])[];
}

export interface PlacedNode {
  readonly x: number;
  readonly y: number;
  /** By row: where the line arrives, from the top of the picture. */
  readonly rowY: readonly number[];
}

export interface Point {
  readonly x: number;
  readonly y: number;
}

/** Never throws and never rejects. */
export type LayOut = (graph: DiagramGraph) => Promise<LaidOut>;

export type LaidOut =
  | { readonly laidOut: true; readonly placed: PlacedGraph }
  | { readonly laidOut: false; readonly why: string; readonly superseded?: true };

/** From the highest to the lowest of some points. */
export function verticalExtent(points: Iterable<{ readonly y: number }>): {
  readonly top: number;
  readonly bottom: number;
} {
  let [top, bottom] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const { y } of points) [top, bottom] = [Math.min(top, y), Math.max(bottom, y)];
  return { top, bottom };
}
