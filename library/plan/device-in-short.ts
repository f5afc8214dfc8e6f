import type { FuseFamily } from "./sizes.ts";

/** The behaviour of a fuse or breaker in a short, as its maker states it. */
export interface DeviceInShort {
  /**
   * Direct voltage for which its interrupting rating is stated, V. Above 0, up to 1,500.
   * A breaker that interrupts 5,000 A at 12 V may interrupt far less at 48 V.
   *
   * Left out: taken as at least the greatest voltage of its circuit.
   *
   * Example: `interruptingAtV: 24`
   */
  readonly interruptingAtV?: number;
  /**
   * Its opening times, as its maker states them, from the least current to the greatest: up to 20.
   *
   * Left out: taken from the family's standard; for a breaker or no family at all, as not known. Faults are then judged by its
   * interrupting rating and its own rating alone.
   *
   * Example: `openingTimes: [{ atPercent: 200, afterS: 5, withinS: 60 }, { atPercent: 600, withinS: 1 }]`
   */
  readonly openingTimes?: readonly OpeningTimeInput[];
  /**
   * Energy that it lets through in a short, I²t, A²s, as its maker states it for shorts up to its interrupting rating.
   * Above 0, up to 1,000,000,000. Conductors and devices behind it are judged by it.
   *
   * Left out: taken from its opening times; if they are not known, as not known.
   *
   * Example: `letThroughA2s: 12_000`
   */
  readonly letThroughA2s?: number;
  /**
   * Energy that it withstands while a device upstream opens, I²t, A²s, as its maker states it. Above 0, up to 1,000,000,000.
   * With the `letThroughA2s` of the device upstream, it may replace a higher interrupting rating.
   *
   * Left out: taken as the least energy at which it begins to open itself; if that is not known, as not known.
   *
   * Example: `withstandA2s: 30_000`
   */
  readonly withstandA2s?: number;
  /**
   * A combination that its maker tested: behind a device of this family, rated at most this, it interrupts this current.
   *
   * Left out: taken as none, and it is judged by its own interrupting rating.
   *
   * Example: `testedBehind: { family: "UL 248-15 Class T", ratingA: 200, interruptingA: 10_000 }`
   */
  readonly testedBehind?: TestedBehindInput;
}

/**
 * How soon a device opens at a multiple of its rating.
 *
 * Example: `openingTimes: [{ atPercent: 200, afterS: 5, withinS: 60 }]`
 */
export interface OpeningTimeInput {
  /**
   * Current, in percent of the rating. Above 100, up to 100,000. Always needed; each is above the one before it.
   *
   * Example: `atPercent: 200`
   */
  readonly atPercent: number;
  /**
   * Time before which it does not open at this current, s. From 0 to 100,000.
   *
   * Left out: taken as not known.
   *
   * Example: `afterS: 5`
   */
  readonly afterS?: number;
  /**
   * Time within which it has opened at this current, s. Above 0, up to 100,000. Always needed.
   *
   * Example: `withinS: 60`
   */
  readonly withinS: number;
}

/**
 * A combination of two devices that a maker tested together.
 *
 * Example: `testedBehind: { family: "UL 248-15 Class T", ratingA: 200, interruptingA: 10_000 }`
 */
export interface TestedBehindInput {
  /**
   * Family of the device upstream. Always needed.
   *
   * Example: `family: "UL 248-15 Class T"`
   */
  readonly family: FuseFamily;
  /**
   * Greatest rating of the device upstream, A. Above 0, up to 6,000. Always needed.
   *
   * Example: `ratingA: 200`
   */
  readonly ratingA: number;
  /**
   * Current that both together interrupt, A. Above 0, up to 200,000. Always needed.
   *
   * Example: `interruptingA: 10_000`
   */
  readonly interruptingA: number;
}
