import type { Network, SolarArrayPart } from "../model/network.ts";
import { smallestRatingBetween } from "./made-ratings.ts";
import { solarCurrent } from "./solar-current.ts";
import { type SolarWiring, solarWiringOf } from "./solar-wiring.ts";

/** The strings of one array, among all those parallel with them. */
export interface StringJudgement {
  readonly array: SolarArrayPart;
  /** All parallel strings, those of other arrays too. */
  readonly strings: number;
  /** Other arrays among them; the first 16 if there are more. */
  readonly others: readonly SolarArrayPart[];
  /** The reverse current that all the others can push into one string of this array, A: 1.25 · Isc of each. */
  readonly othersA: number;
  /** The smallest fuse that carries a string's own current for hours, A: 1.25 · 1.25 · Isc. */
  readonly leastFuseA: number;
  /** The smallest made one between that and the greatest that the module's maker allows, A; undefined: there is none. */
  readonly bestFuseA: number | undefined;
  /**
   * A fuse or breaker on the array's own conductor serves as string fuse: the array is one string, no other current joins
   * before it, and the module's maker allows it.
   */
  readonly protectedOutside: boolean;
}

/** A list of all, for each of thousands in parallel, would name millions. */
const mostNamed = 16;

/** Only arrays with other strings parallel to them, or within them. */
export function stringsOf(network: Network): readonly StringJudgement[] {
  const wirings = solarWiringOf(network);
  const arraysOn = new Map<number, number>();
  for (const { positive } of wirings) {
    for (const conductor of positive) arraysOn.set(conductor, (arraysOn.get(conductor) ?? 0) + 1);
  }
  const totals = new Map<readonly SolarArrayPart[], { strings: number; allA: number }>();
  const totalOf = (field: readonly SolarArrayPart[]) => {
    const total = totals.get(field) ?? {
      strings: field.reduce((sum, { parallel }) => sum + parallel, 0),
      allA: field.reduce(
        (sum, { shortCircuitA, parallel }) => sum + solarCurrent(shortCircuitA, parallel).greatestA,
        0,
      ),
    };
    totals.set(field, total);
    return total;
  };
  return wirings.flatMap((wiring) => {
    const { array, field } = wiring;
    const { strings, allA } = totalOf(field);
    if (strings < 2) return [];
    const own = solarCurrent(array.shortCircuitA, 1);
    const { maxSeriesFuseA = Number.POSITIVE_INFINITY } = array;
    return [
      {
        array,
        strings,
        others: field
          .slice(0, mostNamed + 1)
          .filter((other) => other !== array)
          .slice(0, mostNamed),
        othersA: allA - own.greatestA,
        leastFuseA: own.neededA,
        bestFuseA: smallestRatingBetween(own.neededA, maxSeriesFuseA),
        protectedOutside: array.parallel === 1 && hasOwnDevice(network, wiring, arraysOn),
      },
    ];
  });
}

/** On a conductor that carries no other array's current. */
function hasOwnDevice(
  network: Network,
  { array, positive }: SolarWiring,
  arraysOn: ReadonlyMap<number, number>,
): boolean {
  return positive
    .filter((conductor) => arraysOn.get(conductor) === 1)
    .some((conductor) => {
      const { near, far } = network.conductors[conductor] ?? {};
      return [near, far].some((device) => device && device.ratingA <= (array.maxSeriesFuseA ?? 0));
    });
}
