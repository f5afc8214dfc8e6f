import { workedOutOnce } from "../../model/worked-out-once.ts";
import type { Climate } from "./climate.ts";
import type { Days } from "./days-of-period.ts";
import type { ArrayAtBank } from "./flows-at-bank.ts";
import { arraySource } from "./sources-by-hour.ts";

interface BestTilt {
  /** From level, towards the equator; a multiple of 5. */
  readonly tiltDeg: number;
  /** The yield of the array at this tilt, by month, Wh a day; NaN for months outside of the period. */
  readonly dailyWh: readonly number[];
}

/** The tilt towards the equator with the greatest yield over the days of a period, by steps of 15° and then of 5°. */
export function bestTilt(array: ArrayAtBank, climate: Climate, days: Days): BestTilt {
  const { best } = known(array);
  if (best?.climate === climate && best.days === days) return best.found;
  const found = search(array, climate, days);
  known(array).best = { climate, days, found };
  return found;
}

/** Of an array, which an edit elsewhere leaves the same object. */
const known = workedOutOnce(
  (
    _: ArrayAtBank,
  ): { best?: { readonly climate: Climate; readonly days: Days; readonly found: BestTilt } } => ({}),
);

function search(array: ArrayAtBank, climate: Climate, days: Days): BestTilt {
  const tried = new Map<number, BestTilt & { readonly sum: number }>();
  const at = (tiltDeg: number) => {
    const before = tried.get(tiltDeg);
    if (before) return before;
    const { watts, source } = arraySource({ ...array, tiltDeg, facingDeg: undefined }, { climate, days });
    const made = { tiltDeg, dailyWh: source.dailyWh, sum: watts.reduce((sum, one) => sum + one, 0) };
    tried.set(tiltDeg, made);
    return made;
  };
  const best = (tilts: readonly number[]) =>
    tilts.map(at).reduce((most, one) => (one.sum > most.sum ? one : most));
  const { tiltDeg: coarse } = best([0, 15, 30, 45, 60, 75, 90]);
  const { tiltDeg, dailyWh } = best(
    [coarse, coarse - 10, coarse - 5, coarse + 5, coarse + 10].filter((tilt) => tilt >= 0 && tilt <= 90),
  );
  return { tiltDeg, dailyWh };
}
