import type { Network, Part, SolarArrayPart, SolarControllerPart } from "../model/network.ts";

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
  const steps = stepsOf(network);
  const ends = new Map(
    arrays.map((array) => [
      array,
      {
        positive: reachOf(steps, array.terminals.positive),
        negative: reachOf(steps, array.terminals.negative),
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

/** A step from one terminal to the next: along a conductor, or through a part that only passes current on. */
interface Step {
  readonly to: number;
  readonly conductor: number | undefined;
}

function stepsOf({ terminals, conductors, parts }: Network): readonly (readonly Step[])[] {
  const steps: Step[][] = terminals.map(() => []);
  const join = (one: number, other: number, conductor?: number) => {
    steps[one]?.push({ to: other, conductor });
    steps[other]?.push({ to: one, conductor });
  };
  conductors.forEach(({ from, to }, index) => {
    join(from, to, index);
  });
  for (const part of parts) for (const [one, other] of passages(part)) join(one, other);
  return steps;
}

/** Terminals of a part between which current only passes. */
function passages(part: Part): readonly (readonly [number, number])[] {
  if (part.kind === "fusePanel") return [[part.terminals.feed, part.terminals.branch]];
  if (part.kind === "disconnect") return [[part.terminals.line, part.terminals.load]];
  if (part.kind === "shunt") return [[part.terminals.batterySide, part.terminals.systemSide]];
  if (part.kind === "chassis") return [[part.terminals.bond, part.terminals.metal]];
  return part.kind === "part" ? part.joins.map(({ between }) => between) : [];
}

/** By terminal reached: the step that leads there; the start has none. */
type Reach = ReadonlyMap<number, { readonly from: number; readonly conductor: number | undefined } | null>;

const nowhere: Reach = new Map();

/** Breadth first, so that the way found to each terminal is one with the fewest steps. */
function reachOf(steps: readonly (readonly Step[])[], start: number): Reach {
  const reached = new Map<number, { from: number; conductor: number | undefined } | null>([[start, null]]);
  const waiting = [start];
  for (const at of waiting) {
    for (const { to, conductor } of steps[at] ?? []) {
      if (reached.has(to)) continue;
      reached.set(to, { from: at, conductor });
      waiting.push(to);
    }
  }
  return reached;
}

/** Conductors on the way, from the start outwards; empty where it is not reached. */
function wayTo(reach: Reach, terminal: number): readonly number[] {
  const way: number[] = [];
  for (let step = reach.get(terminal); step; step = reach.get(step.from))
    if (step.conductor !== undefined) way.unshift(step.conductor);
  return way;
}
