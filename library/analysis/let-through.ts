import { statedInPlan } from "../model/stated-in-plan.ts";
import type { Citation } from "../standards/citation.ts";
import {
  earliestOpening,
  gatesFor,
  type OpeningTime,
  openingTime,
  percentOfRating,
  type TimedDevice,
} from "./opening-time.ts";

/** The heat that a protective device lets through before a short is over, for each ohm of its circuit. */
export type LetThrough =
  | {
      readonly judged: true;
      /** Maximum, A²·s. */
      readonly letThroughA2s: number;
      /** s */
      readonly openingS: number;
      readonly source: Citation;
    }
  | Extract<OpeningTime, { judged: false }>;

/**
 *     I²t     I the prospective current, A; t the time to open, s, see {@link openingTime}
 *
 * Beyond the last multiple of the rating in the gates, it is assumed to keep its value at that one: a fuse that melts before
 * heat escapes takes the same heat at any speed (from memory). The mechanism of a breaker gets no faster: the time of its last
 * gate holds. There, a let-through that the builder states replaces it.
 * Direct current without rise or fall.
 */
export function letThrough(device: TimedDevice, currentA: number): LetThrough {
  const last = gatesFor(device)?.gates.at(-1)?.percentOfRating ?? 0;
  const isBeyond = percentOfRating(device, currentA) > last;
  const { letThroughA2s: stated } = device;
  if (stated !== undefined && isBeyond && currentA > device.ratingA) {
    const openingS = stated / currentA ** 2;
    return { judged: true, letThroughA2s: stated, openingS, source: statedInPlan(undefined) };
  }
  const time = openingTime(device, currentA);
  if (!time.judged) return time;
  const melts = device.family !== "circuit breaker";
  const countedA = isBeyond && melts ? (device.ratingA * last) / 100 : currentA;
  return {
    judged: true,
    letThroughA2s: countedA ** 2 * time.openingS,
    openingS: time.openingS,
    source: time.source,
  };
}

/** Which of two devices that carry the same short opens. */
export type OpensFirst =
  | {
      readonly judged: true;
      /** "either": the gates allow both, as they mostly do between ratings less than twice apart. */
      readonly first: "downstream" | "upstream" | "either";
      /** Of the gates that show it; for "either", of both devices. */
      readonly sources: readonly [Citation, Citation];
    }
  | { readonly judged: false; readonly why: Extract<OpeningTime, { judged: false }>["why"] };

/**
 * The downstream device opens alone if its maximum let-through is less than the minimum I²t at which the upstream one
 * begins to open; and the other way round.
 *
 * @param currentA Current through the downstream device, for a short behind it.
 * @param upstreamA The part of it through the upstream device: less if parallel batteries have a fuse each.
 */
export function opensFirst(
  upstream: TimedDevice,
  downstream: TimedDevice,
  currentA: number,
  upstreamA = currentA,
): OpensFirst {
  const [above, below] = [gatesFor(upstream), gatesFor(downstream)];
  if (!above || !below) {
    return { judged: false, why: upstream.family && downstream.family ? "no-gates" : "no-family" };
  }
  const share = (upstreamA / currentA) ** 2;
  const [one, other] = [
    { through: letThrough(downstream, currentA), begins: beginsToOpen(downstream, currentA) },
    { through: letThrough(upstream, upstreamA), begins: beginsToOpen(upstream, upstreamA) },
  ];
  const aloneFirst = isThrough(one.through, share, other.begins);
  if (aloneFirst) return { judged: true, first: "downstream", sources: aloneFirst };
  const wrongFirst = isThrough(other.through, 1 / share, one.begins);
  if (wrongFirst) return { judged: true, first: "upstream", sources: wrongFirst };
  return other.begins === undefined
    ? { judged: false, why: "no-gates" }
    : { judged: true, first: "either", sources: [below.source, above.source] };
}

/** Minimum I²t at which a device begins to open. */
interface BeginsToOpen {
  readonly fromA2s: number;
  readonly source: Citation;
}

/** The sources of both figures if a device has opened before another one has taken the heat at which it begins to open. */
function isThrough(
  first: LetThrough,
  share: number,
  other: BeginsToOpen | undefined,
): readonly [Citation, Citation] | undefined {
  const opened = first.judged && other !== undefined && first.letThroughA2s * share < other.fromA2s;
  return opened ? [first.source, other.source] : undefined;
}

function beginsToOpen(device: TimedDevice, currentA: number): BeginsToOpen | undefined {
  const earliest = earliestOpening(device, currentA);
  return earliest && { fromA2s: currentA ** 2 * earliest.notBeforeS, source: earliest.source };
}
