import type { DeviceInShort } from "./device-in-short.ts";
import type { GiveOnlyOneOf } from "./give-only-one-of.ts";
import type { AwgSize, FuseFamily, Mm2Size, TerminalC } from "./sizes.ts";

/**
 * A fuse or circuit breaker, for details besides its rating.
 *
 * Example: `protect: { ratingA: 50, family: "ISO 8820-3 Type E", distanceIn: 6 }`
 */
export type ProtectionInput = ProtectionDetails & (DistanceInMillimetres | DistanceInInches);

interface ProtectionDetails extends DeviceInShort {
  /**
   * Rating of the fuse or breaker, A. Above 0, up to 6,000. Always needed.
   *
   * Example: `ratingA: 50`
   */
  readonly ratingA: number;
  /**
   * Family of the fuse, named by its standard, or `"circuit breaker"`. The family must be made in this rating.
   *
   * Left out: taken from `branchFamily` of the fuse panel that it is in, else as any family, and a rating is accepted if any family
   * is made in it.
   *
   * Example: `family: "ISO 8820-3 Type F"`
   */
  readonly family?: FuseFamily;
  /**
   * Interrupting rating of the fuse or breaker, A, as marked on it: the maximum current that it can interrupt.
   * Above 0, up to 200,000.
   *
   * Left out: taken from the family's standard; for a breaker, a Class T fuse or no family at all, as not known.
   *
   * Example: `interruptingA: 1000`
   */
  readonly interruptingA?: number;
  /**
   * Rated direct voltage of the fuse or breaker, V, as marked on it. Above 0, up to 1,500.
   * It may not be below the circuit's nominal voltage.
   *
   * Left out: taken from the family's standard; if that has several, or leaves it to the marking, as not known.
   *
   * Example: `ratedV: 58`
   */
  readonly ratedV?: number;
  /**
   * Rated current of the fuse holder, A, as marked on it: the largest fuse that it takes. Above 0, up to 6,000.
   *
   * Left out: taken as not known, and not checked.
   *
   * Example: `holderRatedA: 60`
   */
  readonly holderRatedA?: number;
  /**
   * Temperature rating of the terminals of its holder, or of the breaker, °C, as marked on it: 60, 75, 90 or 105. The conductor
   * carries no more than one with insulation of this rating may.
   *
   * Left out: taken as not known, and the insulation of the conductor alone counts.
   *
   * Example: `terminalC: 75`
   */
  readonly terminalC?: TerminalC;
  /**
   * The largest conductor that the terminals of its holder, or of the breaker, take, AWG: 18, 16, 14, 12, 10, 8, 6, 4, 2, 1, "1/0",
   * "2/0", "3/0" or "4/0". Each of several wires in parallel counts by itself. Give `largestGauge` or `largestMm2`, not both.
   *
   * Left out: taken as not known, and not checked.
   *
   * Example: `largestGauge: 6`
   */
  readonly largestGauge?: AwgSize;
  /**
   * The same as a cross-section, mm²: 0.75, 1, 1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95, 120 or 150.
   * Give `largestGauge` or `largestMm2`, not both.
   *
   * Left out: taken as not known, and not checked.
   *
   * Example: `largestMm2: 16`
   */
  readonly largestMm2?: Mm2Size;
  /**
   * Temperature of the air around the fuse or breaker, °C. From -50 to 200. In a hot place it carries less of its rating for hours.
   *
   * Left out: taken as that of its conductor.
   *
   * Example: `ambientC: 30`
   */
  readonly ambientC?: number;
  /**
   * Price of one, in the `currency` of `build`. From 0 to 1,000,000.
   *
   * Left out: taken as not known, and lists leave it empty.
   *
   * Example: `price: 4.5`
   */
  readonly price?: number;
}

interface DistanceInInches {
  /**
   * Distance from the source of power to this fuse or breaker, measured along the conductor, in inches. 0 to 12,000.
   * The source is the battery, bus bar or panel that feeds the conductor. It should be within 7 in (177.8 mm), 40 in (1,016 mm)
   * if the run is `sheathed`, or 72 in (1,828.8 mm) if it is `fromBattery`. Give `distanceIn` or `distanceMm`, not both.
   *
   * Left out: taken as not known, and the distance is not checked.
   *
   * Example: `distanceIn: 6`
   */
  readonly distanceIn?: number;
  readonly distanceMm?: GiveOnlyOneOf.distanceIn_or_distanceMm;
}

interface DistanceInMillimetres {
  /**
   * Distance from the source of power to this fuse or breaker, measured along the conductor, in millimetres. 0 to 300,000.
   * The source is the battery, bus bar or panel that feeds the conductor. It should be within 7 in (177.8 mm), 40 in (1,016 mm)
   * if the run is `sheathed`, or 72 in (1,828.8 mm) if it is `fromBattery`. Give `distanceIn` or `distanceMm`, not both.
   *
   * Left out: taken as not known, and the distance is not checked.
   *
   * Example: `distanceMm: 150`
   */
  readonly distanceMm: number;
  readonly distanceIn?: GiveOnlyOneOf.distanceIn_or_distanceMm;
}
