import ElkConstructor, { type ElkNode } from "elkjs/lib/elk.bundled.js";
import type { DiagramGraph, GraphNode, LaidOut, PlacedGraph, Point } from "./graph.ts";

/**
 * Lays a diagram out from left to right in layers, with right-angled lines (Sugiyama's method, by the Eclipse Layout Kernel). It
 * runs in this thread: some 100 nodes take a sixth of a second. The same graph gives the same numbers.
 */
export async function layOut(graph: DiagramGraph): Promise<LaidOut> {
  try {
    return { laidOut: true, placed: placedOf(graph, await elk.layout(asElk(graph))) };
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    return { laidOut: false, why: `The diagram could not be laid out: ${reason.split("\n")[0]}` };
  }
}

// Its types and its file disagree on named and default exports, depending on the loader.
const Elk = (ElkConstructor as unknown as { default?: typeof ElkConstructor }).default ?? ElkConstructor;
const elk = new Elk();

const options = {
  "elk.algorithm": "layered",
  "elk.direction": "RIGHT",
  "elk.edgeRouting": "ORTHOGONAL",
  "elk.padding": "[top=0,left=0,bottom=0,right=0]",
  "elk.spacing.nodeNode": "8",
  "elk.spacing.componentComponent": "24",
  "elk.spacing.edgeNode": "12",
  "elk.spacing.edgeEdge": "10",
  // The height of a port is the room that its row needs.
  "elk.spacing.portPort": "0",
  "elk.layered.spacing.nodeNodeBetweenLayers": "24",
  "elk.layered.spacing.edgeNodeBetweenLayers": "12",
  "elk.layered.spacing.edgeEdgeBetweenLayers": "10",
  // The picture keeps the order of the plan where that costs no crossing: a small change moves little. Ports of placed nodes keep
  // theirs in any case.
  "elk.layered.considerModelOrder.strategy": "NODES_AND_EDGES",
  // More rounds than the usual seven find fewer crossings in plans with several chargers; beyond twelve the gain is small.
  "elk.layered.thoroughness": "12",
  "elk.layered.nodePlacement.bk.fixedAlignment": "BALANCED",
};

/** The tighter placement with fewer bends takes twice as long, which shows only in large plans. */
const mostNodesPlacedTightly = 120;

function asElk({ nodes, edges }: DiagramGraph): ElkNode {
  return {
    id: "diagram",
    layoutOptions: {
      ...options,
      "elk.layered.nodePlacement.strategy":
        nodes.length > mostNodesPlacedTightly ? "BRANDES_KOEPF" : "NETWORK_SIMPLEX",
    },
    children: nodes.map((node, index) => ({
      id: `${index}`,
      width: node.width,
      height: node.height,
      layoutOptions: {
        "elk.portConstraints": node.ports === "placed" ? "FIXED_POS" : "FIXED_SIDE",
        "elk.portAlignment.default": "CENTER",
      },
      ports: node.rows.map((_, row) => portOf(node, index, row)),
    })),
    edges: edges.map(({ from, to }, index) => ({
      id: `line ${index}`,
      sources: [portId(...from)],
      targets: [portId(...to)],
    })),
  };
}

/** A placed port is a point; a free one is as high as its row, and its line leaves from its middle. */
function portOf({ ports, rows, width }: GraphNode, node: number, row: number) {
  const { side, y, height } = rows[row]!;
  return {
    id: portId(node, row),
    width: 0,
    ...(ports === "placed" ? { x: side === "east" ? width : 0, y, height: 0 } : { height }),
    layoutOptions: { "elk.port.side": side === "east" ? "EAST" : "WEST" },
  };
}

function portId(node: number, row: number): string {
  return `${node}:${row}`;
}

function placedOf({ nodes, edges }: DiagramGraph, root: ElkNode): PlacedGraph {
  const children = new Map(root.children?.map((child) => [child.id, child]));
  const lines = new Map(root.edges?.map((edge) => [edge.id, edge]));
  return {
    width: root.width ?? 0,
    height: root.height ?? 0,
    nodes: nodes.map((node, index) => {
      const { x = 0, y = 0, ports = [] } = children.get(`${index}`) ?? {};
      const portY = new Map(ports.map((port) => [port.id, (port.y ?? 0) + (port.height ?? 0) / 2]));
      return { x, y, rowY: node.rows.map((_, row) => y + (portY.get(portId(index, row)) ?? 0)) };
    }),
    edges: edges.map((_, index): Point[] =>
      (lines.get(`line ${index}`)?.sections ?? []).flatMap(({ startPoint, bendPoints = [], endPoint }) => [
        startPoint,
        ...bendPoints,
        endPoint,
      ]),
    ),
  };
}
