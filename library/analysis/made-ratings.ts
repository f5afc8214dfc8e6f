import type { Protection } from "../model/run.ts";
import { type DeviceFamily, deviceFamilies } from "../standards/device-ratings.ts";
import { withoutDust } from "./rounding-dust.ts";

export type Family = NonNullable<Protection["family"]>;

/** The ratings made in a family, A, from the least to the greatest; those of all families together if none is named. */
export function madeRatings(family?: Family): readonly number[] {
  return family === undefined ? ratingsOfAny : families[family].ratingsA;
}

/** Whether the family (any family, if none is named) is made in this rating, which a plan may have computed. */
export function isMadeRating(ratingA: number, family?: Family): boolean {
  const madeA = withoutDust(ratingA);
  const further = family === undefined ? furtherOfAny : families[family].furtherRatingsA;
  return madeRatings(family).includes(madeA) || further?.includes(madeA) === true;
}

/** The greatest made rating at or below a current, A. Undefined: none is that small. */
export function nearestRatingBelow(currentA: number, family?: Family): number | undefined {
  return madeRatings(family).findLast((ratingA) => ratingA <= currentA);
}

/** The smallest made rating at or above a current, A. Undefined: none is that great. */
export function nearestRatingAbove(currentA: number, family?: Family): number | undefined {
  // A plain loop: called for every circuit at every keystroke.
  for (const ratingA of madeRatings(family)) if (ratingA >= currentA) return ratingA;
  return undefined;
}

/** The made rating nearest to a wanted one, within a range that includes both its ends, A; of two equally near, the lesser. */
export function nearestMadeRating(
  wantedA: number,
  { fromA, toA }: { readonly fromA: number; readonly toA: number },
  family?: Family,
): number | undefined {
  const fitting = madeRatings(family).filter((ratingA) => fromA <= ratingA && ratingA <= toA);
  return fitting.reduce<number | undefined>(
    (nearest, ratingA) =>
      nearest === undefined || Math.abs(ratingA - wantedA) < Math.abs(nearest - wantedA) ? ratingA : nearest,
    undefined,
  );
}

/** The smallest made rating from one current to another, both included, A. */
export function smallestRatingBetween(fromA: number, toA: number, family?: Family): number | undefined {
  const ratingA = nearestRatingAbove(fromA, family);
  return ratingA !== undefined && ratingA <= toA ? ratingA : undefined;
}

const families: Readonly<Record<Family, DeviceFamily>> = deviceFamilies;

const ratingsOfAny: readonly number[] = [
  ...new Set(Object.values(families).flatMap((family) => family.ratingsA)),
].sort((one, other) => one - other);

const furtherOfAny: readonly number[] = Object.values(families).flatMap(
  ({ furtherRatingsA = [] }) => furtherRatingsA,
);
