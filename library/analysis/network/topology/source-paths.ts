import { type BreadthFirst, breadthFirst, pathTo } from "./breadth-first.ts";
import type { Source } from "./internal-connections.ts";
import type { NetworkGraph } from "./network-graph.ts";
import type { NetworkTopology } from "./network-topology.ts";

/**
 * Returns, for any terminal, the nearest source on its side, counted in conductors, and the path from it; the first of several
 * equally near. One walk finds all paths of a side, on the first call for that side.
 */
export function pathsFromSources(
  wiring: NetworkGraph,
  sides: NetworkTopology["sides"],
): NetworkTopology["wayFromSource"] {
  const walks = new Map<"positive" | "negative", NearestSources>();
  return (terminal) => {
    const side = sides[terminal];
    if (side === undefined || side === "none") return undefined;
    const pole = side === "negative" ? "negative" : "positive";
    const walk = walks.get(pole) ?? nearestSources(wiring, wiring.sources, pole);
    walks.set(pole, walk);
    const point = wiring.pointOf[terminal]!;
    const nearest = walk.sources[walk.start[point]!];
    return nearest && { source: nearest.part, conductors: pathTo(wiring.graph, walk, point) };
  };
}

/** The nearest of some sources to every point, counted in conductors. By point; starts are indices in {@link sources}. */
export interface NearestSources extends BreadthFirst {
  readonly sources: readonly Source[];
}

export function nearestSources(
  { graph, pointOf }: NetworkGraph,
  sources: readonly Source[],
  pole: "positive" | "negative",
): NearestSources {
  const starts = sources.map((source) => pointOf[source[pole]]!);
  return { sources, ...breadthFirst(graph, starts) };
}
