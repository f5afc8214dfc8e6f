import type { Network } from "../model/network.ts";
import { isConsumer } from "../model/part-roles.ts";
import { workedOutOnce } from "../model/worked-out-once.ts";
import type { Citation } from "../standards/citation.ts";
import { ratingInHotPlace, ratingOverContinuousLoad } from "../standards/protection-rules.ts";

/** A current that may flow for hours, and the part of it that is drawn by devices which run for hours. */
export interface LoadForHours {
  readonly currentA: number;
  /** Of {@link currentA}, A. */
  readonly continuousA: number;
}

/** The rating of a device relative to a load that runs for hours. */
export interface ContinuousMargin {
  readonly factor: number;
  readonly source: Citation;
  /** The temperature of its place, °C, if that asks for more than the usual factor. */
  readonly hotC?: number;
}

/** By the stated temperature of the place, °C; undefined if none is stated. */
export function continuousMargin(placeC: number | undefined): ContinuousMargin {
  if (placeC === undefined || placeC < ratingInHotPlace.fromC) return ratingOverContinuousLoad;
  return { factor: 100 / ratingInHotPlace.loadPercent, source: ratingInHotPlace.source, hotC: placeC };
}

/**
 * The least rating over a load, A.
 *
 *     I_rating ≥ 1.25 · I_continuous + 1.00 · (I − I_continuous)
 *
 * NFPA 70, 215.3: 125 % of the continuous load plus 100 % of the load that is not continuous. In a hot place I_continuous / 0.70
 * ({@link ratingInHotPlace}).
 */
export function ratingOver(
  { currentA, continuousA }: LoadForHours,
  { factor }: Pick<ContinuousMargin, "factor"> = ratingOverContinuousLoad,
): number {
  return factor * continuousA + (currentA - continuousA);
}

/**
 * The part indices of the loads and inverters that do not run for hours, as they state it, or a circuit or cable that ends at their
 * positive terminal.
 */
export const loadsForMinutes: (network: Network) => ReadonlySet<number> = workedOutOnce(
  ({ parts, conductors, terminals }) => {
    const loads = parts.flatMap((part) => (part.kind === "load" && !part.continuous ? [part.index] : []));
    const fed = conductors.flatMap(({ run, from, to }) =>
      run.continuous
        ? []
        : [from, to].flatMap((end) => {
            const part = parts[terminals[end]!.part]!;
            return isConsumer(part) && part.terminals.positive === end ? [part.index] : [];
          }),
    );
    return new Set([...loads, ...fed]);
  },
);
