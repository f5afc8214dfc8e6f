import type { Network } from "../../../model/network.ts";
import { type NetworkGraph, networkGraph, reachedFrom, type Step } from "./network-graph.ts";
import { across, edgesAt } from "./spanning-forest.ts";

/** A terminal, and others whose distance from it is sought; all in one component. */
export interface Search {
  readonly start: number;
  readonly targets: readonly number[];
}

export interface Nearest {
  /** By position among the targets: the number of conductors on the path there. */
  readonly conductors: readonly number[];
  /** The conductors to the nearest target, from the start outwards; to the first of several equally near. */
  readonly way: readonly number[];
}

/**
 * Paths with the fewest steps, for many searches at once. Parallel arrays are connected by leads to one bus. A lead has no
 * branches, so every search from its far end continues as the one from the bus, which runs once.
 */
export function nearestTargets(network: Network, searches: readonly Search[]): readonly Nearest[] {
  const graph = networkGraph(network);
  const byJunction = new Map<number, { readonly at: number; readonly lead: Lead }[]>();
  searches.forEach(({ start, targets }, at) => {
    if (targets.length === 0) return;
    const lead = leadFrom(graph, start);
    const there = byJunction.get(lead.junction);
    if (there) there.push({ at, lead });
    else byJunction.set(lead.junction, [{ at, lead }]);
  });
  const found: Nearest[] = searches.map(() => ({ conductors: [], way: [] }));
  // One walk at a time: all of them together would take quadratic memory.
  for (const [junction, here] of byJunction) {
    const walk = reachedFrom(graph, [junction]);
    const counts = conductorsTo(walk);
    for (const { at, lead } of here) {
      const { targets } = searches[at]!;
      const conductors = targets.map(
        (target) => lead.conductorsTo.get(target) ?? lead.conductors.length + counts.get(target)!,
      );
      let nearest = 0;
      conductors.forEach((count, target) => {
        if (count < conductors[nearest]!) nearest = target;
      });
      const own = lead.conductorsTo.get(targets[nearest]!);
      const way =
        own === undefined
          ? [...lead.conductors, ...pathTo(walk, targets[nearest]!)]
          : lead.conductors.slice(0, own);
      found[at] = { conductors, way };
    }
  }
  return found;
}

/** From a terminal to the first one at which more than two edges meet, or none leads on. */
interface Lead {
  readonly junction: number;
  readonly conductors: readonly number[];
  /** By terminal on it: conductors from the start to there. */
  readonly conductorsTo: ReadonlyMap<number, number>;
}

function leadFrom({ terminals, edges }: NetworkGraph, start: number): Lead {
  const conductors: number[] = [];
  const conductorsTo = new Map([[start, 0]]);
  let junction = start;
  let onwards = edgesAt(terminals, start);
  while (onwards.length === 1) {
    const back = junction;
    const to = across(terminals, onwards[0]!, back);
    if (conductorsTo.has(to)) break;
    const { conductor } = edges[onwards[0]!]!;
    if (conductor >= 0) conductors.push(conductor);
    conductorsTo.set(to, conductors.length);
    junction = to;
    const there = edgesAt(terminals, to);
    // Two parallel cables are no lead: both go back.
    onwards = there.filter((edge) => across(terminals, edge, to) !== back);
    if (onwards.length + 1 !== there.length) break;
  }
  return { junction, conductors, conductorsTo };
}

/** By terminal that a walk reaches. */
function conductorsTo(walk: ReadonlyMap<number, Step | undefined>): ReadonlyMap<number, number> {
  const counts = new Map<number, number>();
  // In the walk, a step's start comes before its end.
  for (const [terminal, step] of walk) {
    counts.set(terminal, step ? counts.get(step.from)! + (step.edge.conductor >= 0 ? 1 : 0) : 0);
  }
  return counts;
}

function pathTo(walk: ReadonlyMap<number, Step | undefined>, terminal: number): readonly number[] {
  const way: number[] = [];
  for (let step = walk.get(terminal); step; step = walk.get(step.from)) {
    if (step.edge.conductor >= 0) way.push(step.edge.conductor);
  }
  return way.reverse();
}
