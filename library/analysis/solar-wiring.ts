import type { Network, SolarArrayPart, SolarControllerPart } from "../model/network.ts";
import { workedOutOnce } from "../model/worked-out-once.ts";
import { type Nearest, nearestTargets } from "./network/topology/nearest-targets.ts";
import { networkGraph } from "./network/topology/network-graph.ts";
import { solarCurrent } from "./solar-current.ts";

/** One solar array and its wiring to a controller. */
export interface SolarWiring {
  readonly array: SolarArrayPart;
  /** Controllers with their solar input connected to its string, over any parts that only pass current on; nearest first. */
  readonly controllers: readonly SolarControllerPart[];
  /**
   * Conductors from its positive and from its negative terminal, outwards, to the controller or to the next array of its
   * string; indices in the network. The path with the fewest steps if there are several in parallel.
   */
  readonly positive: readonly number[];
  readonly negative: readonly number[];
  /** Arrays in parallel with it, itself among them: their currents add up. */
  readonly field: readonly SolarArrayPart[];
  /** Arrays in series with it, itself among them, the most negative one first: their voltages add up. */
  readonly string: readonly SolarArrayPart[];
}

/** The wiring of each solar array of a network. Cached for each network: several rules use it. */
export const solarWiringOf: (network: Network) => readonly SolarWiring[] = workedOutOnce(workOutWirings);

/** By record of a run: the arrays whose current flows in it. Both conductors of a circuit carry the same. */
export const arraysByRecord: (network: Network) => ReadonlyMap<number, readonly SolarArrayPart[]> =
  workedOutOnce((network) => {
    const runs = new Map<number, SolarArrayPart[]>();
    for (const { array, positive, negative, controllers } of solarWiringOf(network)) {
      if (controllers.length === 0) continue;
      for (const conductor of new Set([...positive, ...negative])) {
        const record = network.conductors[conductor]?.record;
        if (record === undefined) continue;
        const arrays = runs.get(record);
        if (!arrays) runs.set(record, [array]);
        else if (arrays.at(-1) !== array) arrays.push(array);
      }
    }
    return runs;
  });

/** By record of a run: the current that its conductor must carry in bright sun (NFPA 70, 690.8), A. */
export function solarNeedsByRecord(network: Network): ReadonlyMap<number, number> {
  return new Map(
    [...arraysByRecord(network)].map(([record, arrays]) => [
      record,
      arrays.reduce(
        (sumA, { shortCircuitA, parallel }) => sumA + solarCurrent(shortCircuitA, parallel).neededA,
        0,
      ),
    ]),
  );
}

function workOutWirings(network: Network): readonly SolarWiring[] {
  const arrays = network.parts.filter((part) => part.kind === "solarArray");
  if (arrays.length === 0) return [];
  const controllers = network.parts.filter((part) => part.kind === "solarController");
  const { componentOf } = networkGraph(network);
  const at = <Item>(items: readonly Item[], terminal: (item: Item) => number) => {
    const byPiece = new Map<number, Item[]>();
    for (const item of items) {
      const there = byPiece.get(componentOf[terminal(item)]!);
      if (there) there.push(item);
      else byPiece.set(componentOf[terminal(item)]!, [item]);
    }
    return (end: number): readonly Item[] => byPiece.get(componentOf[end]!) ?? [];
  };
  const startingAt = at(arrays, ({ terminals }) => terminals.positive);
  const endingAt = at(arrays, ({ terminals }) => terminals.negative);
  const takingAt = at(controllers, ({ terminals }) => terminals.solarPositive);
  const returningAt = at(controllers, ({ terminals }) => terminals.solarNegative);

  const strings = arrays.map((array) => stringOf(array, { startingAt, endingAt }));
  const tops = strings.map((string) => string.at(-1)!.terminals.positive);
  const [up, down, fromTop] = [
    arrays.map(({ terminals: { positive } }) => ({
      start: positive,
      targets: [
        ...takingAt(positive).map(({ terminals }) => terminals.solarPositive),
        ...endingAt(positive).map(({ terminals }) => terminals.negative),
      ],
    })),
    arrays.map(({ terminals: { negative } }) => ({
      start: negative,
      targets: [
        ...returningAt(negative).map(({ terminals }) => terminals.solarNegative),
        ...startingAt(negative).map(({ terminals }) => terminals.positive),
      ],
    })),
    tops.map((top) => ({
      start: top,
      targets: takingAt(top).map(({ terminals }) => terminals.solarPositive),
    })),
  ].map((searches) => nearestTargets(network, searches)) as [Ways, Ways, Ways];
  return arrays.map((array, index): SolarWiring => {
    const steps = fromTop[index]!.conductors;
    const reached = takingAt(tops[index]!).map((controller, at) => ({ controller, steps: steps[at]! }));
    return {
      array,
      controllers: reached.sort((one, other) => one.steps - other.steps).map(({ controller }) => controller),
      positive: up[index]!.way,
      negative: down[index]!.way,
      field: startingAt(array.terminals.positive),
      string: strings[index]!,
    };
  });
}

type Ways = readonly Nearest[];

/** Arrays with an end in the same component as a terminal. */
type ArraysAt = (terminal: number) => readonly SolarArrayPart[];

/** Follows positive terminals that are connected to the negative one of another array, and the other way round. */
function stringOf(
  array: SolarArrayPart,
  { startingAt, endingAt }: { readonly startingAt: ArraysAt; readonly endingAt: ArraysAt },
): readonly SolarArrayPart[] {
  // Each array once: the search ends even for arrays wired in a ring.
  const taken = new Set([array]);
  const passed = new Map<readonly SolarArrayPart[], number>();
  const firstLeft = (candidates: readonly SolarArrayPart[]) => {
    let at = passed.get(candidates) ?? 0;
    while (at < candidates.length && taken.has(candidates[at]!)) at++;
    passed.set(candidates, at);
    return candidates[at];
  };
  const above: SolarArrayPart[] = [];
  const below: SolarArrayPart[] = [];
  for (let next = firstLeft(endingAt(array.terminals.positive)); next; ) {
    taken.add(next);
    above.push(next);
    next = firstLeft(endingAt(next.terminals.positive));
  }
  for (let next = firstLeft(startingAt(array.terminals.negative)); next; ) {
    taken.add(next);
    below.push(next);
    next = firstLeft(startingAt(next.terminals.negative));
  }
  return [...below.reverse(), array, ...above];
}
