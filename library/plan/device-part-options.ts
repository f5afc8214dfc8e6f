import type { DeviceInShort } from "./device-in-short.ts";
import type { PartOptions } from "./part-options.ts";
import type { Terminal } from "./terminal.ts";
import type { TerminalRating } from "./terminal-rating.ts";

/** The properties of a fuse or breaker that is a part of its own. */
export interface DevicePartOptions extends PartOptions, DeviceInShort, TerminalRating {
  /**
   * Rating of the fuse or breaker, A. Above 0, up to 6,000. Always needed.
   *
   * Example: `ratingA: 200`
   */
  readonly ratingA: number;
  /**
   * The terminal that it is mounted on, without a cable between: a battery's, a stud of a bus bar, the branch of a panel. Its
   * `line` is then that terminal.
   *
   * Left out: taken as mounted on none, and cables lead to both of its terminals.
   *
   * Example: `on: house.positive`
   */
  readonly on?: Terminal;
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
   * It may not be below the nominal voltage of its system.
   *
   * Left out: taken from the family's standard; if that has several, or leaves it to the marking, as not known.
   *
   * Example: `ratedV: 58`
   */
  readonly ratedV?: number;
  /**
   * Temperature of the air around the fuse or breaker, °C. From -50 to 200. In a hot place it carries less of its rating for hours.
   *
   * Left out: taken as that of its coolest conductor.
   *
   * Example: `ambientC: 30`
   */
  readonly ambientC?: number;
  /**
   * Resistance between its terminals, mΩ, device and contacts together. 0, or from 0.001 to 1,000.
   *
   * Left out: taken as 0.
   *
   * Example: `milliohm: 0.4`
   */
  readonly milliohm?: number;
  /**
   * Whether its current flows for three hours or longer at a time. Its rating is then aimed at 125 % of that current.
   *
   * Left out: taken from `build`, else as true.
   *
   * Example: `continuous: false`
   */
  readonly continuous?: boolean;
}
