import type { Source } from "./parts-inside.ts";
import { across } from "./spanning-forest.ts";
import type { NetworkTopology } from "./topology.ts";
import type { Wiring } from "./wiring.ts";

/**
 * Answers, for any terminal, which source on its side is nearest, counted in conductors, and over which conductors; of
 * several as near as each other the one that comes first. All ways of a side are found in one walk, the first time that one is asked for.
 */
export function waysFromSources(
  wiring: Wiring,
  sides: NetworkTopology["sides"],
): NetworkTopology["wayFromSource"] {
  const walks = new Map<"positive" | "negative", NearestSources>();
  return (terminal) => {
    const side = sides[terminal];
    if (side === undefined || side === "none") return undefined;
    const pole = side === "negative" ? "negative" : "positive";
    const walk = walks.get(pole) ?? nearestSources(wiring, wiring.sources, pole);
    walks.set(pole, walk);
    return wayTo(wiring, walk, wiring.pointOf[terminal]!);
  };
}

/** The nearest of some sources to every point, counted in conductors. */
export interface NearestSources {
  readonly sources: readonly Source[];
  /** By point: index in {@link sources}; −1 where none reaches. */
  readonly source: Int32Array;
  /** By point: the last conductor of the way; −1 at the source itself. */
  readonly cameBy: Int32Array;
  /** Points from the sources outwards. */
  readonly order: readonly number[];
}

export function nearestSources(
  { graph, pointOf }: Wiring,
  sources: readonly Source[],
  pole: "positive" | "negative",
): NearestSources {
  const nearest = new Int32Array(graph.nodes).fill(-1);
  const cameBy = new Int32Array(graph.nodes).fill(-1);
  const queue: number[] = [];
  sources.forEach((source, index) => {
    const point = pointOf[source[pole]]!;
    if (nearest[point] !== -1) return;
    nearest[point] = index;
    queue.push(point);
  });
  for (let next = 0; next < queue.length; next++) {
    const point = queue[next]!;
    for (let at = graph.first[point]!; at < graph.first[point + 1]!; at++) {
      const conductor = graph.edges[at]!;
      const other = across(graph, conductor, point);
      if (nearest[other] !== -1) continue;
      nearest[other] = nearest[point]!;
      cameBy[other] = conductor;
      queue.push(other);
    }
  }
  return { sources, source: nearest, cameBy, order: queue };
}

function wayTo({ graph }: Wiring, { sources, source, cameBy }: NearestSources, to: number) {
  const nearest = sources[source[to]!];
  if (!nearest) return undefined;
  const conductors: number[] = [];
  for (let point = to, by = cameBy[to]!; by !== -1; by = cameBy[point]!) {
    conductors.push(by);
    point = across(graph, by, point);
  }
  return { source: nearest.part, conductors: conductors.reverse() };
}
