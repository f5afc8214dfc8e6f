import { type DisjointSets, disjointSets } from "../../../model/disjoint-sets.ts";
import type { Network } from "../../../model/network.ts";
import { workedOutOnce } from "../../../model/worked-out-once.ts";

/**
 * Parts that conductors connect, by index. Isolated sides of a part count as one all the same: a charger passes the
 * trouble on.
 */
export function islandsOf(network: Network): DisjointSets {
  const islands = disjointSets(network.parts.length);
  for (const { from, to } of network.conductors) islands.union(partAt(network, from), partAt(network, to));
  return islands;
}

export function partAt({ terminals }: Network, terminal: number): number {
  return terminals[terminal]!.part;
}

/** The records of everything in the islands of these parts, a set for each island; the same sets for the same network. */
export function recordsOfIslands(network: Network, parts: readonly number[]): readonly ReadonlySet<number>[] {
  const { islands, records } = recordsByIsland(network);
  return [...new Set(parts.map(islands.find))].flatMap((island) => records.get(island) ?? []);
}

const recordsByIsland = workedOutOnce((network: Network) => {
  const islands = islandsOf(network);
  const records = new Map<number, Set<number>>();
  const add = (part: number, record: number) => {
    const island = islands.find(part);
    records.set(island, (records.get(island) ?? new Set()).add(record));
  };
  for (const { index, record } of network.parts) add(index, record);
  for (const { from, record } of network.conductors) add(partAt(network, from), record);
  return { islands, records };
});
