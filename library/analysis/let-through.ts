import type { Protection } from "../model/run.ts";
import type { Citation } from "../standards/citation.ts";
import { gatesFor, type OpeningTime, openingTime, opensNotBeforeS, percentOfRating } from "./opening-time.ts";

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
 * heat escapes takes the same heat at any speed (from memory). Direct current without rise or fall.
 */
export function letThrough(device: Pick<Protection, "ratingA" | "family">, currentA: number): LetThrough {
  const time = openingTime(device, currentA);
  if (!time.judged) return time;
  const last = gatesFor(device)?.gates.at(-1)?.percentOfRating ?? 0;
  const isBeyond = percentOfRating(device, currentA) > last;
  const countedA = isBeyond ? (device.ratingA * last) / 100 : currentA;
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
      /** For the downstream device, and for the upstream one. */
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
  upstream: Pick<Protection, "ratingA" | "family">,
  downstream: Pick<Protection, "ratingA" | "family">,
  currentA: number,
  upstreamA = currentA,
): OpensFirst {
  const [above, below] = [gatesFor(upstream), gatesFor(downstream)];
  if (!above || !below) {
    return { judged: false, why: upstream.family && downstream.family ? "no-gates" : "no-family" };
  }
  const share = (upstreamA / currentA) ** 2;
  const sources = [below.source, above.source] as const;
  const aloneFirst = isThrough(letThrough(downstream, currentA), share, leastA2s(upstream, upstreamA));
  if (aloneFirst) return { judged: true, first: "downstream", sources };
  const wrongFirst = isThrough(letThrough(upstream, upstreamA), 1 / share, leastA2s(downstream, currentA));
  if (wrongFirst) return { judged: true, first: "upstream", sources };
  const tellsNothing = leastA2s(upstream, upstreamA) === undefined;
  return tellsNothing ? { judged: false, why: "no-gates" } : { judged: true, first: "either", sources };
}

/** Whether a device has opened before another one has taken the heat at which it begins to open. */
function isThrough(first: LetThrough, share: number, otherLeastA2s: number | undefined): boolean {
  return first.judged && otherLeastA2s !== undefined && first.letThroughA2s * share < otherLeastA2s;
}

/** Minimum I²t at which a device begins to open, A²·s. */
function leastA2s(device: Pick<Protection, "ratingA" | "family">, currentA: number): number | undefined {
  const notBeforeS = opensNotBeforeS(device, currentA);
  return notBeforeS === undefined ? undefined : currentA ** 2 * notBeforeS;
}
