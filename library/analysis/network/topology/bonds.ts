import { disjointSets } from "../../../model/disjoint-sets.ts";
import type { ChassisPart, Network } from "../../../model/network.ts";
import { conductorsAt, networkGraph } from "./network-graph.ts";
import { portsOf } from "./ports.ts";
import { across } from "./spanning-forest.ts";

/** Places at which one negative side is connected to the metal. */
export interface Bonds {
  readonly chassis: ChassisPart;
  /** Conductor indices. Two or more of them: the metal is parallel to the negative conductors, and carries its share. */
  readonly conductors: readonly number[];
}

/**
 * For each chassis, and each negative side that is connected to it at more than one place by conductors from different
 * terminals. Two negative sides that meet only in the metal, an engine's and a bank's, each need their own path to it: that is
 * one place for each. One walk over the network.
 */
export function doubleBonds(network: Network): readonly Bonds[] {
  const frames = network.parts.filter((part) => part.kind === "chassis");
  if (frames.length === 0) return [];
  const metal = new Set(frames.flatMap(({ terminals }) => [terminals.bond, terminals.metal]));
  const graph = networkGraph(network);
  const { a, b } = graph.terminals;
  // Without the metal: the remaining connections are conductors and parts that are made for it.
  const apart = disjointSets(network.terminals.length);
  for (let edge = 0; edge < a.length; edge++) {
    if (!metal.has(a[edge]!) && !metal.has(b[edge]!)) apart.union(a[edge]!, b[edge]!);
  }
  const withSource = new Set(
    network.parts
      .flatMap(portsOf)
      .filter(({ does }) => does === "feeds")
      .map(({ negative }) => apart.find(negative)),
  );
  return frames.flatMap((chassis) => {
    const byPiece = new Map<number, { conductors: number[]; places: Set<number> }>();
    for (const terminal of [chassis.terminals.bond, chassis.terminals.metal]) {
      for (const conductor of conductorsAt(graph, terminal)) {
        const to = across(graph.terminals, conductor, terminal);
        const piece = apart.find(to);
        if (metal.has(to) || !withSource.has(piece)) continue;
        const there = byPiece.get(piece) ?? { conductors: [], places: new Set<number>() };
        there.conductors.push(conductor);
        there.places.add(to);
        byPiece.set(piece, there);
      }
    }
    return [...byPiece.values()].flatMap(({ conductors, places }) =>
      places.size > 1 ? [{ chassis, conductors }] : [],
    );
  });
}
