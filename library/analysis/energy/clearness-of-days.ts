import { clearnessOfDays, orderOfDays } from "../../standards/solar-geometry.ts";

/**
 * The clearness of each day of a month, in their order, from the month's mean: the distribution of Bendt, in the order of Knight. No
 * random numbers: the same month always has the same days. The mean is exact.
 */
export function clearnessOfMonth(mean: number, days: number): readonly number[] {
  const sorted = sortedDays(mean, days);
  const row = orderOfDays.upToK.findIndex((upTo) => mean <= upTo);
  const order = orderOfDays.sequences[row === -1 ? 2 : row]!;
  return order.filter((rank) => rank <= days).map((rank) => sorted[rank - 1]!);
}

/** From the cloudiest to the clearest. */
function sortedDays(mean: number, days: number): readonly number[] {
  const { least, greatest: c } = clearnessOfDays;
  const most = c[0] + c[1] * mean - c[2] * (mean - c[3]) ** 8;
  // The distribution is not defined for such a month: every day is its mean.
  if (!(mean > least && mean < most)) return Array.from({ length: days }, () => mean);
  const slope = slopeFor(mean, least, most);
  const values = Array.from({ length: days }, (_, day) => quantile((day + 0.5) / days, slope, least, most));
  const found = values.reduce((sum, value) => sum + value, 0) / days;
  return values.map((value) => (value * mean) / found);
}

/** The clearness below which a share of the days lies: density in proportion to e^(slope K). */
function quantile(share: number, slope: number, least: number, most: number): number {
  if (Math.abs(slope) < nearlyFlat) return least + share * (most - least);
  return least + Math.log1p(share * Math.expm1(slope * (most - least))) / slope;
}

/** Below it the density is uniform to the last digit that counts. */
const nearlyFlat = 1e-6;

/** The slope of the density for which the mean is right, by bisection: the closed form misses it by several per cent. */
function slopeFor(mean: number, least: number, most: number): number {
  let [low, high] = [-steepest, steepest];
  for (let step = 0; step < 60; step++) {
    const middle = (low + high) / 2;
    if (meanOf(middle, least, most) < mean) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

const steepest = 500;

/** ∫ K e^(slope K) over ∫ e^(slope K); large slopes of either sign do not overflow. */
function meanOf(slope: number, least: number, most: number): number {
  const width = most - least;
  if (Math.abs(slope) < nearlyFlat) return least + width / 2;
  return most - 1 / slope + width / Math.expm1(slope * width);
}
