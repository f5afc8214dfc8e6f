import type { Network } from "../../../model/network.ts";
import { workedOutOnce } from "../../worked-out-once.ts";
import { internalConnectionsOf } from "./internal-connections.ts";

/**
 * The connections between terminals at any current: conductors, and the parts that only pass current on. Every disconnect
 * counts as closed and every fuse as whole. Loads and sources connect no terminals; a charger that is not isolated connects its
 * two negatives.
 */

/** One step from a terminal to another: along a conductor, or through a part. */
export interface Edge {
  readonly to: number;
  /** Index of the conductor, or −1 for a step inside a part. */
  readonly conductor: number;
  /** Index of the part that the step passes through, or −1 for one along a conductor. */
  readonly part: number;
}

/** By terminal index. Cached for each network: every rule that walks the network uses it. */
export const edgesOf: (network: Network) => readonly (readonly Edge[])[] = workedOutOnce(allEdges);

function allEdges(network: Network): readonly (readonly Edge[])[] {
  const links: Edge[][] = network.terminals.map(() => []);
  const join = (a: number, b: number, conductor: number, part: number) => {
    links[a]?.push({ to: b, conductor, part });
    links[b]?.push({ to: a, conductor, part });
  };
  network.conductors.forEach(({ from, to }, index) => {
    join(from, to, index, -1);
  });
  for (const { a, b } of internalConnectionsOf(network)) join(a, b, -1, network.terminals[a]?.part ?? -1);
  return links;
}

/** How a walk reached a terminal: from which one, and by which link. */
export interface Step {
  readonly from: number;
  readonly link: Edge;
}

/**
 * Every terminal that is reached from `starts`, nearest first; the starts themselves have no step.
 * `through` returns whether a link is taken.
 */
export function reachedFrom(
  network: Network,
  starts: readonly number[],
  through: (link: Edge, from: number) => boolean = () => true,
): ReadonlyMap<number, Step | undefined> {
  const links = edgesOf(network);
  const reached = new Map<number, Step | undefined>(starts.map((start) => [start, undefined]));
  // A map iterates in insertion order, also over entries added during the iteration.
  for (const [terminal] of reached) {
    for (const link of links[terminal] ?? []) {
      if (!reached.has(link.to) && through(link, terminal)) reached.set(link.to, { from: terminal, link });
    }
  }
  return reached;
}

/** By terminal index: the number of its component. Terminals with one number are connected. */
export function componentsOf(
  network: Network,
  through: (link: Edge, from: number) => boolean = () => true,
): readonly number[] {
  const links = edgesOf(network);
  const pieces = network.terminals.map(() => -1);
  let count = 0;
  for (let start = 0; start < pieces.length; start++) {
    if (pieces[start] !== -1) continue;
    const piece = count++;
    pieces[start] = piece;
    const waiting = [start];
    for (let terminal = waiting.pop(); terminal !== undefined; terminal = waiting.pop()) {
      for (const link of links[terminal] ?? []) {
        if (pieces[link.to] !== -1 || !through(link, terminal)) continue;
        pieces[link.to] = piece;
        waiting.push(link.to);
      }
    }
  }
  return pieces;
}
