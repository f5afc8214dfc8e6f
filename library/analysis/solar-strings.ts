import type { Network, SolarArrayPart } from "../model/network.ts";
import { smallestRatingBetween } from "./made-ratings.ts";
import { solarCurrent } from "./solar-current.ts";
import { type SolarWiring, solarWiringOf } from "./solar-wiring.ts";

/** The strings of one array, among all those that lie side by side with them. */
export interface StringJudgement {
  readonly array: SolarArrayPart;
  /** All side by side, those of other arrays too. */
  readonly strings: number;
  /** Other arrays among them. */
  readonly others: readonly SolarArrayPart[];
  /** What all the others can push backwards into one string of this array, A: 1.25 · Isc of each. */
  readonly othersA: number;
  /** The smallest fuse that bears a string's own current for hours, A: 1.25 · 1.25 · Isc. */
  readonly leastFuseA: number;
  /** The smallest made one between that and the greatest that the panels' maker allows, A; undefined: there is none. */
  readonly bestFuseA: number | undefined;
  /**
   * A fuse or breaker on the array's own conductor does what a string fuse does: the array is one string, nothing else joins
   * before it, and the panels' maker allows it.
   */
  readonly protectedOutside: boolean;
}

/** Only arrays beside which, or within which, other strings lie. */
export function stringsOf(network: Network): readonly StringJudgement[] {
  const wirings = solarWiringOf(network);
  return wirings.flatMap(({ array, field }) => {
    const strings = field.reduce((sum, { parallel }) => sum + parallel, 0);
    if (strings < 2) return [];
    const allA = field.reduce(
      (sum, { shortCircuitA, parallel }) => sum + solarCurrent(shortCircuitA, parallel).greatestA,
      0,
    );
    const own = solarCurrent(array.shortCircuitA, 1);
    const { maxSeriesFuseA = Number.POSITIVE_INFINITY } = array;
    return [
      {
        array,
        strings,
        others: field.filter((other) => other !== array),
        othersA: allA - own.greatestA,
        leastFuseA: own.neededA,
        bestFuseA: smallestRatingBetween(own.neededA, maxSeriesFuseA),
        protectedOutside: array.parallel === 1 && hasOwnDevice(network, wirings, array),
      },
    ];
  });
}

function hasOwnDevice(network: Network, wirings: readonly SolarWiring[], array: SolarArrayPart): boolean {
  const shared = new Set(wirings.flatMap((other) => (other.array === array ? [] : other.positive)));
  const way = wirings.find((wiring) => wiring.array === array)?.positive ?? [];
  return way
    .filter((conductor) => !shared.has(conductor))
    .some((conductor) => {
      const { near, far } = network.conductors[conductor] ?? {};
      return [near, far].some((device) => device && device.ratingA <= (array.maxSeriesFuseA ?? 0));
    });
}
