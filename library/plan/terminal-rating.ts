import type { TerminalC } from "./sizes.ts";

/** The temperature rating of the terminals of a part, or of a fuse or breaker. */
export interface TerminalRating {
  /**
   * Temperature rating of its terminals, °C, as marked on it: 60, 75, 90 or 105. A conductor that ends there carries no more
   * than one with insulation of this rating may.
   *
   * Left out: taken as not known, and the insulation of the conductor alone counts.
   *
   * Example: `terminalC: 75`
   */
  readonly terminalC?: TerminalC;
}
