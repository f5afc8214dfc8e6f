import type { Network, SolarArrayPart, SolarControllerPart } from "../model/network.ts";
import { reachedFrom, type Step } from "./network/joined.ts";

/** One solar array and how it is wired to a controller. */
export interface SolarWiring {
  readonly array: SolarArrayPart;
  /** Controllers whose solar input its string is joined to, whatever only passes current on in between; nearest first. */
  readonly controllers: readonly SolarControllerPart[];
  /**
   * Conductors from its positive and from its negative terminal, outwards, to the controller or to the next array of its
   * string; indices in the network. The way with the fewest steps where there are several side by side.
   */
  readonly positive: readonly number[];
  readonly negative: readonly number[];
  /** Arrays side by side with it, itself among them: their currents add up. */
  readonly field: readonly SolarArrayPart[];
  /** Arrays in series with it, itself among them, the most negative one first: their voltages add up. */
  readonly string: readonly SolarArrayPart[];
}

/** How each solar array of a network is wired. */
export function solarWiringOf(network: Network): readonly SolarWiring[] {
  const arrays = network.parts.filter((part) => part.kind === "solarArray");
  if (arrays.length === 0) return [];
  const controllers = network.parts.filter((part) => part.kind === "solarController");
  const ends = new Map(
    arrays.map((array) => [
      array,
      {
        positive: reachedFrom(network, [array.terminals.positive]),
        negative: reachedFrom(network, [array.terminals.negative]),
      },
    ]),
  );
  const reached = (array: SolarArrayPart, end: "positive" | "negative") => ends.get(array)?.[end] ?? nowhere;
  return arrays.map((array): SolarWiring => {
    const string = stringOf(array, arrays, reached);
    const positive = reached(array, "positive");
    const negative = reached(array, "negative");
    const top = reached(string.at(-1) ?? array, "positive");
    return {
      array,
      controllers: nearestFirst(
        controllers.filter(({ terminals }) => top.has(terminals.solarPositive)),
        ({ terminals }) => wayTo(top, terminals.solarPositive),
      ),
      positive: shortestWay(positive, [
        ...controllers.map(({ terminals }) => terminals.solarPositive),
        ...arrays.map(({ terminals }) => terminals.negative),
      ]),
      negative: shortestWay(negative, [
        ...controllers.map(({ terminals }) => terminals.solarNegative),
        ...arrays.map(({ terminals }) => terminals.positive),
      ]),
      field: arrays.filter(({ terminals }) => positive.has(terminals.positive)),
      string,
    };
  });
}

/** Follows positive terminals that are joined to the negative one of another array, and the other way round. */
function stringOf(
  array: SolarArrayPart,
  arrays: readonly SolarArrayPart[],
  reached: (array: SolarArrayPart, end: "positive" | "negative") => Reach,
): readonly SolarArrayPart[] {
  const string = [array];
  // Each array once, so that arrays wired in a ring come to an end.
  const neighbour = (of: SolarArrayPart, end: "positive" | "negative", its: "positive" | "negative") =>
    arrays.find((other) => !string.includes(other) && reached(of, end).has(other.terminals[its]));
  for (let above = neighbour(array, "positive", "negative"); above; ) {
    string.push(above);
    above = neighbour(above, "positive", "negative");
  }
  for (let below = neighbour(array, "negative", "positive"); below; ) {
    string.unshift(below);
    below = neighbour(below, "negative", "positive");
  }
  return string;
}

function shortestWay(reach: Reach, targets: readonly number[]): readonly number[] {
  const ways = targets.filter((target) => reach.has(target)).map((target) => wayTo(reach, target));
  return nearestFirst(ways, (way) => way)[0] ?? [];
}

function nearestFirst<Item>(items: readonly Item[], way: (item: Item) => readonly number[]): readonly Item[] {
  return [...items].sort((one, other) => way(one).length - way(other).length);
}

/** By terminal reached: the step that leads there; the start has none. */
type Reach = ReadonlyMap<number, Step | undefined>;

const nowhere: ReadonlyMap<number, Step | undefined> = new Map();

/** Conductors on the way, from the start outwards; empty where it is not reached. */
function wayTo(reach: Reach, terminal: number): readonly number[] {
  const way: number[] = [];
  for (let step = reach.get(terminal); step; step = reach.get(step.from))
    if (step.link.conductor >= 0) way.unshift(step.link.conductor);
  return way;
}
